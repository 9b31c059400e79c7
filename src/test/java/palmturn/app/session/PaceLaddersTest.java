package palmturn.app.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.work.report.MarksFiles;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

class PaceLaddersTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir private Path where;
  private final PaceLadders ladder = new PaceLadders(Tasks.direct());

  @Test
  void pacesGoByOwnBestAndEachTrackIsWritten() throws Exception {
    try (SessionFolder session = session()) {
      ladder.compute(session, where.resolve("settings"));
      assertTrue(ladder.handsProperty().get().isEmpty());
      assertTrue(
          ladder.wordsProperty().get().startsWith("Session has no reading yet"),
          ladder.wordsProperty().get());
      MarksFiles.importMarks(
          session,
          new TrialId(Hand.RIGHT, "baseline", 1),
          CLIPS.resolve("right-baseline-1.marks.csv"),
          "A",
          false);
      ladder.compute(session, where.resolve("settings"));
      assertEquals("", ladder.wordsProperty().get());
      assertEquals(1, ladder.handsProperty().get().size());
      // Own best is 5.15 slaps/s.
      assertEquals(
          "[3.1, 3.9, 4.6]", ladder.handsProperty().get().get(0).pacesSlapsPerS().toString());

      ladder.save(where.resolve("nowhere"));
      assertTrue(ladder.wordsProperty().get().contains("can't be written"));
      ladder.save(where);
      ladder.save(where);
      assertEquals(
          "Written to %s: 3 tracks, from right-3.1.wav on.".formatted(where),
          ladder.wordsProperty().get());
      assertTrue(Files.size(where.resolve("right-4.6.wav")) > 6 * 48_000);
    }
  }

  private SessionFolder session() throws Exception {
    SessionFolder made =
        Sessions.create(
            where.resolve("session"), "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE);
    AddClip.add(
        made,
        CLIPS.resolve("right-baseline-1.mp4"),
        AddClip.ClipRequest.of(Hand.RIGHT, "baseline"));
    return made;
  }
}
