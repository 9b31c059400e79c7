package palmturn.numbers;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.jspecify.annotations.Nullable;

/**
 * Gaussian process regression with mean 0: the conditional mean of a value given known ones.
 * Rasmussen CE, Williams CKI 2006, Gaussian Processes for Machine Learning, equations 2.25 and
 * 2.26.
 */
public final class GaussianProcess {
  /** Relative tolerance for asymmetry by rounding. */
  private static final double ROUNDING = 1e-9;

  private static final double LEAST_VARIANCE = 1e-12;

  private final @Nullable DecompositionSolver solver;

  /**
   * Factorises the covariance matrix of the known values.
   *
   * @param covariance of the known values, with their measurement variance on the diagonal; may be
   *     empty
   */
  public GaussianProcess(double[][] covariance) {
    solver =
        covariance.length == 0
            ? null
            : new CholeskyDecomposition(
                    new Array2DRowRealMatrix(covariance), ROUNDING, LEAST_VARIANCE)
                .getSolver();
  }

  /**
   * Returns the weights of the known values in the conditional mean of another.
   *
   * @param shared its covariance with each known one
   */
  public double[] weights(double[] shared) {
    return solver == null ? new double[0] : solver.solve(new ArrayRealVector(shared)).toArray();
  }

  /**
   * Returns the sum of values times weights: a conditional mean of known values, or the variance
   * that shared covariances explain.
   */
  public static double weightedSum(double[] weights, double[] values) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * values[i];
    }
    return sum;
  }
}
