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
   * data from memory. Without the correction R 4.2.2, {@code glm}, and statsmodels 0.15.0, {@code
   * Logit}, both give −4.0777134311 and 1.5046454284.
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

  /**
   * R 4.2.2 with brglm2 0.9, {@code glm(method = "brglmFit", type = "AS_mean")}; brglm 0.7.2 agrees
   * to seven digits.
   */
  @Test
  void separatedDataHaveAnAnswer() {
    Logistic fit =
        Logistic.fit(new double[] {3.0, 3.4, 3.9, 4.3, 4.6, 5.0, 5.2, 5.5}, yes("00000111"));
    assertNotNull(fit);
    assertEquals(-15.326150626, fit.intercept(), 1e-6);
    assertEquals(3.226309941, fit.slope(), 1e-6);
    assertEquals(0.1, fit.probability(fit.quantile(0.1)), 1e-9);
  }

  /** The same two of R, which agree to nine digits. */
  @Test
  void fewDataArePulledTowardsNoEffect() {
    Logistic fit = Logistic.fit(HOURS, yes(PASSED));
    assertNotNull(fit);
    assertEquals(-3.286588824, fit.intercept(), 1e-7);
    assertEquals(1.201229440, fit.slope(), 1e-7);
  }

  /** The same two of R, on rates and faults that are made up, with where one in ten is a fault. */
  @Test
  void theRateAtWhichOneInTenIsAFault() {
    double[] rates = {
      2.9, 3.1, 3.0, 3.3, 4.1, 4.4, 4.2, 4.6, 4.9, 5.0, 5.1, 5.3, 5.2, 5.4, 5.6, 4.8, 4.7, 3.8, 3.6,
      5.5
    };
    Logistic fit = Logistic.fit(rates, yes("00000010010101100000"));
    assertNotNull(fit);
    assertEquals(-7.636291291, fit.intercept(), 1e-7);
    assertEquals(1.427310235, fit.slope(), 1e-7);
    assertEquals(3.810710930, fit.quantile(0.1), 1e-7);
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
    assertEquals(-4.0777134, fit.intercept(), 5e-4);
    assertEquals(1.5046454, fit.slope(), 2e-4);
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
