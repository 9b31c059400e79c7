package palmturn.numbers;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.hipparchus.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;

/** Ordinary least squares. */
public final class LeastSquares {
  private LeastSquares() {}

  /**
   * A straight line through points.
   *
   * @param slope rise of y for one of x
   * @param intercept y at x = 0
   * @param slopeSe standard error of the slope
   * @param interceptSe standard error of the intercept
   * @param residualSd residual standard deviation, divisor n−2
   * @param rSquare coefficient of determination
   * @param slope95 95 % t-interval of the slope, n−2 degrees of freedom
   */
  public record Line(
      double slope,
      double intercept,
      double slopeSe,
      double interceptSe,
      double residualSd,
      double rSquare,
      Range slope95) {}

  /** Returns the line of y on x; null under three points or where all x are equal. */
  public static @Nullable Line line(double[] x, double[] y) {
    if (x.length < 3 || Double.valueOf(0).equals(Stats.sd(x))) {
      return null;
    }
    SimpleRegression regression = new SimpleRegression();
    for (int i = 0; i < x.length; i++) {
      regression.addData(x[i], y[i]);
    }
    double slope = regression.getSlope();
    double half = Quantiles.t(0.975, x.length - 2) * regression.getSlopeStdErr();
    return new Line(
        slope,
        regression.getIntercept(),
        regression.getSlopeStdErr(),
        regression.getInterceptStdErr(),
        Math.sqrt(regression.getMeanSquareError()),
        regression.getRSquare(),
        new Range(slope - half, slope + half));
  }

  /**
   * Returns the residual standard deviation of y regressed on a constant and the regressors,
   * divisor n − regressors − 1; null without a degree of freedom or where the regressors are
   * collinear.
   *
   * @param regressors one array for each, all as long as {@code y}
   */
  public static @Nullable Double residualSd(double[] y, double[]... regressors) {
    int freedom = y.length - regressors.length - 1;
    if (freedom < 1) {
      return null;
    }
    double[][] rows = new double[y.length][regressors.length];
    for (int i = 0; i < y.length; i++) {
      for (int k = 0; k < regressors.length; k++) {
        rows[i][k] = regressors[k][i];
      }
    }
    try {
      OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression(1e-9);
      regression.newSampleData(y, rows);
      return Math.sqrt(regression.calculateResidualSumOfSquares() / freedom);
    } catch (MathRuntimeException singular) {
      return null;
    }
  }
}
