package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Marks that come as a file from elsewhere, for a clip of some seconds. */
class MarksCommandTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir Path folder;

  private Run importOf(String row) throws Exception {
    Path session = folder.resolve("s");
    Run.of("new", session, "--athlete", "H-07");
    Run.of("add", session, CLIPS.resolve("right-baseline-1.mp4"), "--hand", "right");
    Path marks = folder.resolve("marks.csv");
    String good = Files.readString(CLIPS.resolve("right-baseline-1.marks.csv"));
    Files.writeString(marks, good + row);
    return Run.of("marks", "import", session.resolve("right-baseline-1"), marks, "--reader", "A");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "9999,,slap,palm,centre,,,\r\n",
        "-3,,slap,palm,centre,,,\r\n",
        "2,60,pause,,,,,\r\n",
      })
  void aMarkOutsideTheClipIsRefused(String row) throws Exception {
    Run run = importOf(row);
    assertEquals(1, run.status());
    assertTrue(run.err().contains("lies outside the clip, which shows 0.0"), run.err());
    assertEquals(1, run.errorLines());
  }

  @Test
  void marksInsideTheClipAreTaken() throws Exception {
    assertEquals(0, importOf("").status());
  }

  /** A pipe is refused; waiting for what comes through it would never end. */
  @Test
  void aDeviceIsNoClip() {
    Run run = Run.of("estimate", "/dev/zero", "--hand", "right");
    assertEquals(1, run.status());
    assertTrue(run.err().contains("is not"), run.err());
  }
}
