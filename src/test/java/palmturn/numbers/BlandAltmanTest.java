package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class BlandAltmanTest {
  /** Bland and Altman 1986, first Wright reading minus first mini Wright reading, l/min. */
  private static final double[] WRIGHT_MINUS_MINI =
      minus(
          "494 395 516 434 476 557 413 442 650 433 417 656 267 478 178 423 427",
          "512 430 520 428 500 600 364 380 658 445 432 626 260 477 259 350 451");

  /** Bland and Altman 1986 with their multiplier 2, unrounded values recomputed from their data. */
  @Test
  void ofBlandAndAltman1986() {
    BlandAltman result = BlandAltman.of(WRIGHT_MINUS_MINI, 2);
    assertNotNull(result);
    assertEquals(17, result.n());
    assertEquals(-2.117647058823529, result.bias(), 1e-12);
    assertEquals(38.76512987360738, result.sd(), 1e-11);
    check(-79.64790680603829, 75.41261268839122, result.limits(), 1e-10);
    check(-22.048838, 17.813544, result.bias95(), 1e-6);
    check(-114.169742, -45.126072, result.low95(), 1e-6);
    check(40.890778, 109.934448, result.high95(), 1e-6);
  }

  /** The same data with multiplier 1.96; −78.10 and 73.87 where printed. */
  @Test
  void multiplierIsOnePointNineSixOtherwise() {
    BlandAltman result = BlandAltman.of(WRIGHT_MINUS_MINI);
    assertNotNull(result);
    check(-78.097301611094, 73.86200749344692, result.limits(), 2e-3);
  }

  @Test
  void swappingTheTwoTurnsTheSigns() {
    BlandAltman there = BlandAltman.of(WRIGHT_MINUS_MINI);
    BlandAltman back =
        BlandAltman.of(Arrays.stream(WRIGHT_MINUS_MINI).map(each -> -each).toArray());
    assertNotNull(there);
    assertNotNull(back);
    assertEquals(there.bias(), -back.bias(), 1e-12);
    assertEquals(there.limits().low(), -back.limits().high(), 1e-12);
    assertEquals(there.low95().low(), -back.high95().high(), 1e-12);
  }

  @Test
  void oneDifferenceIsNotEnough() {
    assertNull(BlandAltman.of(new double[] {3}));
    assertNull(BlandAltman.of(new double[0]));
  }

  private static void check(double low, double high, Range range, double tolerance) {
    assertEquals(low, range.low(), tolerance);
    assertEquals(high, range.high(), tolerance);
  }

  private static double[] minus(String spacedA, String spacedB) {
    double[] a = StatsTest.numbers(spacedA);
    double[] b = StatsTest.numbers(spacedB);
    double[] differences = new double[a.length];
    Arrays.setAll(differences, i -> a[i] - b[i]);
    return differences;
  }
}
