package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class GaussianProcessTest {
  /** Two correlated normal values: the mean of one is the correlation's share of the other. */
  @Test
  void oneKnownValueTellsAnotherByTheirCorrelation() {
    double[] shared = {0.6 * 2 * 5};
    double[] weights = new GaussianProcess(new double[][] {{25}}).weights(shared);
    assertEquals(0.6 * 2 / 5 * 7, GaussianProcess.weightedSum(weights, new double[] {7}), 1e-12);
    assertEquals(
        4 * (1 - 0.36),
        4 - GaussianProcess.weightedSum(weights, shared),
        1e-12,
        "what is left open");
  }

  @Test
  void ofTwoLooksAtOneThingTheBetterCountsByTheInverseOfItsVariance() {
    double[][] covariance = {{1e9 + 4, 1e9}, {1e9, 1e9 + 1}};
    double[] weights = new GaussianProcess(covariance).weights(new double[] {1e9, 1e9});
    assertArrayEquals(new double[] {0.2, 0.8}, weights, 1e-6);
  }

  @Test
  void whatRoundingPartsIsStillSymmetric() {
    double[][] covariance = {{2, 1 + 1e-12}, {1, 2}};
    double[] weights = new GaussianProcess(covariance).weights(new double[] {1, 1});
    assertArrayEquals(new double[] {1 / 3.0, 1 / 3.0}, weights, 1e-9);
  }

  @Test
  void nothingKnownTellsNothing() {
    double[] weights = new GaussianProcess(new double[0][0]).weights(new double[0]);
    assertEquals(0, GaussianProcess.weightedSum(weights, new double[0]));
  }
}
