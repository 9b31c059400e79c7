package palmturn.numbers;

import java.util.Objects;

/** Order statistics of samples that are known not to be empty, as {@link Stats} defines them. */
public final class Robust {
  private Robust() {}

  /** Returns the median of at least one value. */
  public static double median(double[] values) {
    return Objects.requireNonNull(Stats.median(values));
  }

  /**
   * Returns a quantile of at least one value.
   *
   * @param share above 0, up to 1
   */
  public static double quantile(double[] values, double share) {
    return Objects.requireNonNull(Stats.percentile(values, 100 * share));
  }

  /** Returns the median distance of at least one value from their median. */
  public static double mad(double[] values) {
    double middle = median(values);
    double[] off = new double[values.length];
    for (int i = 0; i < off.length; i++) {
      off[i] = Math.abs(values[i] - middle);
    }
    return median(off);
  }

  /**
   * Returns the standard deviation of normal values that have the same {@link #mad}: 1.4826 times
   * it (Rousseeuw and Croux 1993).
   */
  public static double spread(double[] values) {
    return 1.4826 * mad(values);
  }
}
