package palmturn.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.store.FailingDisk.Step;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** Each step that can fail on a full or protected disk loses nothing and says one line. */
class FullDiskTest {
  private static final TrialId RIGHT = SampleFiles.RIGHT;
  private static final String FULL = "No space left on device";

  private final FailingDisk disk = new FailingDisk();
  @TempDir Path temp;

  private Path folder() {
    return temp.resolve("session");
  }

  private SessionFolder made() throws StoreException {
    SessionFolder made =
        SessionFolder.create(folder(), SampleFiles.fullSession(), Clock.systemUTC(), disk);
    made.save(SampleFiles.plainTrial(RIGHT));
    return made;
  }

  private static Reading marks(int seed) {
    return SampleFiles.randomReading("AB", 20, new Random(seed));
  }

  private Trial onDisk() throws StoreException {
    try (SessionFolder looking = SessionFolder.openReadOnly(folder())) {
      return looking.trial(RIGHT);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"WRITE_NEW", "MOVE"})
  void aFileThatCantBeReplacedIsStillWhole(Step step) throws Exception {
    try (SessionFolder session = made()) {
      session.keep(RIGHT, marks(1), "one");
      Map<String, String> before = SessionFolderTest.contents(folder());
      disk.fail(step);
      SessionFolderTest.assertSays(
          "session.json: can't be written: No space left on device; what was saved before",
          assertThrows(
              StoreException.class, () -> session.change(now -> now.withMessages(List.of()))));
      SessionFolderTest.assertSays(
          FULL, assertThrows(StoreException.class, () -> session.save(SampleFiles.fullTrial())));
      assertEquals(before, SessionFolderTest.contents(folder()), "no half file is left either");
      assertEquals(SampleFiles.fullSession(), session.session());
      assertEquals(marks(1), session.trial(RIGHT).reading("AB").orElseThrow());
      disk.mend();
      session.save(SampleFiles.fullTrial());
      assertEquals(SampleFiles.fullTrial(), onDisk());
    }
  }

  @Test
  void aSystemThatCantMoveInOneStepIsRefusedNotWorkedAround() throws Exception {
    try (SessionFolder session = made()) {
      Trial before = onDisk();
      disk.fail(Step.MOVE, 1, new AtomicMoveNotSupportedException("a", "b", "not here"));
      assertThrows(StoreException.class, () -> session.save(SampleFiles.fullTrial()));
      assertEquals(before, onDisk());
      disk.mend();
    }
  }

  @Test
  void anEditThatCantBeSavedIsSaidAndTheOnesBeforeAreThere() throws Exception {
    SessionFolder session = made();
    session.keep(RIGHT, marks(1), "one");
    disk.fail(Step.WRITE_FROM);
    SessionFolderTest.assertSays(
        "this edit could not be saved: No space left on device",
        assertThrows(StoreException.class, () -> session.keep(RIGHT, marks(2), "two")));
    assertEquals(marks(1), session.trial(RIGHT).reading("AB").orElseThrow());
    assertEquals(marks(1), onDisk().reading("AB").orElseThrow());
    disk.mend();
    session.keep(RIGHT, marks(3), "three");
    assertEquals(marks(3), onDisk().reading("AB").orElseThrow());
    session.close();
    assertEquals(marks(3), onDisk().reading("AB").orElseThrow());
  }

  @Test
  void anEditRefusedAsTheFirstOfAllLeavesNothingBehindOnClosing() throws Exception {
    SessionFolder session = made();
    Trial before = onDisk();
    // The line itself is whole on the disk; only the folder could not be forced.
    disk.fail(Step.FORCE_FOLDER);
    assertThrows(StoreException.class, () -> session.keep(RIGHT, marks(2), "two"));
    disk.mend();
    session.close();
    assertEquals(before, onDisk());
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"WRITE_NEW", "MOVE", "WRITE_FROM", "FORCE_FOLDER"})
  void aJournalThatCantBeFoldedOnClosingIsReadTheNextTime(Step step) throws Exception {
    SessionFolder session = made();
    session.keep(RIGHT, marks(1), "one");
    session.keep(RIGHT, marks(2), "two");
    disk.fail(step);
    SessionFolderTest.assertSays(FULL, assertThrows(StoreException.class, session::close));
    disk.mend();
    try (SessionFolder again = SessionFolder.open(folder())) {
      assertEquals(marks(2), again.trial(RIGHT).reading("AB").orElseThrow());
    }
    assertEquals(marks(2), onDisk().reading("AB").orElseThrow());
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"WRITE_NEW", "MOVE", "WRITE_FROM", "FORCE_FOLDER", "DELETE"})
  void aLongJournalThatCantBeFoldedStillTakesEdits(Step step) throws Exception {
    SessionFolder session = made();
    Reading last = marks(0);
    boolean folding = true;
    for (int i = 0; i < 60; i++) {
      Reading next = SampleFiles.randomReading("AB", 400, new Random(i));
      // A journal's own line is the first write of an edit; those after it belong to the folding.
      disk.fail(step, step == Step.WRITE_FROM ? 2 : 1, new IOException("broken"));
      try {
        session.keep(RIGHT, next, "Edit");
        last = next;
      } catch (StoreException e) {
        // Forcing the folder may fail for the line itself when it is the journal's first.
        assertTrue(step == Step.FORCE_FOLDER, e.getMessage());
        folding = false;
      }
      disk.mend();
      if (!folding) {
        session.keep(RIGHT, next, "Edit");
        last = next;
        folding = true;
      }
      if (i % 10 == 9) {
        assertEquals(last, onDisk().reading("AB").orElseThrow(), "after " + i);
      }
    }
    session.close();
    assertEquals(last, onDisk().reading("AB").orElseThrow());
  }

  /** Whatever fails at whatever moment, what keep or save has returned from is on the disk. */
  @ParameterizedTest
  @ValueSource(longs = {41, 42, 43, 44, 45, 46, 47, 48})
  void randomFailuresLoseNothingThatWasKept(long seed) throws Exception {
    Random random = new Random(seed);
    SessionFolder session = made();
    Trial kept = session.trial(RIGHT);
    for (int i = 0; i < 150; i++) {
      if (random.nextInt(2) == 0) {
        disk.fail(
            Step.values()[random.nextInt(Step.values().length)],
            1 + random.nextInt(3),
            new IOException("broken"));
      }
      Trial next = kept.withReading(marks(random.nextInt()));
      try {
        switch (random.nextInt(8)) {
          case 0 -> {
            Trial bare = SampleFiles.plainTrial(RIGHT);
            session.save(bare);
            kept = bare;
          }
          case 1 -> {
            session.save(next);
            kept = next;
          }
          case 2 -> {
            session.close();
            session = null;
          }
          default -> {
            session.keep(RIGHT, next.reading("AB").orElseThrow(), "Edit");
            kept = next;
          }
        }
      } catch (StoreException e) {
        // Said, and not counted as kept; what is on the disk now may be either.
        if (session != null) {
          kept = e.getMessage().contains("closed") ? kept : settled(session, kept);
        }
      }
      disk.mend();
      if (session == null || random.nextInt(4) == 0) {
        if (session != null) {
          session.close();
        }
        session = SessionFolder.open(folder(), Clock.systemUTC(), disk);
        assertEquals(kept, session.trial(RIGHT), "seed %d step %d".formatted(seed, i));
      }
    }
    session.close();
  }

  private static Trial settled(SessionFolder session, Trial kept) throws StoreException {
    assertEquals(kept, session.trial(RIGHT), "what could not be saved is not shown as saved");
    return kept;
  }

  @Test
  void aProtectedFolderCanOnlyBeLookedAt() throws Exception {
    made().close();
    Map<String, String> before = SessionFolderTest.contents(folder());
    disk.fail(Step.LOCK, 1, new AccessDeniedException(folder().toString()));
    SessionFolderTest.assertSays(
        "the folder can't be written to; this session can only be looked at",
        assertThrows(
            StoreException.class, () -> SessionFolder.open(folder(), Clock.systemUTC(), disk)));
    assertEquals(before, SessionFolderTest.contents(folder()));
    assertEquals(SampleFiles.plainTrial(RIGHT), onDisk());
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"CREATE_FOLDERS", "LOCK", "WRITE_NEW", "MOVE"})
  void aSessionThatCouldNotBeMadeCanBeMadeLater(Step step) throws Exception {
    disk.fail(step);
    SessionFolderTest.assertSays(FULL, assertThrows(StoreException.class, this::made));
    disk.mend();
    made().close();
    assertEquals(SampleFiles.plainTrial(RIGHT), onDisk());
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"WRITE_NEW", "MOVE", "CREATE_FOLDERS"})
  void aClipThatCantBeCopiedLeavesNoHalfClip(Step step) throws Exception {
    try (SessionFolder session = made()) {
      Path source = Files.writeString(temp.resolve("a.mp4"), "x".repeat(100_000));
      disk.fail(step);
      SessionFolderTest.assertSays(
          "a.mp4: can't be copied into",
          assertThrows(StoreException.class, () -> session.importClip(source)));
      assertEquals(List.of(), SessionFolderTest.files(folder().resolve("clips")));
      disk.mend();
      assertEquals("clips/a.mp4", session.importClip(source));
    }
  }
}
