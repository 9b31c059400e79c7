package palmturn.numbers;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of the distributions behind the intervals. */
public final class Quantiles {
  /** The 0.975 quantile of the standard normal distribution. */
  public static final double Z_975 = 1.959963984540054;

  private static final NormalDistribution NORMAL = new NormalDistribution();

  private Quantiles() {}

  /** Returns the cumulative distribution function of the standard normal distribution. */
  public static double normalCdf(double z) {
    return NORMAL.cumulativeProbability(z);
  }

  /** Returns the quantile of Student's t with {@code freedom} degrees of freedom, above 0. */
  public static double t(double probability, double freedom) {
    return new TDistribution(freedom).inverseCumulativeProbability(probability);
  }

  /** Returns the quantile of chi-squared with {@code freedom} degrees of freedom, above 0. */
  public static double chiSquared(double probability, double freedom) {
    return new ChiSquaredDistribution(freedom).inverseCumulativeProbability(probability);
  }

  /** Returns the quantile of Fisher's F with both degrees of freedom above 0. */
  public static double f(double probability, double freedomAbove, double freedomBelow) {
    return new FDistribution(freedomAbove, freedomBelow).inverseCumulativeProbability(probability);
  }
}
