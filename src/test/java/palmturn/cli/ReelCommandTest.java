package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.chart.Palette;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.film.ReelWriter;

/** A trial's worst moment and its cleanest second as a clip. */
class ReelCommandTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir Path folder;
  private Path session;

  @BeforeEach
  void aMarkedTrial() throws IOException {
    session = folder.resolve("s");
    run("new", session, "--athlete", "H-07");
    run("add", session, CLIPS.resolve("right-baseline-2.mp4"), "--hand", "right");
    Path csv = folder.resolve("m.csv");
    Files.write(
        csv,
        List.of(
            "timeS,endS,kind,side,zone",
            "1.0,,slap,palm,fingers",
            "2.0,,slap,back,centre",
            "2.2,,slap,palm,centre",
            "2.4,,slap,back,centre"));
    run("marks", "import", session.resolve("right-baseline-1"), csv, "--reader", "A");
  }

  private static Run run(Object... words) {
    Run run = Run.of(words);
    assertEquals(0, run.status(), run.err());
    return run;
  }

  @Test
  void theReelPlaysAndHoldsNothingOfWhereItWasFilmed() throws Exception {
    run("reel", session.resolve("right-baseline-1"));
    ClipFile reel = ClipFile.open(session.resolve("report/right-baseline-1-reel.mp4"));
    assertEquals(ReelWriter.WIDTH, reel.facts().width());
    assertFalse(reel.facts().location());
    assertNull(reel.facts().sound());
    // A title and four times the moment's length with what is around it; the fault stands half a
    // second: 1 + 4·0.4 + 0.5, and 1 + 4·(0.4 + 0.4).
    assertEquals(7.3, reel.facts().durationS(), 0.1);
    try (FrameReader reader = reel.newReader()) {
      // Half a second after the title the fingers' slap is on the screen, framed in clay.
      int clay = Palette.DARK.clay().getRGB();
      int[] pixels = reader.read(reel.frames().nearest(1 + 4 * 0.15 + 0.3)).argb();
      assertTrue(near(clay, pixels[300 * ReelWriter.WIDTH + left(pixels, 300, 0)]));
    }
  }

  /** Returns a column just inside what is not the ground, the first from some column on. */
  private static int left(int[] pixels, int row, int from) {
    int x = from;
    while (near(Palette.DARK.paper().getRGB(), pixels[row * ReelWriter.WIDTH + x])) {
      x++;
    }
    return x + 3;
  }

  private static boolean near(int one, int other) {
    for (int shift = 0; shift < 24; shift += 8) {
      if (Math.abs((one >> shift & 255) - (other >> shift & 255)) > 24) {
        return false;
      }
    }
    return true;
  }

  @Test
  void theOtherHandStandsBesideAtTheSameSlap() throws Exception {
    run("add", session, CLIPS.resolve("left-baseline-2.mp4"), "--hand", "left");
    Path csv = folder.resolve("l.csv");
    Files.write(
        csv,
        List.of("timeS,endS,kind,side,zone", "1.2,,slap,palm,centre", "1.5,,slap,back,centre"));
    run("marks", "import", session.resolve("left-baseline-1"), csv, "--reader", "A");
    run("reel", session.resolve("right-baseline-1"));
    ClipFile reel = ClipFile.open(session.resolve("report/right-baseline-1-reel.mp4"));
    try (FrameReader reader = reel.newReader()) {
      int[] pixels = reader.read(reel.frames().nearest(1 + 4 * 0.15 + 0.3)).argb();
      // The right hand is at the right, with its fault framed in clay; the left hand's is not.
      int clay = Palette.DARK.clay().getRGB();
      assertTrue(
          near(clay, pixels[300 * ReelWriter.WIDTH + left(pixels, 300, ReelWriter.WIDTH / 2)]));
      assertFalse(near(clay, pixels[300 * ReelWriter.WIDTH + left(pixels, 300, 0)]));
    }
  }

  @Test
  void handsAloneAreShownOnlyWhereTheyAreKnown() {
    Run run = Run.of("reel", session.resolve("right-baseline-1"), "--show", "hands");
    assertEquals(1, run.status());
    assertEquals(1, run.errorLines(), run.err());
    assertTrue(run.err().contains("estimate it first"), run.err());
    assertFalse(Files.exists(session.resolve("report/right-baseline-1-reel.mp4")));
  }

  @Test
  void aFileThatIsThereStaysUnlessForced() throws IOException {
    Path file = folder.resolve("mine.mp4");
    Files.writeString(file, "mine");
    Run run = Run.of("reel", session.resolve("right-baseline-1"), "--out", file);
    assertEquals(1, run.status());
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void aTrialWithoutMarksHasNoReel() {
    run("add", session, CLIPS.resolve("left-baseline-2.mp4"), "--hand", "left");
    Run run = Run.of("reel", session.resolve("left-baseline-1"));
    assertEquals(1, run.status());
    assertTrue(run.err().contains("mark it first"), run.err());
  }
}
