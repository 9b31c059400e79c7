package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LogisticTest {
  /**
   * Twenty students' hours of study and who passed: a much printed example of logistic regression,
   * data and its uncorrected result, −4.0777 and 1.5046, from memory. A search of the likelihood by
   * shrinking steps without derivatives, written in Python apart from this, gave −4.077713 and
   * 1.504645.
   */
  private static final double[] HOURS = {
    0.50, 0.75, 1.00, 1.25, 1.50, 1.75, 1.75, 2.00, 2.25, 2.50, 2.75, 3.00, 3.25, 3.50, 4.00, 4.25,
    4.50, 4.75, 5.00, 5.50
  };

  private static final String PASSED = "00000010101010111111";

  /**
   * On a table of two by two the correction is the half that Haldane and Anscombe add to each cell
   * (Firth 1993, from memory), an empty cell too.
   */
  @ParameterizedTest
  @CsvSource({"12, 5, 3, 9", "10, 0, 4, 6", "7, 0, 0, 8"})
  void onTwoGroupsItAddsAHalfToEachCell(int no0, int yes0, int no1, int yes1) {
    double[] x = new double[no0 + yes0 + no1 + yes1];
    boolean[] yes = new boolean[x.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = i < no0 + yes0 ? 0 : 1;
      yes[i] = i >= no0 && i < no0 + yes0 || i >= no0 + yes0 + no1;
    }
    Logistic fit = Logistic.fit(x, yes);
    assertNotNull(fit);
    double odds0 = (yes0 + 0.5) / (no0 + 0.5);
    double odds1 = (yes1 + 0.5) / (no1 + 0.5);
    assertEquals(Math.log(odds0), fit.intercept(), 1e-7);
    assertEquals(Math.log(odds1 / odds0), fit.slope(), 1e-7);
  }

  /** Values of the same search, with half the log determinant of the information added. */
  @Test
  void separatedDataHaveAnAnswer() {
    Logistic fit =
        Logistic.fit(new double[] {3.0, 3.4, 3.9, 4.3, 4.6, 5.0, 5.2, 5.5}, yes("00000111"));
    assertNotNull(fit);
    assertEquals(-15.326151, fit.intercept(), 1e-5);
    assertEquals(3.226310, fit.slope(), 1e-5);
    assertEquals(0.1, fit.probability(fit.at(0.1)), 1e-9);
  }

  @Test
  void fewDataArePulledTowardsNoEffect() {
    Logistic fit = Logistic.fit(HOURS, yes(PASSED));
    assertNotNull(fit);
    assertEquals(-3.286589, fit.intercept(), 1e-5);
    assertEquals(1.201229, fit.slope(), 1e-5);
  }

  @Test
  void withManyDataTheCorrectionVanishes() {
    int times = 5000;
    double[] x = new double[times * HOURS.length];
    boolean[] yes = new boolean[x.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = HOURS[i % HOURS.length];
      yes[i] = PASSED.charAt(i % HOURS.length) == '1';
    }
    Logistic fit = Logistic.fit(x, yes);
    assertNotNull(fit);
    assertEquals(-4.0777, fit.intercept(), 5e-4);
    assertEquals(1.5046, fit.slope(), 2e-4);
  }

  @Test
  void withoutASpreadThereIsNothingToFit() {
    assertNull(Logistic.fit(new double[] {5, 5, 5}, yes("010")));
    assertNull(Logistic.fit(new double[] {5}, yes("0")));
  }

  private static boolean[] yes(String digits) {
    boolean[] yes = new boolean[digits.length()];
    for (int i = 0; i < yes.length; i++) {
      yes[i] = digits.charAt(i) == '1';
    }
    return yes;
  }
}
