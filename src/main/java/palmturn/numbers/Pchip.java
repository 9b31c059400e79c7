package palmturn.numbers;

import java.util.Arrays;
import java.util.Locale;

/**
 * A monotone piecewise cubic Hermite interpolant: slopes by the weighted harmonic mean (Fritsch and
 * Butland 1984, SIAM J Sci Stat Comput 5:300-304), three-point slopes at the ends. Flat beyond the
 * ends.
 */
public final class Pchip {
  private final double[] x;
  private final double[] y;
  private final double[] slopes;

  private Pchip(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    this.slopes = slopes(x, y);
  }

  /**
   * Returns the curve through points.
   *
   * @param x rising, at least one
   * @param y one for each x
   */
  public static Pchip of(double[] x, double[] y) {
    if (x.length == 0 || x.length != y.length) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%d times, %d values", x.length, y.length));
    }
    for (int i = 1; i < x.length; i++) {
      if (!(x[i] > x[i - 1])) {
        throw new IllegalArgumentException("%s does not follow %s".formatted(x[i], x[i - 1]));
      }
    }
    return new Pchip(x.clone(), y.clone());
  }

  /** Returns the value of the curve at one place. */
  public double at(double t) {
    int last = x.length - 1;
    if (t <= x[0]) {
      return y[0];
    }
    if (t >= x[last]) {
      return y[last];
    }
    int found = Arrays.binarySearch(x, t);
    int i = found >= 0 ? found : -found - 2;
    double h = x[i + 1] - x[i];
    double u = (t - x[i]) / h;
    double v = 1 - u;
    return v * v * ((1 + 2 * u) * y[i] + u * h * slopes[i])
        + u * u * ((1 + 2 * v) * y[i + 1] - v * h * slopes[i + 1]);
  }

  /** Returns the values of the curve at many places. */
  public double[] at(double[] ts) {
    return Arrays.stream(ts).map(this::at).toArray();
  }

  private static double[] slopes(double[] x, double[] y) {
    int n = x.length;
    double[] slopes = new double[n];
    if (n < 2) {
      return slopes;
    }
    double[] step = new double[n - 1];
    double[] rise = new double[n - 1];
    for (int i = 0; i + 1 < n; i++) {
      step[i] = x[i + 1] - x[i];
      rise[i] = (y[i + 1] - y[i]) / step[i];
    }
    if (n == 2) {
      Arrays.fill(slopes, rise[0]);
      return slopes;
    }
    for (int i = 1; i + 1 < n; i++) {
      if (rise[i - 1] * rise[i] > 0) {
        double before = 2 * step[i] + step[i - 1];
        double after = step[i] + 2 * step[i - 1];
        slopes[i] = (before + after) / (before / rise[i - 1] + after / rise[i]);
      }
    }
    slopes[0] = endSlope(step[0], step[1], rise[0], rise[1]);
    slopes[n - 1] = endSlope(step[n - 2], step[n - 3], rise[n - 2], rise[n - 3]);
    return slopes;
  }

  private static double endSlope(double step, double next, double rise, double nextRise) {
    double slope = ((2 * step + next) * rise - step * nextRise) / (step + next);
    if (Math.signum(slope) != Math.signum(rise)) {
      return 0;
    }
    boolean turns = Math.signum(rise) != Math.signum(nextRise);
    return turns && Math.abs(slope) > 3 * Math.abs(rise) ? 3 * rise : slope;
  }
}
