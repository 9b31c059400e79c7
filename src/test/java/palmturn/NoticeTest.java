package palmturn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.bytedeco.ffmpeg.global.avutil;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * NOTICE names the libraries that the program runs with; {@code mvn license:add-third-party} lists
 * them anew.
 */
class NoticeTest {
  private static final Pattern PROPERTY = Pattern.compile("\\$\\{([^}]+)}");

  @Test
  void everyLibraryOfThePomIsNamedWithItsVersion() throws Exception {
    String notice = notice();
    List<String> libraries = runtimeLibraries();
    assertFalse(libraries.isEmpty());
    List<String> missing =
        libraries.stream().filter(library -> !notice.contains("(" + library + " - ")).toList();
    assertEquals(List.of(), missing, "run mvn license:add-third-party");
  }

  @Test
  void noTestLibraryIsNamed() throws Exception {
    assertFalse(notice().contains("junit"));
  }

  @Test
  void theFfmpegBuildIsUnderTheLicenceThatIsNamed() throws Exception {
    assertTrue(notice().contains("LGPL version 3 or later"));
    assertEquals("LGPL version 3 or later", avutil.avutil_license().getString());
  }

  private static String notice() throws Exception {
    return Files.readString(Path.of("NOTICE"), StandardCharsets.UTF_8);
  }

  private static List<String> runtimeLibraries() throws Exception {
    Document pom =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(Path.of("pom.xml").toFile());
    Element properties = (Element) pom.getElementsByTagName("properties").item(0);
    NodeList dependencies = pom.getElementsByTagName("dependency");
    List<String> libraries = new ArrayList<>();
    for (int i = 0; i < dependencies.getLength(); i++) {
      Element dependency = (Element) dependencies.item(i);
      String scope = child(dependency, "scope");
      if (!scope.equals("test") && !scope.equals("import")) {
        libraries.add(
            child(dependency, "groupId")
                + ":"
                + child(dependency, "artifactId")
                + ":"
                + resolved(child(dependency, "version"), properties));
      }
    }
    return libraries;
  }

  private static String resolved(String version, Element properties) {
    Matcher property = PROPERTY.matcher(version);
    return property.matches() ? child(properties, property.group(1)) : version;
  }

  private static String child(Element parent, String name) {
    NodeList children = parent.getElementsByTagName(name);
    return children.getLength() == 0 ? "" : children.item(0).getTextContent().strip();
  }
}
