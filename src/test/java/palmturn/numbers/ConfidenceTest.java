package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ConfidenceTest {

  /** Newcombe 1998, Stat Med 17:857-872, method 3; all three from memory. */
  @ParameterizedTest
  @CsvSource({"81, 263, 0.2553, 0.3662", "15, 148, 0.0624, 0.1605", "0, 20, 0, 0.1611"})
  void wilsonOfNewcombe1998(int successes, int trials, double low, double high) {
    Range range = Confidence.wilson(successes, trials);
    assertNotNull(range);
    assertEquals(low, range.low(), 5e-5);
    assertEquals(high, range.high(), 5e-5);
  }

  /**
   * Newcombe 1998, Stat Med 17:873-890, method 10 on 56/70 − 48/80: 0.0524 to 0.3339, from memory.
   */
  @Test
  void differenceOfNewcombe1998() {
    Range range = Confidence.newcombe(56, 70, 48, 80);
    assertNotNull(range);
    assertEquals(0.0524, range.low(), 5e-5);
    assertEquals(0.3339, range.high(), 5e-5);
  }

  /** statsmodels 0.15.0, {@code confint_proportions_2indep(method="newcomb", compare="diff")}. */
  @ParameterizedTest
  @CsvSource({
    "56, 70, 48, 80, 0.052431472402, 0.333872654037",
    "25, 27, 19, 26, -0.012092792386, 0.394090725133",
    "27, 27, 20, 26, 0.057513587921, 0.420515540789",
    "0, 20, 0, 18, -0.175879223647, 0.161125158053",
    "9, 10, 3, 10, 0.170522723935, 0.809017973535"
  })
  void differencesOfStatsmodels(
      int successesA, int trialsA, int successesB, int trialsB, double low, double high) {
    Range range = Confidence.newcombe(successesA, trialsA, successesB, trialsB);
    assertNotNull(range);
    assertEquals(low, range.low(), 1e-10);
    assertEquals(high, range.high(), 1e-10);
  }

  /** statsmodels 0.15.0, {@code proportion_confint(method="wilson")}. */
  @ParameterizedTest
  @CsvSource({
    "81, 263, 0.255288519878, 0.366209576983",
    "24, 27, 0.719421991817, 0.961479651717",
    "27, 27, 0.875444970258, 1",
    "0, 20, 0, 0.161125158053"
  })
  void wilsonOfStatsmodels(int successes, int trials, double low, double high) {
    Range range = Confidence.wilson(successes, trials);
    assertNotNull(range);
    assertEquals(low, range.low(), 1e-10);
    assertEquals(high, range.high(), 1e-10);
  }

  /** SciPy 1.17.1, {@code stats.ttest_ind(equal_var=False)}, and R 4.2.2, {@code t.test}, alike. */
  @ParameterizedTest
  @CsvSource({
    "5.31 5.12 5.22, 4.81 4.66 4.70, 0.2934581850, 0.6932084816",
    "88.9 92.6 85.2 96.3, 75.0 83.9, -16.2463075121, 38.8463075121"
  })
  void welchOfScipyAndR(String a, String b, double low, double high) {
    Range range = Confidence.welch(StatsTest.numbers(a), StatsTest.numbers(b));
    assertNotNull(range);
    assertEquals(low, range.low(), 1e-8);
    assertEquals(high, range.high(), 1e-8);
  }

  /** SciPy 1.17.1, {@code stats.ttest_1samp}. */
  @Test
  void meanOfScipy() {
    Range range = Confidence.mean(new double[] {88.9, 92.6, 85.2, 96.3});
    assertNotNull(range);
    assertEquals(83.1492370500, range.low(), 1e-8);
    assertEquals(98.3507629500, range.high(), 1e-8);
  }

  @ParameterizedTest
  @ValueSource(longs = {5, 6, 7})
  void swappingTheSidesOfADifferenceTurnsItsSign(long seed) {
    Random random = new Random(seed);
    int trialsA = 5 + random.nextInt(60);
    int trialsB = 5 + random.nextInt(60);
    int a = random.nextInt(trialsA + 1);
    int b = random.nextInt(trialsB + 1);
    Range there = Confidence.newcombe(a, trialsA, b, trialsB);
    Range back = Confidence.newcombe(b, trialsB, a, trialsA);
    assertNotNull(there);
    assertNotNull(back);
    assertEquals(there.low(), -back.high(), 1e-12);
    assertEquals(there.high(), -back.low(), 1e-12);
  }

  /** Bland and Altman 1986: mean difference −2.1, 95 % interval −22.0 to 17.8 l/min. */
  @Test
  void intervalOfAMeanOfBlandAndAltman1986() {
    double[] wright =
        StatsTest.numbers("494 395 516 434 476 557 413 442 650 433 417 656 267 478 178 423 427");
    double[] mini =
        StatsTest.numbers("512 430 520 428 500 600 364 380 658 445 432 626 260 477 259 350 451");
    double[] differences = new double[17];
    for (int i = 0; i < differences.length; i++) {
      differences[i] = wright[i] - mini[i];
    }
    Range range = Confidence.mean(differences);
    assertNotNull(range);
    assertEquals(-22.0, range.low(), 0.05);
    assertEquals(17.8, range.high(), 0.05);
  }

  @Test
  void welchOfEqualGroupsIsStudents() {
    // With equal n and equal spread Satterthwaite's degrees of freedom are 2n − 2.
    double[] a = {1, 2, 3};
    double[] b = {5, 6, 7};
    Range range = Confidence.welch(a, b);
    assertNotNull(range);
    double half = 2.776445 * Math.sqrt(2.0 / 3);
    assertEquals(-4 - half, range.low(), 1e-5);
    assertEquals(-4 + half, range.high(), 1e-5);
  }

  @Test
  void welchCoversTheTruthAboutNineteenTimesInTwenty() {
    Random random = new Random(31);
    int covered = 0;
    int rounds = 4000;
    for (int k = 0; k < rounds; k++) {
      double[] a = new double[6];
      double[] b = new double[10];
      for (int i = 0; i < a.length; i++) {
        a[i] = 4 + 3 * random.nextGaussian();
      }
      for (int i = 0; i < b.length; i++) {
        b[i] = 1 + random.nextGaussian();
      }
      Range range = Confidence.welch(a, b);
      assertNotNull(range);
      covered += range.contains(3) ? 1 : 0;
    }
    // Four standard errors of a proportion of 0.95 over 4000 rounds are 0.014.
    assertEquals(0.95, (double) covered / rounds, 0.014);
  }

  @Test
  void theIntervalOfAnSdCoversTheTruthNineteenTimesInTwenty() {
    Random random = new Random(32);
    int covered = 0;
    int rounds = 4000;
    for (int k = 0; k < rounds; k++) {
      double[] values = new double[12];
      for (int i = 0; i < values.length; i++) {
        values[i] = 2 * random.nextGaussian();
      }
      Double sd = Stats.sd(values);
      assertNotNull(sd);
      covered += Confidence.sd(sd, 11).contains(2) ? 1 : 0;
    }
    assertEquals(0.95, (double) covered / rounds, 0.014);
  }

  @Test
  void theIntervalOfAnSdNearsTheUsualApproximation() {
    Range range = Confidence.sd(1, 400);
    assertEquals(2 * 1.96 / Math.sqrt(800), range.width(), 0.002);
  }

  @Test
  void noSpreadLeavesOnlyTheDifference() {
    assertEquals(new Range(1, 1), Confidence.welch(new double[] {3, 3}, new double[] {2, 2}));
  }

  @Test
  void shortInputHasNoAnswer() {
    assertNull(Confidence.wilson(0, 0));
    assertNull(Confidence.newcombe(1, 2, 0, 0));
    assertNull(Confidence.mean(new double[] {1}));
    assertNull(Confidence.welch(new double[] {1, 2}, new double[] {1}));
  }

  @Test
  void aShareOfNoneOrAllStaysBetweenNoneAndAll() {
    Range none = Confidence.wilson(0, 7);
    Range all = Confidence.wilson(7, 7);
    assertNotNull(none);
    assertNotNull(all);
    assertEquals(0, none.low());
    assertEquals(1, all.high());
    assertTrue(none.high() < 1 && all.low() > 0);
  }
}
