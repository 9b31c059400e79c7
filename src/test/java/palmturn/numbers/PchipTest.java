package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PchipTest {

  /** SciPy 1.17.1, computed once: PchipInterpolator. */
  @Test
  void equalsScipy() {
    Pchip curve =
        Pchip.of(
            StatsTest.numbers("0 0.1 0.25 0.3 0.7 1.0 1.4"),
            StatsTest.numbers("1 1.5 1.2 1.2 3 2.9 7"));
    assertArrayEquals(
        StatsTest.numbers(
            "1.0 1.2226599999999999 1.2777777777777775 1.2 1.2033187499999998 2.1000000000000005"
                + " 3.0 2.9074074074074074 2.987044270833333 6.837511383928572"),
        curve.at(StatsTest.numbers("0 0.03 0.2 0.27 0.31 0.5 0.7 0.95 1.05 1.39")),
        1e-12);
    Pchip steepEnd = Pchip.of(StatsTest.numbers("0 1 2 3.5"), StatsTest.numbers("0 1 -4 -5"));
    assertArrayEquals(
        StatsTest.numbers(
            "0.6569999999999999 0.9359999999999997 -1.3450413223140496 -4.955504132231406"),
        steepEnd.at(StatsTest.numbers("0.3 0.6 1.5 3.2")),
        1e-12);
    assertEquals(2, Pchip.of(new double[] {0, 2}, new double[] {1, 5}).at(0.5), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void neverLeavesTheRangeOfTheTwoNeighbours(long seed) {
    Random random = new Random(seed);
    double[] x = new double[12];
    double[] y = new double[12];
    for (int i = 0; i < x.length; i++) {
      x[i] = (i == 0 ? 0 : x[i - 1]) + 0.01 + random.nextDouble();
      y[i] = random.nextGaussian();
    }
    Pchip curve = Pchip.of(x, y);
    for (int i = 0; i + 1 < x.length; i++) {
      for (double u = 0; u <= 1; u += 0.05) {
        double value = curve.at(x[i] + u * (x[i + 1] - x[i]));
        assertTrue(value >= Math.min(y[i], y[i + 1]) - 1e-12);
        assertTrue(value <= Math.max(y[i], y[i + 1]) + 1e-12);
      }
    }
  }

  @Test
  void isFlatBeyondTheEnds() {
    Pchip curve = Pchip.of(new double[] {1, 2, 3}, new double[] {5, 7, 6});
    assertArrayEquals(new double[] {5, 5, 6, 6}, curve.at(new double[] {-9, 1, 3, 99}));
    assertEquals(4, Pchip.of(new double[] {1}, new double[] {4}).at(17));
  }

  @Test
  void pointsThatDoNotRiseAreRefused() {
    assertThrows(
        IllegalArgumentException.class, () -> Pchip.of(new double[] {1, 1}, new double[] {1, 2}));
    assertThrows(IllegalArgumentException.class, () -> Pchip.of(new double[0], new double[0]));
    assertThrows(
        IllegalArgumentException.class, () -> Pchip.of(new double[] {1, 2}, new double[] {1}));
  }
}
