package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SignalsTest {

  @Test
  void movingMedianLeavesAStepAndDropsASpike() {
    double[] x = {0, 0, 9, 0, 5, 5, 5};
    assertArrayEquals(new double[] {0, 0, 0, 5, 5, 5, 5}, Signals.movingMedian(x, 1));
    assertArrayEquals(x, Signals.movingMedian(x, 0));
    assertArrayEquals(new double[] {1.5, 1.5}, Signals.movingMedian(new double[] {1, 2}, 40));
  }

  @Test
  void movingMeanUsesTheNeighboursThatAreThere() {
    assertArrayEquals(
        new double[] {1.5, 2, 13.0 / 3, 5.5},
        Signals.movingMean(new double[] {1, 2, 3, 8}, 1),
        1e-12);
    assertArrayEquals(new double[0], Signals.movingMean(new double[0], 3));
  }

  /** SciPy 1.17.1, computed once: gaussian_filter1d. */
  @Test
  void gaussianEqualsScipy() {
    double[] smooth = Signals.gaussian(ButterworthTest.sawWithStep(), 2.3);
    assertArrayEquals(
        StatsTest.numbers(
            "0.8371307966540316 0.9039413088437315 2.1010941891147885 4.324561360497519"
                + " 7.146058691156268 7.212869203345969"),
        ButterworthTest.shown(smooth),
        1e-12);
    assertArrayEquals(
        StatsTest.numbers("2.6107173423928898 2.6669925659678757 2.7222900916392354"),
        Signals.gaussian(new double[] {1, 5, 2}, 2),
        1e-12);
    assertArrayEquals(new double[] {1, 5}, Signals.gaussian(new double[] {1, 5}, 0));
    assertArrayEquals(new double[0], Signals.gaussian(new double[0], 2));
  }

  @Test
  void aWaveFollowsItselfAfterOnePeriod() {
    double[] x = new double[400];
    for (int i = 0; i < x.length; i++) {
      x[i] = Math.cos(2 * Math.PI * i / 20);
    }
    // The sum has 380 of 400 products.
    assertEquals(0.95, Signals.autocorrelation(x, 20), 1e-9);
    assertEquals(-0.975, Signals.autocorrelation(x, 10), 1e-3);
    assertEquals(1, Signals.autocorrelation(x, 0), 1e-12);
  }

  /** SciPy 1.17.1, computed once: kurtosis(fisher=False). */
  @Test
  void kurtosisEqualsScipy() {
    assertEquals(1.4302083945894573, Signals.kurtosis(ButterworthTest.sawWithStep()), 1e-12);
  }

  @Test
  void kurtosisOfTwoValuesIsOneAndOfNormalOnesThree() {
    assertEquals(1, Signals.kurtosis(new double[] {-2, 3, -2, 3}), 1e-12);
    Random random = new Random(41);
    double[] normal = random.doubles(50_000).map(u -> random.nextGaussian()).toArray();
    // Four standard errors, √(24/n).
    assertEquals(3, Signals.kurtosis(normal), 0.09);
  }

  @Test
  void whatDoesNotVaryHasNoShape() {
    assertEquals(0, Signals.kurtosis(new double[] {7, 7, 7}));
    assertEquals(0, Signals.kurtosis(new double[0]));
    assertEquals(0, Signals.autocorrelation(new double[] {7, 7, 7}, 1));
    assertEquals(0, Signals.autocorrelation(new double[] {1, 2}, 5));
    assertEquals(0, Signals.autocorrelation(new double[0], 0));
  }
}
