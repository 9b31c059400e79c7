package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class TimedSmoothingTest {
  private static final double[] UNEVEN_S = {0, 0.01, 0.03, 0.04, 0.1, 0.11, 0.2};

  @Test
  void constantStaysConstant() {
    double[] same = new double[UNEVEN_S.length];
    Arrays.fill(same, 4.2);
    assertArrayEquals(same, TimedSmoothing.median(UNEVEN_S, same, 0.1), 1e-12);
    assertArrayEquals(same, TimedSmoothing.gaussian(UNEVEN_S, same, 0.05), 1e-12);
  }

  @Test
  void medianTakesOutOneWrongSample() {
    double[] wrong = {0, 0, 9, 0, 0, 0, 0};
    assertEquals(0, TimedSmoothing.median(UNEVEN_S, wrong, 0.1)[2]);
  }

  @Test
  void medianLooksAtTimesNotCounts() {
    double[] step = {0, 0, 0, 0, 0, 0, 5};
    assertEquals(5, TimedSmoothing.median(UNEVEN_S, step, 0.1)[6]);
  }

  @Test
  void gaussianWeighsByDistanceInTime() {
    double[] timesS = {0, 0.05};
    double[] values = {0, 1};
    double weight = Math.exp(-0.5);
    assertEquals(weight / (1 + weight), TimedSmoothing.gaussian(timesS, values, 0.05)[0], 1e-12);
  }
}
