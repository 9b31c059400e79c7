package palmturn.numbers;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.jspecify.annotations.Nullable;

/**
 * What known values tell of others, where all of them together are normal with mean 0: Rasmussen
 * CE, Williams CKI 2006, Gaussian Processes for Machine Learning, equations 2.25 and 2.26.
 */
public final class GaussianProcess {
  /** So far, by share, may rounding part what should be symmetric. */
  private static final double ROUNDING = 1e-9;

  private static final double LEAST_VARIANCE = 1e-12;

  private final @Nullable DecompositionSolver solver;

  /**
   * Takes how the known values go together.
   *
   * @param covariance of each with each, what they are measured to included; may be empty
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
   * Returns by which weights the known values make the mean of another.
   *
   * @param shared its covariance with each known one
   */
  public double[] weights(double[] shared) {
    return solver == null ? new double[0] : solver.solve(new ArrayRealVector(shared)).toArray();
  }

  /** Returns a sum of products, as weights make of known values and of shared covariances. */
  public static double weighted(double[] weights, double[] values) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * values[i];
    }
    return sum;
  }
}
