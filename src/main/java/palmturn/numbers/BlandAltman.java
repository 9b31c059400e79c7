package palmturn.numbers;

import org.jspecify.annotations.Nullable;

/**
 * Limits of agreement of two measurements of the same things (Bland and Altman 1986, Lancet
 * 327:307-310).
 *
 * @param n pairs
 * @param bias mean difference
 * @param sd standard deviation of the differences, divisor n−1
 * @param limits limits of agreement, bias ± 1.96 SD: about 95 % of differences lie between them
 * @param bias95 t-interval of the bias
 * @param low95 t-interval of the lower limit, standard error √(3 SD²/n)
 * @param high95 the same of the upper limit
 */
public record BlandAltman(
    int n, double bias, double sd, Range limits, Range bias95, Range low95, Range high95) {

  /** Returns the limits of agreement of differences; null under two. */
  public static @Nullable BlandAltman of(double[] differences) {
    return of(differences, Quantiles.Z_975);
  }

  /** The paper of 1986 rounds the multiplier to 2. */
  static @Nullable BlandAltman of(double[] differences, double multiplier) {
    Double bias = Stats.mean(differences);
    Double sd = Stats.sd(differences);
    if (bias == null || sd == null) {
      return null;
    }
    int n = differences.length;
    double t = Quantiles.t(0.975, n - 1.0);
    double low = bias - multiplier * sd;
    double high = bias + multiplier * sd;
    double limitHalf = t * sd * Math.sqrt(3.0 / n);
    return new BlandAltman(
        n,
        bias,
        sd,
        new Range(low, high),
        around(bias, t * sd / Math.sqrt(n)),
        around(low, limitHalf),
        around(high, limitHalf));
  }

  private static Range around(double centre, double half) {
    return new Range(centre - half, centre + half);
  }
}
