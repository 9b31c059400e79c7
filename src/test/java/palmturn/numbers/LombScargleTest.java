package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LombScargleTest {
  private static final double[] TIMES =
      StatsTest.numbers(
          "0 0.13 0.24 0.39 0.50 0.61 0.77 0.88 1.01 1.12 1.27 1.38 1.49 1.66 1.74 1.90");

  /** sin(2π·2t + 0.3) to four decimals. */
  private static final double[] VALUES =
      StatsTest.numbers(
          "0.2955 0.9349 -0.1735 -0.883 0.2955 0.9938 -0.5238 -0.9349 0.4129 0.972 -0.5238"
              + " -0.9349 0.1735 0.7386 -0.1735 -0.8173");

  /** SciPy's lombscargle, computed once, the mean removed; it prints power · half the squares. */
  @Test
  void equalsScipy() {
    double[] expected =
        StatsTest.numbers(
            "0.012301825487446077 0.08257441042969825 3.2922561634550456 3.764583663640564"
                + " 3.1161657894619603 0.15797927872894618 0.015209809317091583");
    double[] power =
        LombScargle.power(TIMES, VALUES, StatsTest.numbers("1.0 1.5 1.9 2.0 2.1 2.5 3.0"));
    double mean = IntStream.range(0, 16).mapToDouble(i -> VALUES[i]).average().orElseThrow();
    double squares = 0;
    for (double value : VALUES) {
      squares += (value - mean) * (value - mean);
    }
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i] / (squares / 2), power[i], 1e-12);
    }
    assertEquals(0.99981875, power[3], 5e-9);
  }

  @Test
  void thePeakIsAtTheFrequencyOfTheSine() {
    double[] hz = IntStream.rangeClosed(500, 4000).mapToDouble(i -> i / 1000.0).toArray();
    double[] power = LombScargle.power(TIMES, VALUES, hz);
    int peak = IntStream.range(0, hz.length).reduce(0, (a, b) -> power[a] >= power[b] ? a : b);
    assertEquals(2.000, hz[peak], 1e-9);
  }

  @Test
  void aShiftInTimeOrLevelChangesNothing() {
    double[] hz = {0.7, 1.3, 2.1, 3.3};
    double[] later = IntStream.range(0, 16).mapToDouble(i -> TIMES[i] + 123.4).toArray();
    double[] higher = IntStream.range(0, 16).mapToDouble(i -> VALUES[i] * 3 + 50).toArray();
    assertArrayEquals(
        LombScargle.power(TIMES, VALUES, hz), LombScargle.power(later, higher, hz), 1e-9);
  }

  @Test
  void powerIsAShareEvenAtHalfTheRateOfEvenSamples() {
    double[] times = IntStream.range(0, 20).mapToDouble(i -> i / 10.0).toArray();
    double[] values = IntStream.range(0, 20).mapToDouble(i -> i % 2 == 0 ? 1 : -1).toArray();
    double power = LombScargle.power(times, values, new double[] {5})[0];
    assertEquals(1, power, 1e-9);
  }

  @Test
  void nothingHasNoPower() {
    double[] hz = {1, 2};
    assertArrayEquals(new double[2], LombScargle.power(new double[0], new double[0], hz));
    assertArrayEquals(new double[2], LombScargle.power(new double[3], new double[3], hz));
    assertTrue(LombScargle.power(TIMES, VALUES, new double[0]).length == 0);
  }
}
