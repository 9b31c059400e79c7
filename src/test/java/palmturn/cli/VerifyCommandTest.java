package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.work.session.Sessions;

/** Sessions of which one trial is damaged. */
class VerifyCommandTest {
  private static final TrialId LEFT = new TrialId(Hand.LEFT, Block.BASELINE, 1);

  @TempDir Path temp;
  private Path session;
  private Path file;

  @BeforeEach
  void twoTrials() throws Exception {
    session = temp.resolve("s");
    file = session.resolve("trials/right-baseline-1.json");
    try (SessionFolder made =
        Sessions.create(session, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      made.save(SampleFiles.fullTrial().withEstimate(SampleFiles.fullEstimate()));
      made.save(SampleFiles.plainTrial(LEFT));
    }
  }

  private Reading original() {
    return SampleFiles.fullTrial().readings().get(0);
  }

  @Test
  void aFileThatBreaksOffIsReadBackUpToThere() throws Exception {
    String text = Files.readString(file);
    Files.writeString(file, text.substring(0, text.indexOf("\"estimate\"") + 200));
    Run said = Run.of("verify", session);
    assertEquals(1, said.status());
    assertTrue(said.err().contains("right-baseline-1.json: damaged at line"), said.err());
    assertTrue(
        said.err().contains("right-baseline-1: can be read back without its estimate; marks: "),
        said.err());
    assertTrue(Run.of("score", session).err().contains("this trial is left out"));
    Run one = Run.of("marks", "export", session.resolve("right-baseline-1"), temp.resolve("x.csv"));
    assertEquals(1, one.status());
    assertTrue(one.err().contains("damaged at line"), one.err());

    Run done = Run.of("verify", session, "--recover");
    assertTrue(done.out().contains("right-baseline-1: read back"), done.out());
    assertTrue(Files.exists(session.resolve("trials/right-baseline-1.json.damaged")));
    try (SessionFolder open = Sessions.openReadOnly(session)) {
      assertEquals(
          original(), open.trial(SampleFiles.RIGHT).reading(original().reader()).orElseThrow());
      assertTrue(open.damaged().isEmpty());
    }
  }

  @Test
  void theJournalOfALostFileIsWrittenAsMarks() throws Exception {
    SessionFolder open = SessionFolder.open(session);
    Path journal = session.resolve("trials/right-baseline-1.journal");
    open.keep(SampleFiles.RIGHT, original().by("CD"), "Add slaps");
    byte[] lines = Files.readAllBytes(journal);
    open.close();
    Files.write(journal, lines);
    Files.write(file, new byte[4000]);
    assertTrue(Run.of("verify", session).err().contains("its clip can't be read back; marks: "));
    assertTrue(Run.of("verify", session, "--recover").out().contains("marks by CD in "));
    Path csv = session.resolve("recovered/right-baseline-1-CD.csv");
    assertEquals(
        original().slaps().size() + original().spans().size() + 1, Files.readAllLines(csv).size());
    assertEquals(4000, Files.size(file), "what is damaged stays");
  }

  @Test
  void nothingIsDoneToAWholeSession() throws Exception {
    String before = Files.readString(file);
    assertTrue(Run.of("verify", session, "--recover").out().contains("nothing is damaged"));
    assertEquals(before, Files.readString(file));
    assertFalse(Files.exists(session.resolve("recovered")));
  }
}
