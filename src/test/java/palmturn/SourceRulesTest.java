package palmturn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Rules on the sources as text: short files, comments that name the thing, one name a room. */
class SourceRulesTest {
  private static final Path SOURCES = Path.of("src/main/java/palmturn");
  private static final int MOST_LINES = 400;
  private static final Pattern QUESTION =
      Pattern.compile("^\\s*(/\\*\\*|\\*)\\s+(What|How|Which) ");
  private static final Pattern COMMENT_OR_TEXT =
      Pattern.compile("(?s)/\\*.*?\\*/|//[^\n]*|\"\"\".*?\"\"\"|\"(\\\\.|[^\"\\\\\n])*\"");

  /** A top-level type or one inside it; a generic one too. */
  private static final Pattern TYPE =
      Pattern.compile("\\b(?:class|interface|enum|record)\\s+([A-Z]\\w*)");

  @Test
  void noFileIsLongerThanAReaderCanHold() throws IOException {
    List<String> tooLong = new ArrayList<>();
    for (Path file : files()) {
      int lines = Files.readAllLines(file).size();
      if (lines > MOST_LINES) {
        tooLong.add(file + ": " + lines);
      }
    }
    assertEquals(List.of(), tooLong);
  }

  @Test
  void commentsOpenWithWhatTheThingIs() throws IOException {
    List<String> questions = new ArrayList<>();
    for (Path file : files()) {
      Files.readAllLines(file).stream()
          .filter(line -> QUESTION.matcher(line).find())
          .forEach(line -> questions.add(file.getFileName() + ": " + line.strip()));
    }
    assertEquals(List.of(), questions);
  }

  @Test
  void aNameMeansOneThingInARoom() throws IOException {
    Map<String, List<Path>> byName = new TreeMap<>();
    for (Path file : files()) {
      Path inside = SOURCES.relativize(file);
      if (inside.getNameCount() > 1) {
        for (String type : types(file)) {
          String name = inside.getName(0) + ": " + type;
          byName.computeIfAbsent(name, each -> new ArrayList<>()).add(inside);
        }
      }
    }
    byName.values().removeIf(all -> all.size() == 1);
    assertEquals(Map.of(), byName);
  }

  /** Returns the types of a file, those inside others too. */
  private static List<String> types(Path file) throws IOException {
    String code = COMMENT_OR_TEXT.matcher(Files.readString(file)).replaceAll("");
    return TYPE.matcher(code).results().map(type -> type.group(1)).toList();
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(SOURCES)) {
      List<Path> files = all.filter(file -> file.toString().endsWith(".java")).sorted().toList();
      assertTrue(files.size() > 500, "the sources are where the test looks: " + files.size());
      return files;
    }
  }
}
