package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits that a coach has changed for a session. */
class LimitsCommandTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir Path folder;
  private Path session;
  private Path limits;

  @BeforeEach
  void aSessionWithItsOwnLimits() {
    session = folder.resolve("s");
    limits = session.resolve("limits.json");
    run("new", session, "--athlete", "H-07");
    run("add", session, CLIPS.resolve("right-baseline-1.mp4"), "--hand", "right");
    run(
        "marks",
        "import",
        session.resolve("right-baseline-1"),
        CLIPS.resolve("right-baseline-1.marks.csv"),
        "--reader",
        "A");
    run("limits", "--write", limits);
  }

  @AfterEach
  void leaveNoSettings() {
    System.clearProperty(Run.SETTINGS);
  }

  private static Run run(Object... words) {
    Run run = Run.of(words);
    assertEquals(0, run.status(), run.err());
    return run;
  }

  @Test
  void aChangedLimitChangesTheVerdict() throws IOException {
    String within = "\"accuracy\": \"within\"";
    assertFalse(run("score", session, "--json").out().contains(within));
    Files.writeString(
        limits,
        Files.readString(limits)
            .replace(
                "\"cleanSharePct\": {\"value\": 80, \"source\": \"Palmturn's choice, no source\"}",
                "\"cleanSharePct\": {\"value\": 20.5, \"source\": \"the club's coach\"}"));
    assertTrue(run("score", session, "--json").out().contains(within));
    String listed = run("limits", session).out();
    assertTrue(listed.contains("20.5"), listed);
    assertTrue(listed.contains("the club's coach"), listed);
  }

  @Test
  void aSlipIsNamedAndNothingIsScored() throws IOException {
    Files.writeString(limits, Files.readString(limits).replace("steadyCvPct", "steadyCv"));
    for (String command : new String[] {"score", "report", "limits"}) {
      Run run = Run.of(command, session);
      assertEquals(1, run.status());
      assertEquals(1, run.errorLines(), run.err());
      assertTrue(run.err().contains("limits.json: $.steadyCvPct"), run.err());
    }
  }

  @Test
  void theUsersHoldForEverySessionThatHasNone() throws IOException {
    Path users = Files.createDirectory(folder.resolve("settings")).resolve("limits.json");
    System.setProperty(Run.SETTINGS, users.getParent().toString());
    String text = Files.readString(limits);
    String clean = "\"cleanSharePct\": {\"value\": 80";
    assertTrue(text.contains(clean));
    Files.writeString(users, text.replace(clean, "\"cleanSharePct\": {\"value\": 20.5"));
    Files.writeString(limits, text.replace(clean, "\"cleanSharePct\": {\"value\": 97.5"));
    assertCounts("97.5", "over", limits.toString());
    Files.delete(limits);
    assertCounts("20.5", "within", users.toString());
    Files.delete(users);
    assertCounts("80", "unclear", "the program's own");
  }

  private void assertCounts(String value, String verdict, String from) throws IOException {
    String listed = run("limits", session).out();
    assertTrue(
        listed.lines().anyMatch(line -> line.matches("clean share at least, % +" + value + "  .*")),
        listed);
    assertTrue(listed.contains("These are"), listed);
    assertTrue(listed.contains(from), listed);
    String figures = run("score", session, "--json").out();
    assertTrue(figures.contains("\"accuracy\": \"" + verdict), figures);
    run("report", session);
    String page = Files.readString(session.resolve("report/report.html"));
    assertTrue(page.contains(value.replace(".0", "")), value);
  }

  @Test
  void aSlipInTheUsersIsSaidOnceForAllSessions() throws IOException {
    Path users = Files.createDirectory(folder.resolve("settings")).resolve("limits.json");
    System.setProperty(Run.SETTINGS, users.getParent().toString());
    Files.writeString(users, Files.readString(limits).replace("elbowCm", "elbow"));
    Files.delete(limits);
    for (Object[] words :
        new Object[][] {
          {"score", session, session},
          {"progress", session},
          {"estimate", session},
          {"report", session},
          {"ladder", session},
          {"limits"}
        }) {
      Run run = Run.of(words);
      assertEquals(1, run.status(), run.out());
      assertEquals(1, run.errorLines(), run.err());
      assertTrue(run.err().contains(users + ": $.elbowCm: missing; correct it there"), run.err());
    }
  }

  @Test
  void aFileThatIsThereIsKept() {
    assertEquals(1, Run.of("limits", "--write", limits).status());
    run("limits", "--write", limits, "--force");
  }
}
