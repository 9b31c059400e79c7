package palmturn.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/** A session whose files another program moves, restores or replaces while it is open. */
class ForeignChangeTest {
  private static final TrialId RIGHT = SampleFiles.RIGHT;
  private static final TrialId LEFT = new TrialId(Hand.LEFT, "baseline", 1);

  @TempDir Path temp;
  private Path folder;
  private SessionFolder open;

  @BeforeEach
  void threeMarksAreSaved() throws Exception {
    folder = temp.resolve("session");
    open = SessionFolder.create(folder, SampleFiles.fullSession());
    open.save(SampleFiles.plainTrial(RIGHT));
    open.save(SampleFiles.plainTrial(LEFT));
    for (int i = 1; i <= 3; i++) {
      open.keep(RIGHT, marks("AB", i), "Add a slap");
    }
  }

  @AfterEach
  void closes() {
    try {
      open.close();
    } catch (StoreException e) {
      // Each test says what closing does where it is about that.
    }
  }

  private static Reading marks(String reader, int count) {
    Reading reading = Reading.begin(reader, StartedFrom.NOTHING);
    for (int i = 0; i < count; i++) {
      reading =
          reading.plus(Slap.onFrame(Slap.Kind.SLAP, i / 4.0, 1 / 60.0, Side.PALM, Zone.CENTRE));
    }
    return reading;
  }

  private Path journal() {
    return folder.resolve("trials/right-baseline-1.journal");
  }

  private Path trialFile() {
    return folder.resolve("trials/right-baseline-1.json");
  }

  private void refusesTheNextMark() {
    StoreException refused =
        assertThrows(
            ForeignChangeException.class, () -> open.keep(RIGHT, marks("AB", 4), "Add a slap"));
    assertTrue(
        refused.getMessage().contains("the file was changed by another program"),
        refused.getMessage());
  }

  private List<String> readersOnDisk() throws StoreException {
    try (SessionFolder looking = SessionFolder.openReadOnly(folder)) {
      assertEquals(List.of(), looking.notices());
      return looking.trial(RIGHT).readings().stream()
          .map(each -> each.reader() + " " + each.slaps().size())
          .toList();
    }
  }

  @Test
  void aJournalThatWasMovedAwayTakesNoMark() throws Exception {
    Path away = temp.resolve("away");
    Files.move(journal(), away);
    refusesTheNextMark();
    assertFalse(Files.exists(journal()), "no journal with a hole");
    Reading put = open.keepBeside(RIGHT, marks("AB", 4), "Kept");
    assertEquals("AB", put.reader(), "nobody else has the name by now");
    open.keep(RIGHT, marks("AB", 5), "Add a slap");
    assertEquals(List.of("AB 5"), readersOnDisk());
    open.close();
    Files.move(away, journal());
    assertEquals(List.of("AB 5", "AB-2 3"), readersOnDisk(), "back from where it was");
    open = SessionFolder.open(folder);
    assertFalse(Files.exists(journal()));
    open.keep(RIGHT, marks("AB", 6), "Add a slap");
    assertEquals(List.of("AB 6", "AB-2 3"), readersOnDisk());
  }

  @Test
  void aTrialFileRestoredFromBeforeAndItsJournalAreBothKept() throws Exception {
    byte[] older = Files.readAllBytes(trialFile());
    open.close();
    open = SessionFolder.open(folder);
    open.keep(RIGHT, marks("AB", 5), "Add slaps");
    open.keep(RIGHT, marks("CD", 1), "Add a slap");
    Path copy = temp.resolve("copy");
    copyFolder(folder, copy);
    String noise = new String(older).replaceFirst("\\{", "{ \"note\": 1,");
    Files.writeString(copy.resolve("trials/right-baseline-1.json"), noise);
    try (SessionFolder again = SessionFolder.open(copy)) {
      assertEquals(marks("AB", 5), again.trial(RIGHT).reading("AB").orElseThrow());
      assertEquals(marks("CD", 1), again.trial(RIGHT).reading("CD").orElseThrow());
    }
  }

  @Test
  void aJournalRestoredFromBeforeTakesNoMark() throws Exception {
    byte[] older = Files.readAllBytes(journal());
    open.keep(RIGHT, marks("AB", 4), "Add a slap");
    Files.write(journal(), older);
    assertThrows(
        ForeignChangeException.class, () -> open.keep(RIGHT, marks("AB", 5), "Add a slap"));
    assertEquals(List.of("AB 3"), readersOnDisk());
    open.keepBeside(RIGHT, marks("AB", 5), "Kept");
    assertEquals(List.of("AB 3", "AB-2 5"), readersOnDisk());
  }

  @Test
  void aJournalOfTheSameLengthWithAnotherLastLineTakesNoMark() throws Exception {
    byte[] other = Files.readAllBytes(journal());
    other[other.length - 5] ^= 1;
    Files.write(journal(), other);
    refusesTheNextMark();
  }

  @Test
  void aCopyUnderTheSameNameTakesNoMark() throws Exception {
    Path copy = temp.resolve("copy");
    Files.copy(journal(), copy);
    Files.move(copy, journal(), StandardCopyOption.REPLACE_EXISTING);
    refusesTheNextMark();
    assertEquals(List.of("AB 3"), readersOnDisk());
  }

  @Test
  void aFolderReplacedByACopyLosesNothing() throws Exception {
    Path copy = temp.resolve("copy");
    copyFolder(folder, copy);
    open.keep(RIGHT, marks("AB", 4), "after the copy");
    Files.move(folder, temp.resolve("old"));
    Files.move(copy, folder);
    assertThrows(
        ForeignChangeException.class, () -> open.keep(RIGHT, marks("AB", 5), "Add a slap"));
    open.keepBeside(RIGHT, marks("AB", 5), "Kept");
    assertEquals(List.of("AB 3", "AB-2 5"), readersOnDisk());
  }

  @Test
  void anotherWriterAfterTheLockWasDeletedIsSeen() throws Exception {
    Files.delete(folder.resolve(".lock"));
    // In this test the other program is a process of its own, as locks belong to processes.
    assertEquals(
        3,
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Marker.class.getName(),
                folder.toString(),
                "7",
                "0")
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start()
            .waitFor());
    refusesTheNextMark();
    open.keepBeside(RIGHT, marks("AB", 4), "Kept");
    assertTrue(readersOnDisk().contains("AB-2 4"), readersOnDisk()::toString);
  }

  @Test
  void aFolderThatIsGoneTakesNoMark() throws Exception {
    Files.move(folder, temp.resolve("elsewhere"));
    assertThrows(StoreException.class, () -> open.keep(RIGHT, marks("AB", 4), "Add a slap"));
    assertFalse(Files.exists(folder));
  }

  @Test
  void aTrialFileOfAnotherProgramIsNotOverwritten() throws Exception {
    String foreign =
        Files.readString(trialFile())
            .replace("\"mirrored\": \"", "\"note\": 1,\n  \"mirrored\": \"");
    Files.writeString(trialFile(), foreign);
    assertThrows(ForeignChangeException.class, () -> open.save(SampleFiles.plainTrial(RIGHT)));
    assertEquals(foreign, Files.readString(trialFile()));
  }

  @Test
  void aSessionFileOfAnotherProgramIsNotOverwritten() throws Exception {
    Path file = folder.resolve("session.json");
    String foreign = Files.readString(file) + "\n";
    Files.writeString(file, foreign);
    assertThrows(ForeignChangeException.class, () -> open.change(now -> now.withFilmed(List.of())));
    assertEquals(foreign, Files.readString(file));
  }

  @Test
  void closingKeepsWhatAMovedJournalHeld() throws Exception {
    Files.delete(journal());
    open.keep(LEFT, marks("AB", 2), "on the other trial");
    assertTrue(
        assertThrows(StoreException.class, () -> open.close())
            .getMessage()
            .contains("another program has changed it"));
    assertEquals(List.of("AB 3"), readersOnDisk());
    SessionFolder.open(folder).close();
  }

  @Test
  void aTrialFileThatAnotherProgramDamagedIsPutAsideAndWrittenFromMemory() throws Exception {
    Files.writeString(trialFile(), "{");
    Files.delete(journal());
    assertThrows(
        ForeignChangeException.class, () -> open.keep(RIGHT, marks("AB", 4), "Add a slap"));
    open.keepBeside(RIGHT, marks("AB", 4), "Kept");
    assertTrue(readersOnDisk().contains("AB-2 4") || readersOnDisk().contains("AB 4"));
    assertEquals("{", Files.readString(folder.resolve("trials/right-baseline-1.json.damaged")));
  }

  /** Whatever another program does between two marks, the latest marks end up on the disk. */
  @ParameterizedTest
  @ValueSource(longs = {61, 62, 63, 64, 65, 66, 67, 68})
  void noOrderOfForeignChangesLosesTheLatestMarks(long seed) throws Exception {
    Random random = new Random(seed);
    List<Path> older = new ArrayList<>();
    Reading latest = marks("AB", 3);
    int refused = 0;
    for (int step = 0; step < 60; step++) {
      meddle(random, older, step);
      latest = marks(latest.reader(), 4 + step);
      try {
        open.keep(RIGHT, latest, "Add a slap");
      } catch (ForeignChangeException e) {
        refused++;
        latest = open.keepBeside(RIGHT, latest, "Kept");
      }
      try (SessionFolder looking = SessionFolder.openReadOnly(folder)) {
        assertEquals(
            latest,
            looking.trial(RIGHT).reading(latest.reader()).orElseThrow(),
            "seed " + seed + " step " + step);
      }
    }
    assertTrue(refused > 5, "it meddled: " + refused);
    try {
      open.close();
    } catch (StoreException e) {
      // It says that another program has changed the session; what counts is what is there.
      assertTrue(e.getMessage().contains("another program"), e.getMessage());
    }
    try (SessionFolder again = SessionFolder.open(folder)) {
      Reading wanted = latest;
      assertTrue(
          again.trial(RIGHT).readings().stream()
              .anyMatch(each -> each.slaps().equals(wanted.slaps())),
          "seed " + seed);
    }
  }

  private void meddle(Random random, List<Path> older, int step) throws IOException {
    Path trials = folder.resolve("trials");
    List<Path> files = new ArrayList<>();
    try (Stream<Path> all = Files.list(trials)) {
      all.filter(each -> each.toString().contains("right-baseline-1.j"))
          .filter(each -> !each.toString().endsWith(".damaged"))
          .forEach(files::add);
    }
    Path file = files.isEmpty() ? null : files.get(random.nextInt(files.size()));
    switch (random.nextInt(9)) {
      case 0 -> Files.deleteIfExists(journal());
      case 1 -> Files.deleteIfExists(folder.resolve(".lock"));
      case 2 -> {
        if (file != null) {
          Path copy = temp.resolve("older-" + step + "-" + file.getFileName());
          Files.copy(file, copy);
          older.add(copy);
        }
      }
      case 3, 4 -> {
        if (!older.isEmpty()) {
          Path back = older.get(random.nextInt(older.size()));
          String name = back.getFileName().toString().replaceFirst("older-\\d+-", "");
          Files.copy(back, trials.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        }
      }
      case 5 -> {
        if (file != null) {
          byte[] bytes = Files.readAllBytes(file);
          Files.write(file, Arrays.copyOf(bytes, bytes.length * random.nextInt(10) / 10));
        }
      }
      case 6 -> {
        if (Files.exists(journal())) {
          Files.write(journal(), new byte[random.nextInt(50)], StandardOpenOption.APPEND);
        }
      }
      default -> {
        // Most marks are made in peace.
      }
    }
  }

  private static void copyFolder(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path each : all.toList()) {
        Files.copy(each, to.resolve(from.relativize(each).toString()));
      }
    }
  }
}
