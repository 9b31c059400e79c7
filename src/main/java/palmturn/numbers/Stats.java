package palmturn.numbers;

import java.util.Arrays;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.jspecify.annotations.Nullable;

/** Descriptive statistics. */
public final class Stats {
  private Stats() {}

  /** Returns the arithmetic mean, null for an empty series. */
  public static @Nullable Double mean(double[] values) {
    return values.length == 0 ? null : new Mean().evaluate(values);
  }

  /** Returns the standard deviation with divisor n−1, null under two values. */
  public static @Nullable Double sd(double[] values) {
    return values.length < 2 ? null : new StandardDeviation().evaluate(values);
  }

  /** Returns the median, null for an empty series. */
  public static @Nullable Double median(double[] values) {
    return percentile(values, 50);
  }

  /**
   * Returns a percentile by linear interpolation between order statistics, position 1+(n−1)p/100
   * (Hyndman and Fan 1996, type 7); null for an empty series.
   *
   * @param percent above 0, up to 100
   */
  public static @Nullable Double percentile(double[] values, double percent) {
    if (values.length == 0) {
      return null;
    }
    return new Percentile(percent)
        .withEstimationType(Percentile.EstimationType.R_7)
        .evaluate(values);
  }

  /** Returns the coefficient of variation in per cent, 100·SD(n−1)/mean; null under two values. */
  public static @Nullable Double cvPct(double[] values) {
    Double sd = sd(values);
    Double mean = mean(values);
    return sd == null || mean == null || mean == 0 ? null : 100 * sd / mean;
  }

  /**
   * Returns the normalised pairwise variability index, 100/(m−1) Σ|d_k−d_{k+1}|/((d_k+d_{k+1})/2)
   * (Grabe and Low 2002), over the neighbours inside each run; null without a pair.
   *
   * @param runs stretches of successive positive intervals; the last of one and the first of the
   *     next are no neighbours
   */
  public static @Nullable Double npvi(double[]... runs) {
    double sum = 0;
    int pairs = 0;
    for (double[] run : runs) {
      for (int i = 0; i + 1 < run.length; i++) {
        sum += Math.abs(run[i] - run[i + 1]) / ((run[i] + run[i + 1]) / 2);
        pairs++;
      }
    }
    return pairs == 0 ? null : 100 * sum / pairs;
  }

  /**
   * Returns the pooled standard deviation √(Σ(n_g−1)s_g²/Σ(n_g−1)) of groups; groups under two
   * values add nothing; null if none is left.
   */
  public static @Nullable Double pooledSd(double[]... groups) {
    double squares = 0;
    int freedom = 0;
    for (double[] group : groups) {
      Double sd = sd(group);
      if (sd != null) {
        squares += (group.length - 1) * sd * sd;
        freedom += group.length - 1;
      }
    }
    return freedom == 0 ? null : Math.sqrt(squares / freedom);
  }

  /** Returns the smallest value, null for an empty series. */
  public static @Nullable Double min(double[] values) {
    return values.length == 0 ? null : Arrays.stream(values).min().getAsDouble();
  }

  /** Returns the largest value, null for an empty series. */
  public static @Nullable Double max(double[] values) {
    return values.length == 0 ? null : Arrays.stream(values).max().getAsDouble();
  }
}
