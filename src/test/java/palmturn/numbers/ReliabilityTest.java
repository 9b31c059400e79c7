package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.numbers.Reliability.Form;
import palmturn.numbers.Reliability.Icc;

class ReliabilityTest {
  private static final double[][] SHROUT_FLEISS = {
    {9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}
  };

  private static final double[][] WEIR_A = {
    {146, 140}, {148, 152}, {170, 152}, {90, 99}, {157, 145}, {156, 153}, {176, 167}, {205, 218}
  };

  /** Shrout and Fleiss 1979, six targets by four judges; unrounded values recomputed. */
  @ParameterizedTest
  @CsvSource({
    "ONE_WAY, 0.1657417684, -0.132932, 0.722560, 0.4427971337, -0.884442, 0.912415",
    "AGREEMENT, 0.2897637795, 0.018787, 0.761084, 0.6200505476, 0.071137, 0.927232",
    "CONSISTENCY, 0.7148407148, 0.342465, 0.945858, 0.9093155424, 0.675675, 0.985892"
  })
  void ofShroutAndFleiss1979(
      Form form,
      double single,
      double singleLow,
      double singleHigh,
      double average,
      double averageLow,
      double averageHigh) {
    Reliability reliability = of(SHROUT_FLEISS);
    check(single, singleLow, singleHigh, reliability.single(form));
    check(average, averageLow, averageHigh, reliability.average(form));
  }

  /** Shrout and Fleiss 1979: BMS 11.24, JMS 32.49, EMS 1.02, WMS 6.26. */
  @Test
  void meanSquaresOfShroutAndFleiss1979() {
    Reliability reliability = of(SHROUT_FLEISS);
    assertEquals(11.241667, reliability.betweenTargets(), 1e-6);
    assertEquals(32.486111, reliability.betweenRaters(), 1e-6);
    assertEquals(1.019444, reliability.error(), 1e-6);
    assertEquals(6.263889, reliability.within(), 1e-6);
  }

  /** Weir 2005, data set A: SEM 7.6; unrounded values recomputed. */
  @Test
  void ofWeir2005() {
    Reliability reliability = of(WEIR_A);
    assertEquals(0.950053100, value(reliability, Form.ONE_WAY), 1e-9);
    assertEquals(0.949975071, value(reliability, Form.AGREEMENT), 1e-9);
    assertEquals(0.947016137, value(reliability, Form.CONSISTENCY), 1e-9);
    assertEquals(7.556926813, reliability.typicalError(), 1e-9);
    // 1.96 there, the unrounded quantile here.
    assertEquals(20.946732442, reliability.smallestDetectableChange(), 5e-4);
  }

  /** Weir 2005, data set B from memory: another spread of people, the same error as set A. */
  @Test
  void theTypicalErrorDoesNotHangOnTheSpreadOfPeople() {
    double[][] weirB = {
      {166, 160}, {168, 172}, {160, 142}, {150, 159}, {147, 135}, {146, 143}, {156, 147}, {155, 168}
    };
    Reliability reliability = of(weirB);
    assertEquals(0.552748886, value(reliability, Form.AGREEMENT), 1e-9);
    assertEquals(7.556926813, reliability.typicalError(), 1e-9);
  }

  @Test
  void theTypicalErrorOfTwoRepeatsIsTheSdOfDifferencesOverRootTwo() {
    double[] differences = Arrays.stream(WEIR_A).mapToDouble(row -> row[1] - row[0]).toArray();
    Double sd = Stats.sd(differences);
    assertNotNull(sd);
    assertEquals(sd / Math.sqrt(2), of(WEIR_A).typicalError(), 1e-12);
  }

  /**
   * Bland and Altman 1996, BMJ 313:744, peak flow of 20 children four times: within-subject SD 21.5
   * l/min. Children 17 to 20 are from memory.
   */
  @Test
  void ofBlandAndAltman1996() {
    double[][] children = {
      {190, 220, 200, 200}, {220, 200, 240, 230}, {260, 260, 240, 280}, {210, 300, 280, 265},
      {270, 265, 280, 270}, {280, 280, 270, 275}, {260, 280, 280, 300}, {275, 275, 275, 305},
      {280, 290, 300, 290}, {320, 290, 300, 290}, {300, 300, 310, 300}, {270, 250, 330, 370},
      {320, 330, 330, 330}, {335, 320, 335, 375}, {350, 320, 340, 365}, {360, 320, 350, 345},
      {330, 340, 380, 390}, {335, 385, 360, 370}, {400, 420, 425, 420}, {430, 460, 480, 470}
    };
    Reliability reliability = of(children);
    assertEquals(460.520833, reliability.within(), 1e-6);
    assertEquals(15016.759868, reliability.betweenTargets(), 1e-6);
    assertEquals(0.887666354, value(reliability, Form.ONE_WAY), 1e-9);
    Double pooled = Stats.pooledSd(children);
    assertNotNull(pooled);
    assertEquals(21.459749, pooled, 1e-6);
  }

  @ParameterizedTest
  @ValueSource(longs = {61, 62, 63})
  void aConstantOfOneRaterCountsInAgreementAlone(long seed) {
    double[][] table = random(seed, 9, 2);
    double[][] shifted =
        Arrays.stream(table).map(row -> new double[] {row[0], row[1] + 5}).toArray(double[][]::new);
    assertEquals(value(of(table), Form.CONSISTENCY), value(of(shifted), Form.CONSISTENCY), 1e-9);
    assertTrue(value(of(shifted), Form.AGREEMENT) < value(of(table), Form.AGREEMENT) - 0.05);
  }

  @Test
  void fullAgreementIsOne() {
    Reliability same = of(new double[][] {{1, 1}, {4, 4}, {6, 6}});
    for (Form form : Form.values()) {
      assertEquals(new Icc(1, new Range(1, 1)), same.single(form));
    }
    assertEquals(0, same.typicalError());
  }

  @Test
  void theIntervalOfAgreementCoversTheTruthNineteenTimesInTwenty() {
    // Variances 4 of targets, 1 of error, and of raters drawn anew with variance 1: truth 4/6.
    int covered = 0;
    int rounds = 1000;
    for (int seed = 0; seed < rounds; seed++) {
      Icc icc = of(random(1000 + seed, 20, 4)).single(Form.AGREEMENT);
      assertNotNull(icc);
      covered += icc.range95().contains(4.0 / 6) ? 1 : 0;
    }
    // Four standard errors of a proportion of 0.95 are 0.028; the interval is an approximation.
    assertEquals(0.95, (double) covered / rounds, 0.04);
  }

  @Test
  void shortOrConstantTablesHaveNoAnswer() {
    assertNull(Reliability.of(new double[0][0]));
    assertNull(Reliability.of(new double[][] {{1, 2}}));
    assertNull(Reliability.of(new double[][] {{1}, {2}}));
    assertNull(of(new double[][] {{3, 3}, {3, 3}}).single(Form.AGREEMENT));
    assertNull(of(new double[][] {{3, 3}, {3, 3}}).average(Form.CONSISTENCY));
  }

  private static double[][] random(long seed, int targets, int raters) {
    Random random = new Random(seed);
    double[] bias = random.doubles(raters).map(u -> random.nextGaussian()).toArray();
    double[][] table = new double[targets][raters];
    for (double[] row : table) {
      double truth = 2 * random.nextGaussian();
      Arrays.setAll(row, j -> truth + bias[j] + random.nextGaussian());
    }
    return table;
  }

  private static Reliability of(double[][] table) {
    Reliability reliability = Reliability.of(table);
    assertNotNull(reliability);
    return reliability;
  }

  private static double value(Reliability reliability, Form form) {
    Icc icc = reliability.single(form);
    assertNotNull(icc);
    return icc.value();
  }

  private static void check(double value, double low, double high, @Nullable Icc icc) {
    assertNotNull(icc);
    assertEquals(value, icc.value(), 1e-9);
    assertEquals(low, icc.range95().low(), 1e-6);
    assertEquals(high, icc.range95().high(), 1e-6);
  }
}
