package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;

class KappaTest {

  /** Cohen 1960: .492, the three labels of 200 cases; standard errors recomputed. */
  @Test
  void ofCohen1960() {
    check(
        new int[][] {{88, 14, 18}, {10, 40, 10}, {2, 6, 12}},
        0.491525424,
        0.051001816,
        0.051978936);
  }

  /** Fleiss, Cohen and Everitt 1969: .429, variances .002884872 and .003081633 (recomputed). */
  @Test
  void ofFleissCohenEveritt1969() {
    Kappa kappa =
        check(
            new int[][] {{106, 10, 4}, {22, 28, 10}, {2, 12, 6}},
            0.428571429,
            0.053711005,
            0.055512455);
    assertEquals(0.70, kappa.observed(), 1e-12);
    assertEquals(0.475, kappa.expected(), 1e-12);
    assertEquals(200, kappa.n());
  }

  /** The SAS example in statsmodels' test_inter_rater: .4842, .1380, .2137 to .7547, .1484. */
  @Test
  void ofSasWhereOneLabelWasNeverUsedByTheFirstRater() {
    Kappa kappa =
        check(new int[][] {{0, 4, 1}, {0, 8, 0}, {0, 1, 5}}, 0.484162896, 0.138013578, 0.148398282);
    assertEquals(0.213661, kappa.range95().low(), 1e-6);
    assertEquals(0.754665, kappa.range95().high(), 1e-6);
  }

  /** Example data of R's fmsb: 0.4, 95 % interval .151092 to .648908. */
  @Test
  void ofTwoLabels() {
    Kappa kappa = check(new int[][] {{20, 5}, {10, 15}}, 0.4, 0.126996063, 0.138564065);
    assertEquals(0.151092, kappa.range95().low(), 1e-6);
    assertEquals(0.648908, kappa.range95().high(), 1e-6);
  }

  @Test
  void isTheSameFromEitherSide() {
    Kappa there = Kappa.of(new int[][] {{8, 2, 1}, {3, 9, 0}, {4, 1, 7}});
    Kappa back = Kappa.of(new int[][] {{8, 3, 4}, {2, 9, 1}, {1, 0, 7}});
    assertNotNull(there);
    assertNotNull(back);
    assertEquals(there.kappa(), back.kappa(), 1e-12);
    assertEquals(there.se(), back.se(), 1e-12);
  }

  @Test
  void fullAgreementIsOneWithoutError() {
    Kappa kappa = Kappa.of(new int[][] {{7, 0}, {0, 5}});
    assertNotNull(kappa);
    assertEquals(1, kappa.kappa(), 1e-12);
    assertEquals(0, kappa.se(), 1e-9);
    assertEquals(1, kappa.range95().high(), 1e-12);
  }

  @Test
  void oneLabelOnlyHasNoAnswer() {
    assertNull(Kappa.of(new int[][] {{9, 0}, {0, 0}}));
    assertNull(Kappa.of(new int[][] {{9, 3}, {0, 0}}));
    assertNull(Kappa.of(new int[2][2]));
    assertNull(Kappa.of(new int[0][0]));
  }

  private static Kappa check(int[][] counts, double expected, double se, double seByChance) {
    Kappa kappa = Kappa.of(counts);
    assertNotNull(kappa);
    assertEquals(expected, kappa.kappa(), 1e-9);
    assertEquals(se, kappa.se(), 1e-9);
    assertEquals(seByChance, kappa.seByChance(), 1e-9);
    return kappa;
  }
}
