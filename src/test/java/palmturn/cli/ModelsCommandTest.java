package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.estimate.hands.Installed;
import palmturn.estimate.hands.ModelFile;
import palmturn.estimate.hands.ModelFile.NpmPackage;

/** The networks as the command line tells of them, in a user's folder made for it. */
class ModelsCommandTest {
  private static final String FOLDER = "palmturn.models";

  @TempDir Path folder;
  private Path models;
  private String before;

  @BeforeEach
  void aFolderOfOnesOwn() {
    before = System.getProperty(FOLDER);
    models = folder.resolve("my models");
    System.setProperty(FOLDER, models.toString());
  }

  @AfterEach
  void theUsersFolderAgain() {
    if (before == null) {
      System.clearProperty(FOLDER);
    } else {
      System.setProperty(FOLDER, before);
    }
  }

  @Test
  void withoutThemEverythingElseWorksAndTheWayIsNamed() {
    Run run = Run.of("models");
    assertEquals(0, run.status(), run.err());
    assertTrue(run.out().contains("everything else works"), run.out());
    assertTrue(run.out().contains("tools/get-landmark-models"), run.out());
    assertTrue(run.out().contains(models.toString()), run.out());
    assertTrue(run.out().contains("Apache-2.0"), run.out());
    Run json = Run.of("models", "--json");
    assertEquals(0, json.status(), json.err());
    assertEquals(ModelFile.ALL.size(), json.out().split("\"state\":\"missing\"", -1).length - 1);
    assertTrue(json.out().contains("\"installedOn\":null"), json.out());
    assertTrue(json.out().contains("\"installed\": false"), json.out());
  }

  static List<NpmPackage> packages() {
    return NpmPackage.ALL;
  }

  @ParameterizedTest
  @MethodSource("packages")
  void theToolIsToldWhatToBring(NpmPackage npm) {
    Run run = Run.of("models", "--wanted");
    assertEquals(0, run.status(), run.err());
    assertTrue(
        run.out()
            .lines()
            .anyMatch(line -> line.matches(npm.packageName() + "@" + npm.version() + " \\d+")),
        run.out());
  }

  @ParameterizedTest
  @MethodSource("packages")
  void theWayByHandInTheDocsBringsTheSame(NpmPackage npm) throws IOException {
    String page = Files.readString(Path.of("docs/shape.md"));
    assertTrue(page.contains(npm.packageName() + "@" + npm.version()), page);
  }

  @Test
  void aDamagedOneIsStatus1AndNamed() throws IOException {
    String name = ModelFile.HAND_LANDMARK_FULL.fileName();
    Files.createDirectories(models);
    Files.writeString(models.resolve(name), "no network");
    for (String option : new String[] {"--json", null}) {
      Run run = option == null ? Run.of("models") : Run.of("models", option);
      assertEquals(1, run.status());
      assertEquals(1, run.errorLines(), run.err());
      assertTrue(run.err().contains(name), run.err());
      assertTrue(run.out().contains("damaged"), run.out());
    }
  }

  @Test
  void aFolderWithoutThemIsStatus1AndOneLine() {
    Run run = Run.of("models", "--from", folder);
    assertEquals(1, run.status());
    assertEquals(1, run.errorLines(), run.err());
    assertTrue(run.err().contains(folder.toString()), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"--json --remove", "--origin here", "--from"})
  void wrongUseIsStatus2(String words) {
    Object[] args = Stream.concat(Stream.of("models"), Stream.of(words.split(" "))).toArray();
    assertEquals(2, Run.of(args).status());
  }

  @Test
  void theRealOnesAreInstalledListedAndTakenAway() {
    System.clearProperty(FOLDER);
    if (before != null) {
      System.setProperty(FOLDER, before);
    }
    Path real = Installed.folder();
    System.setProperty(FOLDER, models.toString());

    Run install = Run.of("models", "--from", real, "--origin", "another folder");
    assertEquals(0, install.status(), install.err());
    Run list = Run.of("models");
    assertEquals(0, list.status(), list.err());
    assertTrue(list.out().contains("from another folder"), list.out());
    assertTrue(!list.out().contains("not installed"), list.out());
    assertEquals("", Run.of("models", "--wanted").out());
    assertEquals(0, Run.of("models", "--remove").status());
    assertTrue(Files.notExists(models));
  }
}
