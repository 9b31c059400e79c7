package palmturn.numbers;

import java.util.Objects;

/** Robust statistics of non-empty samples; quantiles as in {@link Stats}. */
public final class Robust {
  /** The standard deviation of normal values over their {@link #mad} (Rousseeuw, Croux 1993). */
  public static final double SD_OF_MAD = 1.4826;

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

  /** Returns the median absolute deviation of at least one value. */
  public static double mad(double[] values) {
    double middle = median(values);
    double[] off = new double[values.length];
    for (int i = 0; i < off.length; i++) {
      off[i] = Math.abs(values[i] - middle);
    }
    return median(off);
  }

  /** Returns the standard deviation estimated from the {@link #mad}, for normal values. */
  public static double sdFromMad(double[] values) {
    return SD_OF_MAD * mad(values);
  }
}
