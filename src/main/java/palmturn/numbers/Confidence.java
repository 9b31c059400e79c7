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
    Double meanA = Stats.mean(a);
    Double meanB = Stats.mean(b);
    Double sdA = Stats.sd(a);
    Double sdB = Stats.sd(b);
    if (meanA == null || meanB == null || sdA == null || sdB == null) {
      return null;
    }
    double varA = sdA * sdA / a.length;
    double varB = sdB * sdB / b.length;
    double both = varA + varB;
    double difference = meanA - meanB;
    if (both == 0) {
      return new Range(difference, difference);
    }
    double freedom = both * both / (varA * varA / (a.length - 1) + varB * varB / (b.length - 1));
    double half = Quantiles.t(0.975, freedom) * Math.sqrt(both);
    return new Range(difference - half, difference + half);
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
    Range a = wilson(successesA, trialsA);
    Range b = wilson(successesB, trialsB);
    if (a == null || b == null) {
      return null;
    }
    double pA = (double) successesA / trialsA;
    double pB = (double) successesB / trialsB;
    double difference = pA - pB;
    return new Range(
        difference - Math.hypot(pA - a.low(), b.high() - pB),
        difference + Math.hypot(a.high() - pA, pB - b.low()));
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
