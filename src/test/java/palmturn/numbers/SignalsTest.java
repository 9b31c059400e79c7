package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SignalsTest {

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
