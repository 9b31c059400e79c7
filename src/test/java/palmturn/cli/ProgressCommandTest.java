package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.Progress;
import palmturn.work.score.AthleteProgress;

class ProgressCommandTest {
  private static final String CLIP = "sample-clips-synthetic/right-baseline-1.mp4";
  private static final String MARKS = "sample-clips-synthetic/right-baseline-1.marks.csv";

  @TempDir private Path folder;
  private Path spring;
  private Path summer;

  @BeforeEach
  void makeTwoSessions() throws Exception {
    spring = session("spring", "H-07", "2026-03-14");
    summer = session("summer", "H-07", "2026-06-20");
  }

  @Test
  void followsOneAthleteInOrderOfTime() throws Exception {
    Run run = Run.of("progress", summer, spring, "--json");
    assertEquals(PalmturnCommand.DONE, run.status(), run.err());
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertEquals("H-07", root.get("athlete").asText());
    assertEquals("2026-03-14", root.get("blocks").get(0).get("date").asText());
    JsonNode speed = root.get("courses").get(0);
    assertEquals("cannot-tell", speed.get("verdict").asText(), "one trial a block");
    assertTrue(speed.get("typicalError").isNull());
    assertEquals(2, speed.get("points").size());
    assertTrue(Run.of("progress", spring, summer).out().contains("H-07, 2 sessions"));
  }

  @Test
  void writesAPageThatFetchesNothing() throws Exception {
    Path page = folder.resolve("progress.html");
    assertEquals(PalmturnCommand.DONE, Run.of("progress", spring, summer, "--html", page).status());
    String html = Files.readString(page);
    assertTrue(html.contains("<svg"));
    assertFalse(html.contains("src=\"http"));
    assertTrue(html.contains("it does not diagnose"));
  }

  @Test
  void theReportShowsItWhereOtherSessionsAreNamed() throws Exception {
    Path page = summer.resolve("report/report.html");
    assertEquals(PalmturnCommand.DONE, Run.of("report", summer).status());
    assertFalse(Files.readString(page).contains("Over sessions"));
    assertEquals(PalmturnCommand.DONE, Run.of("report", summer, "--with", spring).status());
    assertTrue(Files.readString(page).contains("Over sessions"));
    Path other = session("other", "K-12", "2026-05-01");
    assertEquals(PalmturnCommand.WRONG_DATA, Run.of("report", summer, "--with", other).status());
  }

  @Test
  void aDamagedSessionIsNamedAndTheOthersShown() throws Exception {
    Path bad = Files.createDirectory(folder.resolve("bad"));
    Files.writeString(bad.resolve("session.json"), "{", StandardCharsets.UTF_8);
    Run run = Run.of("progress", spring, bad, summer);
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertEquals(1, run.errorLines());
    assertTrue(run.err().contains("bad"), run.err());
    assertTrue(run.out().contains("2 sessions"));
  }

  @Test
  void athletesAreNotMixed() throws Exception {
    Path other = session("other", "K-12", "2026-05-01");
    Run run = Run.of("progress", spring, other);
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertEquals(1, run.errorLines());
    assertTrue(run.err().contains("different athletes (H-07, K-12)"), run.err());
    AthleteProgress beside =
        AthleteProgress.beside(folder.resolve("settings"), spring, Progress.NONE);
    assertEquals(2, beside.score().sessions(), "those of others are passed over");
  }

  @Test
  void aHandThatWasFasterInAnotherSessionIsToTrainSpeed() throws Exception {
    Path slower = session("slower", "H-07", "2026-06-01");
    Path marks = folder.resolve("slower.csv");
    List<String> lines = new ArrayList<>(Files.readAllLines(Path.of(MARKS)));
    lines.replaceAll(
        line ->
            line.startsWith("timeS")
                ? line
                : (0.5 + 1.15 * (Double.parseDouble(line.substring(0, line.indexOf(','))) - 0.95))
                    + line.substring(line.indexOf(',')));
    Files.write(marks, lines);
    Path trial = slower.resolve("right-baseline-1");
    assertEquals(0, Run.of("marks", "import", trial, marks, "--reader", "A", "--replace").status());
    String speed = "{\"rule\":3,\"hand\":\"right\",\"quality\":\"speed\"";
    assertFalse(Run.of("score", slower, "--json").out().replaceAll("\\s", "").contains(speed));
    Run both = Run.of("score", slower, "--json", "--with", spring);
    assertTrue(both.out().replaceAll("\\s", "").contains(speed), both.out());
    assertTrue(both.out().contains("own best on file, 5.15"), both.out());
    Run mixed = Run.of("score", slower, "--with", session("other", "K-12", "2026-05-01"));
    assertEquals(1, mixed.status());
    assertTrue(mixed.err().contains("different athletes"), mixed.err());
  }

  @Test
  void theLadderGoesByOwnBestAndWritesItsClicks() throws Exception {
    Run run = Run.of("ladder", spring);
    assertEquals(PalmturnCommand.DONE, run.status(), run.err());
    assertTrue(run.out().contains("right hand, best 5.15 slaps/s:"), run.out());
    assertTrue(run.out().contains("3.1 slaps/s, 186 clicks a minute"), run.out());
    Path clicks = Files.createDirectory(folder.resolve("clicks"));
    assertEquals(PalmturnCommand.DONE, Run.of("ladder", spring, "--clicks", clicks).status());
    for (String pace : new String[] {"3.1", "3.9", "4.6"}) {
      assertTrue(Files.exists(clicks.resolve("right-" + pace + ".wav")), pace);
    }
  }

  private Path session(String name, String athlete, String date) throws Exception {
    Path made = folder.resolve(name);
    assertEquals(0, Run.of("new", made, "--athlete", athlete, "--date", date).status());
    assertEquals(0, Run.of("add", made, CLIP, "--hand", "right").status());
    Path trial = made.resolve("right-baseline-1");
    assertEquals(0, Run.of("marks", "import", trial, MARKS, "--reader", "A").status());
    return made;
  }
}
