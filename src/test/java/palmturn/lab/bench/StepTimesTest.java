package palmturn.lab.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import palmturn.clip.FrameCache;
import palmturn.clip.Progress;
import palmturn.trial.UserError;

class StepTimesTest {
  @Test
  void aClipIsSteppedThroughAndJumpedInWithinTheBound() throws Exception {
    Path clip = Path.of("sample-clips-synthetic/right-baseline-1.mp4");
    StepTimes times = StepTimes.of(clip, Progress.NONE);
    assertEquals(180, times.forwardMs().length);
    assertEquals(180, times.backMs().length);
    assertEquals(60, times.jumpMs().length);
    assertTrue(Arrays.stream(times.jumpMs()).min().orElse(-1) >= 0);
    assertTrue(times.frameMs() > 0);
    assertTrue(times.mostBytes() > 0 && times.mostBytes() <= FrameCache.DEFAULT_BYTES);
  }

  @Test
  void aMissingClipIsSaidSo() {
    UserError error =
        assertThrows(UserError.class, () -> StepTimes.of(Path.of("none.mp4"), Progress.NONE));
    assertTrue(String.valueOf(error.getMessage()).contains("none.mp4"));
  }
}
