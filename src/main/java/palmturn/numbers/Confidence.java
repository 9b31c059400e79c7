package palmturn.numbers;

import org.jspecify.annotations.Nullable;

/** 95 % confidence intervals. */
public final class Confidence {
  private Confidence() {}

  /** Returns the t-interval of a mean; null under two values. */
  public static @Nullable Range mean(double[] values) {
    Double mean = Stats.mean(values);
    Double sd = Stats.sd(values);
    if (mean == null || sd == null) {
      return null;
    }
    double half = Quantiles.t(0.975, values.length - 1.0) * sd / Math.sqrt(values.length);
    return new Range(mean - half, mean + half);
  }

  /**
   * Returns the interval of mean(a) − mean(b) without assuming equal spread (Welch 1947), degrees
   * of freedom after Satterthwaite 1946; null under two values on either side.
   */
  public static @Nullable Range welch(double[] a, double[] b) {
    return contrast(new double[] {1, -1}, a, b);
  }

  /**
   * Returns the interval of a weighted sum Σ w·mean of independent groups without assuming equal
   * spread, degrees of freedom (Σ w²s²/n)²/Σ((w²s²/n)²/(n−1)) after Satterthwaite 1946; null where
   * a group has under two values.
   *
   * @param weights one for each group
   */
  public static @Nullable Range contrast(double[] weights, double[]... groups) {
    double value = 0;
    double variance = 0;
    double squares = 0;
    for (int i = 0; i < groups.length; i++) {
      Double mean = Stats.mean(groups[i]);
      Double sd = Stats.sd(groups[i]);
      if (mean == null || sd == null) {
        return null;
      }
      value += weights[i] * mean;
      double part = weights[i] * weights[i] * sd * sd / groups[i].length;
      variance += part;
      squares += part * part / (groups[i].length - 1);
    }
    if (variance == 0) {
      return new Range(value, value);
    }
    double half = Quantiles.t(0.975, variance * variance / squares) * Math.sqrt(variance);
    return new Range(value - half, value + half);
  }

  /**
   * Returns the score interval of a proportion (Wilson 1927), as a fraction from 0 to 1; null
   * without trials.
   */
  public static @Nullable Range wilson(int successes, int trials) {
    if (trials == 0) {
      return null;
    }
    double z = Quantiles.Z_975;
    double p = (double) successes / trials;
    double centre = (2.0 * successes + z * z) / (2 * (trials + z * z));
    double half = z * Math.sqrt(z * z + 4.0 * trials * p * (1 - p)) / (2 * (trials + z * z));
    return new Range(Math.max(0, centre - half), Math.min(1, centre + half));
  }

  /**
   * Returns the interval of the difference of two independent proportions, a − b, built from their
   * Wilson intervals (Newcombe 1998, Stat Med 17:873-890, method 10), as fractions; null where
   * either has no trials.
   */
  public static @Nullable Range newcombe(int successesA, int trialsA, int successesB, int trialsB) {
    return shares(
        new double[] {1, -1}, new int[] {successesA, successesB}, new int[] {trialsA, trialsB});
  }

  /**
   * Returns the interval of a weighted sum of independent proportions: the distances of the Wilson
   * intervals' ends from their proportions, weighted, squared and added, which is Newcombe's method
   * 10 carried from a difference to any weights (Zou, Huang and Zhang 2009, from memory); null
   * where one has no trials.
   *
   * @param weights one for each proportion
   */
  public static @Nullable Range shares(double[] weights, int[] successes, int[] trials) {
    double value = 0;
    double below = 0;
    double above = 0;
    for (int i = 0; i < weights.length; i++) {
      Range wilson = wilson(successes[i], trials[i]);
      if (wilson == null) {
        return null;
      }
      double p = (double) successes[i] / trials[i];
      double down = weights[i] * (p - (weights[i] > 0 ? wilson.low() : wilson.high()));
      double up = weights[i] * ((weights[i] > 0 ? wilson.high() : wilson.low()) - p);
      value += weights[i] * p;
      below = Math.hypot(below, down);
      above = Math.hypot(above, up);
    }
    return new Range(value - below, value + above);
  }

  /**
   * Returns the interval of a standard deviation of normal values by chi-squared, {@code
   * sd·√(ν/χ²)}; for many degrees of freedom about ± 1.96·sd/√(2ν).
   *
   * @param freedom degrees of freedom ν behind {@code sd}, 1 or more
   */
  public static Range sd(double sd, int freedom) {
    return new Range(
        sd * Math.sqrt(freedom / Quantiles.chiSquared(0.975, freedom)),
        sd * Math.sqrt(freedom / Quantiles.chiSquared(0.025, freedom)));
  }
}
