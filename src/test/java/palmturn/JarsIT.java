package palmturn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Test;

/** The two jars that the build made: run by {@code mvn verify}, after they are packed. */
class JarsIT {
  private static final String LAB = "palmturn/lab/";

  private static List<String> files(JarFile jar) {
    return jar.stream()
        .filter(entry -> !entry.isDirectory())
        .map(ZipEntry::getName)
        .filter(name -> !name.startsWith("META-INF/"))
        .toList();
  }

  @Test
  void theProductHoldsNothingOfTheLaboratory() throws IOException {
    try (JarFile jar = new JarFile("target/palmturn.jar")) {
      List<String> files = files(jar);
      assertTrue(files.contains("palmturn/Palmturn.class"), files::toString);
      assertEquals(List.of(), files.stream().filter(name -> name.startsWith(LAB)).toList());
    }
  }

  @Test
  void theLaboratoryHoldsNothingElseAndStartsBesideTheProduct() throws IOException {
    try (JarFile jar = new JarFile("target/palmturn-lab.jar")) {
      List<String> files = files(jar);
      assertTrue(files.contains("palmturn/lab/Lab.class"), files::toString);
      assertEquals(List.of(), files.stream().filter(name -> !name.startsWith(LAB)).toList());
      Attributes main = jar.getManifest().getMainAttributes();
      assertEquals("palmturn.lab.Lab", main.getValue(Attributes.Name.MAIN_CLASS));
      List<String> path = List.of(main.getValue(Attributes.Name.CLASS_PATH).split(" "));
      assertTrue(path.contains("palmturn.jar"), path::toString);
      assertTrue(path.stream().anyMatch(entry -> entry.startsWith("lib/picocli")), path::toString);
    }
  }
}
