package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LeastSquaresTest {
  /** NIST StRD, linear regression, Norris. */
  private static final double[] NORRIS_Y =
      StatsTest.numbers(
          "0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3"
              + " 448.9 10.8 557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9"
              + " 10.2 117.6 228.9 668.4 449.2 0.2");

  private static final double[] NORRIS_X =
      StatsTest.numbers(
          "0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0"
              + " 447.5 11.6 556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0"
              + " 11.1 118.3 229.2 669.1 448.9 0.5");

  /** Intervals between slaps and when they were, made up. */
  private static final double[] AT_S = StatsTest.numbers("0.1 0.31 0.5 0.72 0.93 1.1 1.33 1.52");

  private static final double[] INTERVALS_S =
      StatsTest.numbers(".190 .196 .188 .201 .199 .207 .203 .211");

  @Test
  void nistNorris() {
    LeastSquares.Line line = LeastSquares.line(NORRIS_X, NORRIS_Y);

    assertNotNull(line);
    // Certified by NIST StRD.
    assertEquals(1.00211681802045, line.slope(), 1e-13);
    assertEquals(-0.262323073774029, line.intercept(), 1e-11);
    assertEquals(0.999993745883712, line.rSquare(), 1e-14);
    // Recomputed in exact rationals from the same data.
    assertEquals(0.8847963961443726, line.residualSd(), 1e-10);
    assertEquals(0.00042979684819993697, line.slopeSe(), 1e-13);
    assertEquals(0.2328182343011525, line.interceptSe(), 1e-10);
  }

  @Test
  void oneRegressorLeavesTheScatterOfTheLine() {
    assertEquals(0.8847963961443726, LeastSquares.residualSd(NORRIS_Y, NORRIS_X), 1e-9);
  }

  @Test
  void theIntervalOfTheSlopeIsStudents() {
    LeastSquares.Line line = LeastSquares.line(NORRIS_X, NORRIS_Y);
    assertNotNull(line);
    // t(0.975, 34) = 2.0322, printed tables of Student's t.
    assertEquals(2.0322, line.slope95().width() / 2 / line.slopeSe(), 5e-5);
  }

  /** SciPy 1.17.1, {@code stats.linregress}, and R 4.2.2, {@code confint(lm)}, alike. */
  @Test
  void theIntervalOfASlopeOfScipyAndR() {
    LeastSquares.Line line =
        LeastSquares.line(AT_S, Arrays.stream(INTERVALS_S).map(Math::log).toArray());
    assertNotNull(line);
    assertEquals(0.069604038750207, line.slope(), 1e-12);
    assertEquals(0.030259199338995, line.slope95().low(), 1e-11);
    assertEquals(0.108948878161418, line.slope95().high(), 1e-11);
  }

  /** R 4.2.2, {@code summary(lm)$sigma}, and statsmodels 0.15.0, {@code OLS}, alike. */
  @Test
  void theScatterAboutTwoRegressorsOfRAndStatsmodels() {
    double[] turn = {0.5, -0.5, 0.5, -0.5, 0.5, -0.5, 0.5, -0.5};
    assertEquals(0.002397538446601, LeastSquares.residualSd(INTERVALS_S, AT_S, turn), 1e-13);
  }

  /** SciPy 1.17.1, {@code stats.t.ppf}; R 4.2.2, {@code qt}, alike where both were asked. */
  @ParameterizedTest
  @CsvSource({
    "0.975, 1, 12.706204736175",
    "0.975, 2, 4.302652729749",
    "0.975, 2.5, 3.574654842004",
    "0.975, 3.7, 2.867520707191",
    "0.975, 4, 2.776445105198",
    "0.95, 4, 2.131846786327",
    "0.975, 33, 2.034515297449",
    "0.975, 1000, 1.962339080826"
  })
  void quantilesOfStudentsTOfScipy(double probability, double freedom, double t) {
    assertEquals(t, Quantiles.t(probability, freedom), 1e-8);
  }

  /** SciPy 1.17.1, {@code stats.chi2.ppf}. */
  @ParameterizedTest
  @CsvSource({
    "0.975, 1, 5.023886187315",
    "0.025, 1, 0.000982069117",
    "0.975, 26, 41.923170096354",
    "0.025, 26, 13.843904982008"
  })
  void quantilesOfChiSquaredOfScipy(double probability, double freedom, double value) {
    assertEquals(value, Quantiles.chiSquared(probability, freedom), 1e-8);
  }

  /** SciPy 1.17.1, {@code stats.f.ppf}. */
  @ParameterizedTest
  @CsvSource({
    "0.975, 5, 10, 4.236085668189",
    "0.975, 9, 18.4, 2.908755600189",
    "0.025, 5, 10, 0.151076701030"
  })
  void quantilesOfFOfScipy(double probability, double above, double below, double value) {
    assertEquals(value, Quantiles.f(probability, above, below), 1e-8);
  }

  @Test
  void printedQuantilesOfStudentsT() {
    // t(0.975, 16) = 2.1199052992 as used with Bland and Altman 1986; 2.776 (4) in every table.
    assertEquals(2.1199052992, Quantiles.t(0.975, 16), 1e-8);
    assertEquals(2.776, Quantiles.t(0.975, 4), 5e-4);
  }

  @Test
  void printedQuantilesOfChiSquared() {
    // From memory of printed tables: 20.483 and 3.247 for 10 degrees of freedom.
    assertEquals(20.483, Quantiles.chiSquared(0.975, 10), 5e-4);
    assertEquals(3.247, Quantiles.chiSquared(0.025, 10), 5e-4);
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void whatTheRegressorsExplainLeavesNoScatter(long seed) {
    Random random = new Random(seed);
    double[] x1 = random.doubles(20).toArray();
    double[] x2 = random.doubles(20).toArray();
    double[] y = new double[20];
    for (int i = 0; i < y.length; i++) {
      y[i] = 0.2 + 0.03 * x1[i] - 0.07 * x2[i];
    }
    assertEquals(0, LeastSquares.residualSd(y, x1, x2), 1e-14);
    assertTrue(LeastSquares.residualSd(y, x1) > 1e-3);
  }

  @Test
  void twoRegressorsAgreeWithTakingOneOutOfTheOther() {
    // Frisch and Waugh 1933: regress y and x2 on x1, then the rests on each other.
    Random random = new Random(21);
    double[] x1 = random.doubles(15).toArray();
    double[] x2 = random.doubles(15).toArray();
    double[] y = random.doubles(15).toArray();
    double[] restY = rests(x1, y);
    double[] rest2 = rests(x1, x2);
    double squares = Arrays.stream(rests(rest2, restY)).map(r -> r * r).sum();

    assertEquals(Math.sqrt(squares / (15 - 3)), LeastSquares.residualSd(y, x1, x2), 1e-12);
  }

  @Test
  void tooLittleToFitHasNoAnswer() {
    assertNull(LeastSquares.line(new double[] {1, 2}, new double[] {1, 2}));
    assertNull(LeastSquares.line(new double[] {2, 2, 2}, new double[] {1, 2, 3}));
    assertNull(
        LeastSquares.residualSd(
            new double[] {1, 2, 3}, new double[] {1, 2, 4}, new double[] {1, 0, 1}));
    double[] same = {1, 2, 3, 4, 5};
    assertNull(LeastSquares.residualSd(new double[] {1, 2, 3, 4, 6}, same, same));
  }

  private static double[] rests(double[] x, double[] y) {
    LeastSquares.Line line = LeastSquares.line(x, y);
    assertNotNull(line);
    double[] rests = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      rests[i] = y[i] - line.intercept() - line.slope() * x[i];
    }
    return rests;
  }
}
