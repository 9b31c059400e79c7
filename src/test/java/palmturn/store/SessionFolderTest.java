package palmturn.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class SessionFolderTest {
  private static final TrialId RIGHT = SampleFiles.RIGHT;
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-05-01T10:00:00Z"), ZoneOffset.UTC);

  @TempDir Path temp;

  private Path folder() {
    return temp.resolve("h-07 früh");
  }

  private SessionFolder made() throws StoreException {
    SessionFolder made = SessionFolder.create(folder(), SampleFiles.fullSession());
    made.save(SampleFiles.plainTrial(RIGHT));
    return made;
  }

  private static Reading marks(String reader, int count) {
    Reading reading = Reading.begin(reader, StartedFrom.NOTHING);
    for (int i = 0; i < count; i++) {
      reading =
          reading.plus(Slap.onFrame(Slap.Kind.SLAP, i / 4.0, 1 / 60.0, Side.PALM, Zone.CENTRE));
    }
    return reading;
  }

  @Test
  void whatIsSavedIsThereOnOpening() throws Exception {
    try (SessionFolder session = made()) {
      session.save(SampleFiles.fullTrial());
      session.keep(RIGHT, marks("AB", 3), "Add a slap");
      assertEquals(marks("AB", 3), session.trial(RIGHT).reading("AB").orElseThrow());
    }
    try (SessionFolder session = SessionFolder.open(folder())) {
      assertEquals(SampleFiles.fullSession(), session.session());
      assertEquals(
          SampleFiles.fullTrial().withReading(marks("AB", 3)),
          session.trials().get(0),
          "the other reader's marks too");
      assertEquals(List.of(), session.notices());
    }
    assertEquals(List.of(".lock", "session.json", "trials/right-baseline-1.json"), files(folder()));
  }

  @Test
  void trialsComeInTheOrderOfTheBoard() throws Exception {
    List<String> wanted =
        List.of(
            "left-baseline-1",
            "right-baseline-1",
            "left-baseline-2",
            "right-baseline-10",
            "left-after-2-1",
            "left-after-10-1");
    try (SessionFolder session = SessionFolder.create(folder(), SampleFiles.fullSession())) {
      List<String> other = new ArrayList<>(wanted);
      Collections.shuffle(other, new Random(5));
      for (String name : other) {
        session.save(SampleFiles.plainTrial(TrialId.parse(name)));
      }
      assertEquals(wanted, session.trials().stream().map(t -> t.id().name()).toList());
    }
    try (SessionFolder session = SessionFolder.openReadOnly(folder())) {
      assertEquals(wanted, session.trials().stream().map(t -> t.id().name()).toList());
    }
  }

  @Test
  void anEditIsInTheJournalBeforeKeepReturns() throws Exception {
    SessionFolder session = SessionFolder.create(folder(), SampleFiles.fullSession());
    session.save(SampleFiles.plainTrial(RIGHT));
    session.close();
    session = SessionFolder.open(folder(), CLOCK);
    byte[] before = Files.readAllBytes(trialFile());
    session.keep(RIGHT, marks("AB", 1), "Add a slap at 0.000 s");
    session.keep(RIGHT, marks("AB", 2), "Add a slap at 0.250 s");
    session.keep(RIGHT, marks("CD", 1), "Add a slap at 0.000 s");
    List<String> lines = Files.readAllLines(journal());
    assertEquals(3, lines.size());
    assertTrue(lines.get(1).contains("\"at\":\"2026-05-01T10:00:00Z\""), lines.get(1));
    assertTrue(lines.get(1).contains("Add a slap at 0.250 s"), lines.get(1));
    assertEquals(new String(before), Files.readString(trialFile()), "the file comes later");
    try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
      assertEquals(marks("AB", 2), looking.trial(RIGHT).reading("AB").orElseThrow());
      assertEquals(marks("CD", 1), looking.trial(RIGHT).reading("CD").orElseThrow());
    }
    session.close();
    assertFalse(Files.exists(journal()));
    try (SessionFolder again = SessionFolder.open(folder())) {
      assertEquals(marks("AB", 2), again.trial(RIGHT).reading("AB").orElseThrow());
    }
  }

  @Test
  void aLongJournalIsFoldedIntoTheFile() throws Exception {
    try (SessionFolder session = made()) {
      Random random = new Random(3);
      Reading last = marks("AB", 0);
      for (int i = 0; i < 150; i++) {
        last = SampleFiles.randomReading("AB", 60, random);
        session.keep(RIGHT, last, "Edit");
        assertTrue(!Files.exists(journal()) || Files.size(journal()) < 1_100_000);
      }
      assertTrue(Files.size(trialFile()) > 2_000, "folded at least once");
      try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
        assertEquals(last, looking.trial(RIGHT).reading("AB").orElseThrow());
      }
    }
  }

  @Test
  void savingATrialWinsOverItsOlderEdits() throws Exception {
    try (SessionFolder session = made()) {
      session.keep(RIGHT, marks("AB", 3), "Add a slap");
      session.save(SampleFiles.plainTrial(RIGHT));
      try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
        assertEquals(List.of(), looking.trial(RIGHT).readings());
      }
    }
  }

  @Test
  void aClockThatIsSetBackPutsNoOlderEditFirst() throws Exception {
    made().close();
    SessionFolder before = SessionFolder.open(folder(), CLOCK);
    before.keep(RIGHT, marks("AB", 1), "one");
    byte[] journal = Files.readAllBytes(journal());
    byte[] trial = Files.readAllBytes(trialFile());
    before.close();
    Files.write(trialFile(), trial);
    Files.write(journal(), journal);
    Clock yearsBack = Clock.fixed(Instant.EPOCH, ZoneOffset.UTC);
    SessionFolder after = SessionFolder.open(folder(), yearsBack);
    after.keep(RIGHT, marks("AB", 2), "two");
    try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
      assertEquals(marks("AB", 2), looking.trial(RIGHT).reading("AB").orElseThrow());
    }
    after.close();
    try (SessionFolder again = SessionFolder.open(folder())) {
      assertEquals(marks("AB", 2), again.trial(RIGHT).reading("AB").orElseThrow());
    }
  }

  /** Cut at every byte of its last line, a journal still has all lines before. */
  @Test
  void aTornLastLineIsLeftOutAndTheNextEditIsNotSpoiledByIt() throws Exception {
    SessionFolder session = made();
    session.keep(RIGHT, marks("AB", 1), "one");
    long whole = Files.size(journal());
    session.keep(RIGHT, marks("AB", 2), "two");
    byte[] bytes = Files.readAllBytes(journal());
    byte[] trial = Files.readAllBytes(trialFile());
    session.close();
    for (int cut = (int) whole + 1; cut < bytes.length; cut += 13) {
      Files.write(trialFile(), trial);
      Files.write(journal(), Arrays.copyOf(bytes, cut));
      try (SessionFolder again = SessionFolder.open(folder())) {
        assertEquals(marks("AB", 1), again.trial(RIGHT).reading("AB").orElseThrow(), "cut " + cut);
        assertEquals(1, again.notices().size());
        again.keep(RIGHT, marks("AB", 3), "three");
        try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
          assertEquals(marks("AB", 3), looking.trial(RIGHT).reading("AB").orElseThrow());
          assertEquals(List.of(), looking.notices());
        }
      }
    }
  }

  /** Every line holds the whole reading, so that those around a damaged one say what was saved. */
  @Test
  void aDamagedLineIsSaidAndThoseAroundItAreRead() throws Exception {
    SessionFolder session = made();
    session.keep(RIGHT, marks("AB", 1), "one");
    session.keep(RIGHT, marks("CD", 2), "two");
    session.keep(RIGHT, marks("AB", 3), "three");
    String text = Files.readString(journal());
    byte[] trial = Files.readAllBytes(trialFile());
    session.close();
    String damaged = text.replaceFirst("palm\"", "back\"");
    Files.write(trialFile(), trial);
    Files.writeString(journal(), damaged);
    try (SessionFolder again = SessionFolder.open(folder())) {
      assertEquals(marks("AB", 3), again.trial(RIGHT).reading("AB").orElseThrow());
      assertEquals(marks("CD", 2), again.trial(RIGHT).reading("CD").orElseThrow());
      assertTrue(
          again.notices().get(0).contains("damaged in 1 of its lines"), again.notices()::toString);
      again.keep(RIGHT, marks("AB", 4), "four");
    }
    assertEquals(
        damaged,
        Files.readString(folder().resolve("trials/right-baseline-1.journal.damaged"))
            .substring(0, damaged.length()),
        "what was damaged is put aside, not deleted");
    try (SessionFolder again = SessionFolder.open(folder())) {
      assertEquals(marks("AB", 4), again.trial(RIGHT).reading("AB").orElseThrow());
      assertEquals(List.of(), again.notices());
    }
  }

  /** A hole of zeros, as a write at a remembered length once left it. */
  @Test
  void whatComesAfterAHoleIsRead() throws Exception {
    SessionFolder session = made();
    session.keep(RIGHT, marks("AB", 2), "two");
    byte[] line = Files.readAllBytes(journal());
    byte[] trial = Files.readAllBytes(trialFile());
    session.close();
    byte[] holed = new byte[1577 + line.length];
    System.arraycopy(line, 0, holed, 1577, line.length);
    Files.write(trialFile(), trial);
    Files.write(journal(), holed);
    try (SessionFolder again = SessionFolder.open(folder())) {
      assertEquals(marks("AB", 2), again.trial(RIGHT).reading("AB").orElseThrow());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "session.json | \"version\": 1 | \"version\": 2 | session.json: written by a newer Palmturn: palmturn-session version 2",
        "session.json | \"date\" | date | session.json: damaged at line 5, column",
        "trials/right-baseline-1.json | \"version\": 1 | \"version\": 9 | right-baseline-1.json: written by a newer Palmturn",
        "trials/right-baseline-1.json | } | x | right-baseline-1.json: damaged at line",
        "trials/right-baseline-1.json | \"repeat\": 1 | \"repeat\": 2 | right-baseline-1.json: holds the trial right-baseline-2",
        "trials/right-baseline-1.json | clips/right | clips/../../right | $.clip.path: \"clips/../../right.mp4\" is not a path inside",
        "trials/right-baseline-1.json | clips/right | /etc/right | is not a path inside the session's folder",
        "trials/right-baseline-1.json | clips/right | C:/right | is not a path inside the session's folder",
        "trials/right-baseline-1.json | clips/right | c\\\\\\\\right | is not a path inside the session's folder",
      })
  void aDamagedNewerOrHostileFileIsLeftOutAndLeftAlone(
      String file, String was, String now, String says) throws Exception {
    SessionFolder made = made();
    TrialId other = new TrialId(Hand.LEFT, "baseline", 1);
    made.save(SampleFiles.plainTrial(other));
    made.close();
    Path path = folder().resolve(file);
    String text = Files.readString(path);
    assertTrue(text.contains(was));
    Files.writeString(path, text.replace(was, now.replace("\\\\\\\\", "\\\\")));
    if (file.equals("session.json")) {
      refusesToOpenAndLeavesAll(says);
      return;
    }
    Map<String, String> before = contents(folder());
    try (SessionFolder open = SessionFolder.open(folder())) {
      assertEquals(List.of(other), open.trials().stream().map(Trial::id).toList());
      assertTrue(open.damaged().get(RIGHT).contains(says), open.damaged()::toString);
      assertTrue(open.notices().get(0).contains(says), open.notices()::toString);
      assertThrows(StoreException.class, () -> open.save(SampleFiles.plainTrial(RIGHT)));
    }
    assertEquals(before, contents(folder()));
  }

  @Test
  void aFileThatIsNotTextIsRefused() throws Exception {
    made().close();
    Files.write(folder().resolve("session.json"), new byte[] {'{', (byte) 0xff, '}'});
    refusesToOpenAndLeavesAll("session.json: damaged: it is not UTF-8 text");
  }

  private void refusesToOpenAndLeavesAll(String says) throws IOException {
    Map<String, String> before = contents(folder());
    assertSays(says, assertThrows(StoreException.class, () -> SessionFolder.open(folder())));
    assertSays(
        says, assertThrows(StoreException.class, () -> SessionFolder.openReadOnly(folder())));
    assertEquals(before, contents(folder()));
    assertSays(
        says,
        assertThrows(StoreException.class, () -> SessionFolder.open(folder())),
        "the lock is given back");
  }

  @Test
  void whatIsNoSessionIsRefused() throws Exception {
    assertSays(
        "there is no such folder",
        assertThrows(StoreException.class, () -> SessionFolder.open(folder())));
    Files.createDirectories(folder());
    assertSays(
        "is not a session's folder: there is no session.json in it",
        assertThrows(StoreException.class, () -> SessionFolder.open(folder())));
    assertEquals(List.of(), files(folder()));
    Path file = Files.writeString(temp.resolve("file"), "x");
    assertThrows(StoreException.class, () -> SessionFolder.open(file));
    assertThrows(StoreException.class, () -> SessionFolder.create(file, SampleFiles.fullSession()));
    assertEquals("x", Files.readString(file));
  }

  @Test
  void aFolderThatHoldsSomethingIsNotMadeASession() throws Exception {
    made().close();
    Map<String, String> before = contents(folder());
    Session other = SampleFiles.fullSession().withMessages(List.of());
    assertSays(
        "there is a session in it already",
        assertThrows(StoreException.class, () -> SessionFolder.create(folder(), other)));
    assertEquals(before, contents(folder()));
    Path full = Files.createDirectories(temp.resolve("full"));
    Files.writeString(full.resolve("thesis.txt"), "x");
    assertSays(
        "is not empty",
        assertThrows(StoreException.class, () -> SessionFolder.create(full, other)));
    assertEquals(List.of("thesis.txt"), files(full));
  }

  @Test
  void whatAKilledAttemptHasLeftDoesNotStandInTheWay() throws Exception {
    Files.createDirectories(folder().resolve("trials"));
    Files.writeString(folder().resolve(".lock"), "");
    Files.writeString(folder().resolve(".session.json.new"), "{\"form");
    made().close();
    assertEquals(List.of(".lock", "session.json", "trials/right-baseline-1.json"), files(folder()));
  }

  @Test
  void onePalmturnWritesAtATime() throws Exception {
    try (SessionFolder first = made()) {
      assertSays(
          "is open in another Palmturn; this one is read-only",
          assertThrows(StoreException.class, () -> SessionFolder.open(folder())));
      first.keep(RIGHT, marks("AB", 1), "the first still writes");
      Path sameByOtherName = folder().resolve("trials").resolve("..");
      assertThrows(StoreException.class, () -> SessionFolder.open(sameByOtherName));
    }
    SessionFolder.open(folder()).close();
  }

  @Test
  void whoLooksWritesNothing() throws Exception {
    SessionFolder writer = made();
    writer.keep(RIGHT, marks("AB", 1), "one");
    Map<String, String> before = contents(folder());
    try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
      assertTrue(looking.readOnly());
      Path clip = Files.writeString(temp.resolve("a.mp4"), "x");
      for (Executable write :
          List.<Executable>of(
              () -> looking.keep(RIGHT, marks("AB", 2), "two"),
              () -> looking.save(SampleFiles.fullTrial()),
              () -> looking.change(now -> now),
              () -> looking.importClip(clip))) {
        assertSays("is open read-only", assertThrows(StoreException.class, write));
      }
    }
    assertEquals(before, contents(folder()));
    writer.close();
  }

  @Test
  void aTrialThatIsNotThereIsSaid() throws Exception {
    try (SessionFolder session = made()) {
      TrialId none = new TrialId(Hand.LEFT, "baseline", 7);
      assertSays(
          "there is no trial left-baseline-7",
          assertThrows(StoreException.class, () -> session.trial(none)));
      assertThrows(StoreException.class, () -> session.keep(none, marks("AB", 1), "x"));
    }
  }

  @Test
  void whatCouldNotBeReadAgainIsNotWritten() throws Exception {
    try (SessionFolder session = made()) {
      Reading never =
          marks("AB", 1)
              .plus(Slap.onFrame(Slap.Kind.SLAP, Double.NaN, 0.01, Side.PALM, Zone.CENTRE));
      Reading nobody = marks(" ", 1);
      Trial hostile = SampleFiles.plainTrial(RIGHT, "../x.mp4", SampleFiles.SHA);
      Map<String, String> before = contents(folder());
      assertSays(
          "timeS can't be NaN",
          assertThrows(StoreException.class, () -> session.keep(RIGHT, never, "x")));
      assertSays(
          "a reader needs a name",
          assertThrows(StoreException.class, () -> session.keep(RIGHT, nobody, "x")));
      assertThrows(
          StoreException.class,
          () -> session.save(SampleFiles.plainTrial(RIGHT).withReading(never)));
      assertSays(
          "not inside the session's folder",
          assertThrows(StoreException.class, () -> session.save(hostile)));
      assertEquals(before, contents(folder()));
      assertEquals(List.of(), session.trial(RIGHT).readings());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"right-baseline-1 (copy).json", "notes.json"})
  void aStrangeFileAmongTheTrialsIsLeftAloneAndSaid(String name) throws Exception {
    made().close();
    Path strange = Files.writeString(folder().resolve("trials").resolve(name), "{");
    try (SessionFolder session = SessionFolder.open(folder())) {
      assertEquals(1, session.trials().size());
      assertTrue(session.notices().get(0).contains(name));
    }
    assertEquals("{", Files.readString(strange));
  }

  private Path trialFile() {
    return folder().resolve("trials/right-baseline-1.json");
  }

  private Path journal() {
    return folder().resolve("trials/right-baseline-1.journal");
  }

  static List<String> files(Path folder) throws IOException {
    return List.copyOf(contents(folder).keySet());
  }

  static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        contents.put(
            folder.relativize(file).toString().replace('\\', '/'),
            HexFormat.of().formatHex(Files.readAllBytes(file)));
      }
    }
    return contents;
  }

  static void assertSays(String expected, StoreException e, String... why) {
    String message = String.valueOf(e.getMessage());
    assertTrue(
        message.contains(expected),
        () -> "%s \"%s\" in: %s".formatted(String.join(" ", why), expected, message));
    assertEquals(1, message.lines().count(), message);
  }
}
