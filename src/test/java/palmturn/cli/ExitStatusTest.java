package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExitStatusTest {
  @TempDir Path folder;

  @Test
  void aloneItOpensTheApp() {
    assertEquals(List.of("null"), Run.of().opened());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "demo",
        "open",
        "new",
        "add",
        "drill",
        "note",
        "inspect",
        "estimate",
        "marks",
        "score",
        "settle",
        "agree",
        "report",
        "verify",
        "models"
      })
  void everyCommandHasHelp(String command) {
    Run run = Run.of(command, "--help");
    assertEquals(0, run.status());
    assertTrue(run.out().contains("Usage: palmturn " + command), run.out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"scroe", "--no-such-option", "add", "marks"})
  void wrongUseIsStatus2WithAWayToHelp(String word) {
    Run run = Run.of(word);
    assertEquals(2, run.status());
    assertTrue(run.err().contains("--help"), run.err());
    assertFalse(run.err().contains("at palmturn"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"inspect", "score", "settle", "report", "verify"})
  void whatIsNotThereIsStatus1AndOneLineThatNamesIt(String command) {
    Run run = Run.of(command, folder.resolve("nothing-here"));
    assertEquals(1, run.status());
    assertEquals(1, run.errorLines(), run.err());
    assertTrue(run.err().contains("nothing-here"), run.err());
  }

  @Test
  void aSessionIsMadeOnceAndNeverOver() throws IOException {
    Path session = folder.resolve("H-07");
    assertEquals(0, Run.of("new", session, "--athlete", "H-07", "--date", "2026-11-14").status());
    String before = Files.readString(session.resolve("session.json"));
    Run again = Run.of("new", session, "--athlete", "X-99");
    assertEquals(1, again.status());
    assertEquals(1, again.errorLines(), again.err());
    assertEquals(before, Files.readString(session.resolve("session.json")));
  }

  @Test
  void drillsAndNotesAreKept() throws IOException {
    Path session = folder.resolve("H-07");
    Run.of("new", session, "--athlete", "H-07");
    Run drill =
        Run.of("drill", session, "--block", "after-1", "--code", "paced-flips", "--hand", "left");
    assertEquals(0, drill.status(), drill.err());
    Run note = Run.of("note", session, "Film from a little further away.");
    assertEquals(0, note.status(), note.err());
    String json = Files.readString(session.resolve("session.json"));
    assertTrue(json.contains("paced-flips"), json);
    assertTrue(json.contains("Film from a little further away."), json);
  }

  @Test
  void aDrillBeforeTheBaselineIsRefused() {
    Path session = folder.resolve("H-07");
    Run.of("new", session, "--athlete", "H-07");
    Run run = Run.of("drill", session, "--block", "baseline", "--code", "x", "--hand", "left");
    assertEquals(1, run.status());
    assertEquals(1, run.errorLines(), run.err());
  }
}
