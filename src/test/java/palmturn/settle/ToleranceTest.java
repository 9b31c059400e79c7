package palmturn.settle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceTest {

  @ParameterizedTest
  @CsvSource({
    "0.016, 0.25, 0.025, false", // 60 frames/s: 25 ms
    "0.040, 0.25, 0.040, false", // 25 frames/s: one frame
    "0.016, 0.08, 0.020, false", // fast: a quarter of the interval
    "0.016, 0.04, 0.016, true", // faster than the frames can tell
    "0.040, 0.12, 0.040, true"
  })
  void isOneFrameOrTwentyFiveMillisecondsCappedAtAQuarterInterval(
      double frameS, double intervalS, double seconds, boolean tooFew) {
    assertEquals(new Tolerance(seconds, tooFew), Tolerance.byRule(frameS, intervalS));
  }

  @Test
  void withoutAnIntervalThereIsNoCap() {
    assertEquals(new Tolerance(0.04, false), Tolerance.byRule(0.04, null));
    assertNull(Tolerance.medianIntervalS(new double[] {1}, new double[0]));
  }
}
