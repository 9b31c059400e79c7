package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.estimate.hands.ModelFile;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.SampleFiles;
import palmturn.trial.TrialId;
import palmturn.work.estimate.EstimateBatch;

class EstimateCommandTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a.mp4",
        "a.mp4 --hand middle",
        "a.mp4 --hand right --use ear",
        "a.mp4 --hand right --jobs 0",
        "a.mp4 --hand right --elbow 1",
        "a.mp4 --hand right --elbow 1,x",
        "a.mp4 --hand right --elbow 1,NaN",
        "a.mp4 --hand right --hand-region 1,2,0,4",
        "a.mp4 --hand right --scale 1,2,1,2,30",
        "a.mp4 --hand right --scale 1,2,3,4",
        "a.mp4 --hand right --side-at 1.2",
        "a.mp4 --hand right --side-at 1.2,unknown",
        "a.mp4 --hand right --side-at soon,palm",
        "a.mp4 --hand right --from 3 --to 2",
        "a.mp4 --hand right --capture-fps 0",
        "a.mp4 --hand right --trial right-baseline-1",
        "a.mp4 --hand right --forearm 0",
        "a.mp4 --hand right --hand-length 31",
        "a.mp4 --hand right --stature NaN",
        "a.mp4 --hand right --stature 1.72",
        "a.mp4 b.mp4 --hand right --elbow 1,2",
        "SESSION --from 3",
        "SESSION --capture-fps 240",
        "SESSION --elbow 1,2",
        "SESSION --forearm 26",
        "SESSION --trial right-baseline-1 --stature 172",
        "SESSION --retry",
      })
  void wrongUseIsStatus2OnOneLine(String line) throws Exception {
    Files.writeString(folder.resolve("session.json"), "{}");
    Run run =
        Run.of((Object[]) ("estimate " + line.replace("SESSION", folder.toString())).split(" "));
    assertEquals(2, run.status(), run.err());
    assertEquals(2, run.errorLines(), run.err());
    assertEquals("", run.out());
  }

  @Test
  void whatCantBeReadIsStatus1AndALineEach() throws Exception {
    Path bad = Files.writeString(folder.resolve("bad.mp4"), "no clip");
    Path empty = Files.createDirectory(folder.resolve("no-session"));
    Run run = Run.of("estimate", bad, folder.resolve("gone.mp4"), empty, "--hand", "left");
    assertEquals(1, run.status());
    assertEquals(4, run.errorLines(), run.err());
    assertTrue(run.err().endsWith("palmturn: 0 estimated, 3 failed\n"), run.err());
    for (String name : new String[] {"bad.mp4", "gone.mp4", "no-session"}) {
      assertTrue(run.err().contains(name), run.err());
    }
  }

  @Test
  void aSessionWithoutTrialsSaysSo() {
    Path session = folder.resolve("s");
    Run.of("new", session, "--athlete", "H-07");
    Run run = Run.of("estimate", session);
    assertEquals(1, run.status());
    assertTrue(run.err().contains("no trial yet"), run.err());
    Run score = Run.of("score", session, "--reading", "estimate");
    assertEquals(1, score.status());
  }

  @Test
  void noReaderMayHaveTheEstimatesName() throws Exception {
    Path session = folder.resolve("s");
    Path clips = Path.of("sample-clips-synthetic");
    Run.of("new", session, "--athlete", "H-07");
    Run.of("add", session, clips.resolve("right-baseline-1.mp4"), "--hand", "right");
    Path trial = session.resolve("right-baseline-1");
    Path marks = clips.resolve("right-baseline-1.marks.csv");
    Run run = Run.of("marks", "import", trial, marks, "--reader", "estimate");
    assertEquals(1, run.status());
    assertTrue(run.err().contains("no reader may be called estimate"), run.err());
    assertEquals(0, Run.of("marks", "import", trial, marks, "--reader", "AB").status());
  }

  @Test
  void theTextSaysFiguresTheirFloorAndEveryWarning() {
    Estimate found = SampleFiles.fullEstimate();
    String text =
        EstimateText.of(
            new EstimateBatch.Outcome(
                "clips/a.mp4",
                "s",
                TrialId.parse("right-baseline-1"),
                Hand.RIGHT,
                SampleFiles.SHA,
                found,
                null));
    for (String part :
        new String[] {
          "right-baseline-1 (clips/a.mp4), right hand",
          "slaps        2, and 1 double\n",
          "palm 1, back 2",
          "5.12 slaps/s",
          "4.3 %; timing floor 0.5 %",
          "2.56 Hz, turns there and back; as a check",
          "up to 1.0 cm, 0.04 forearm lengths",
          "scale: given",
          "sound and motion; 1 of 3 slaps timed by sound, which is 3.5 ms after the picture",
          "The sound of \"a\" door was set aside.",
          "Zones are not told.",
        }) {
      assertTrue(text.contains(part), part + " in " + text);
    }
  }

  @Test
  void theTextOfNothingFoundInventsNoFigure() {
    String text =
        EstimateText.of(
            new EstimateBatch.Outcome(
                "a.mp4",
                null,
                null,
                Hand.LEFT,
                SampleFiles.SHA,
                SampleFiles.emptyEstimate(),
                null));
    assertTrue(text.contains("none found"), text);
    assertTrue(text.contains("No hand turns here."), text);
    assertFalse(text.contains("0.0"), text);
    assertFalse(text.contains("null"), text);
  }

  /** Whoever trusted shape must hear that it was not looked at. */
  @Test
  void aDamagedNetworkIsSaid() throws Exception {
    String before = System.getProperty("palmturn.models", "no-models");
    Path models = Files.createDirectory(folder.resolve("models"));
    Files.writeString(models.resolve(ModelFile.ALL.get(0).fileName()), "not the network");
    System.setProperty("palmturn.models", models.toString());
    try {
      Run run =
          Run.of(
              "estimate",
              "sample-clips-synthetic/right-baseline-1.mp4",
              "--hand",
              "right",
              "--to",
              "2",
              "--json");
      assertTrue(run.out().contains("landmark networks are damaged"), run.out());
    } finally {
      System.setProperty("palmturn.models", before);
    }
  }
}
