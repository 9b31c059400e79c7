package palmturn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import palmturn.cli.PalmturnCommand;
import palmturn.lab.Lab;
import picocli.CommandLine.Command;

/** The pages name only links, commands, tests and files that exist. */
class DocsTest {
  private static final Path MAIN = Path.of("src/main/java/palmturn");
  private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)\\)");
  private static final Pattern COMMAND =
      Pattern.compile("tools[/\\\\](palmturn|lab)(?:\\.cmd)? ([a-z][a-z-]*)");
  private static final Pattern TOOL = Pattern.compile("\\btools/([a-z][a-z-]*)");
  private static final Pattern TEST = Pattern.compile("`([A-Z]\\w*Test)`");
  private static final Pattern SOURCE = Pattern.compile("`((?:[a-z]+/)+[A-Z]\\w*)`");

  @Test
  void everyRelativeLinkAndPictureResolves() throws IOException {
    List<String> broken = new ArrayList<>();
    for (Path page : pages()) {
      for (MatchResult link : all(LINK, text(page))) {
        if (!link.group(1).matches("[a-z]+:.*") && !resolves(page, link.group(1))) {
          broken.add(page + ": " + link.group(1));
        }
      }
    }
    assertEquals(List.of(), broken);
  }

  private static boolean resolves(Path page, String link) throws IOException {
    String[] parts = link.split("#", 2);
    Path target = parts[0].isEmpty() ? page : page.resolveSibling(Path.of(parts[0])).normalize();
    return Files.exists(target)
        && (parts.length == 1 || text(target).lines().anyMatch(line -> anchor(line, parts[1])));
  }

  private static boolean anchor(String line, String name) {
    return line.startsWith("#")
        && line.replaceFirst("^#+ ", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N} -]", "")
            .replace(' ', '-')
            .equals(name);
  }

  @Test
  void everyCommandExists() throws IOException {
    Map<String, List<String>> known =
        Map.of("palmturn", names(PalmturnCommand.class), "lab", names(Lab.class));
    List<String> unknown = new ArrayList<>();
    for (Path page : pages()) {
      for (MatchResult command : all(COMMAND, text(page))) {
        if (!known.get(command.group(1)).contains(command.group(2))) {
          unknown.add(page + ": " + command.group());
        }
      }
    }
    assertEquals(List.of(), unknown);
  }

  private static List<String> names(Class<?> program) {
    return Stream.concat(
            Stream.of("help"),
            Arrays.stream(program.getAnnotation(Command.class).subcommands())
                .map(each -> each.getAnnotation(Command.class))
                .map(Command::name))
        .toList();
  }

  @Test
  void everyToolExists() throws IOException {
    List<String> missing = new ArrayList<>();
    for (Path page : pages()) {
      for (MatchResult tool : all(TOOL, text(page))) {
        if (!Files.exists(Path.of("tools", tool.group(1)))) {
          missing.add(page + ": " + tool.group());
        }
      }
    }
    assertEquals(List.of(), missing);
  }

  @Test
  void everyTestExists() throws IOException {
    TreeSet<String> named = new TreeSet<>();
    for (Path page : pages()) {
      all(TEST, text(page)).forEach(test -> named.add(test.group(1)));
    }
    assertFalse(named.isEmpty());
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      files.forEach(file -> named.remove(file.getFileName().toString().replace(".java", "")));
    }
    assertEquals(List.of(), List.copyOf(named));
  }

  @Test
  void everyFileOfTheWalksExists() throws IOException {
    List<MatchResult> named = all(SOURCE, text(Path.of("docs/architecture.md")));
    assertFalse(named.isEmpty());
    assertEquals(
        List.of(),
        named.stream()
            .map(file -> file.group(1))
            .filter(file -> !Files.exists(MAIN.resolve(file + ".java")))
            .toList());
  }

  @Test
  void theTableOfRoomsIsThatOfRoomsTest() throws IOException {
    String page = text(Path.of("docs/architecture.md"));
    List<String> missing =
        RoomsTest.MAY_IMPORT.entrySet().stream()
            .filter(room -> exists(room.getKey()))
            .filter(room -> !hasRow(page, room.getKey(), room.getValue()))
            .map(room -> room.getKey() + ": " + cell(room.getValue()))
            .toList();
    assertEquals(List.of(), missing);
  }

  private static boolean hasRow(String page, String room, List<String> imports) {
    return page.lines()
        .anyMatch(
            line ->
                line.startsWith("| `" + room + "` | ")
                    && line.endsWith(" | " + cell(imports) + " |"));
  }

  private static String cell(List<String> imports) {
    String rooms =
        imports.stream()
            .filter(DocsTest::exists)
            .map(room -> "`" + room + "`")
            .collect(Collectors.joining(", "));
    return rooms.isEmpty() ? "–" : rooms;
  }

  private static boolean exists(String room) {
    return Files.isDirectory(MAIN.resolve(room));
  }

  private static List<MatchResult> all(Pattern pattern, String text) {
    return pattern.matcher(text).results().toList();
  }

  private static String text(Path page) throws IOException {
    return Files.readString(page, StandardCharsets.UTF_8);
  }

  private static List<Path> pages() throws IOException {
    List<Path> pages = new ArrayList<>();
    for (String root : List.of("README.md", "DEVELOPERS.md", "SECURITY.md", "CHANGELOG.md")) {
      pages.add(Path.of(root));
    }
    for (String folder : List.of("docs", "sample-clips-synthetic", "src/test/resources")) {
      try (Stream<Path> files = Files.walk(Path.of(folder))) {
        files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(pages::add);
      }
    }
    return pages;
  }
}
