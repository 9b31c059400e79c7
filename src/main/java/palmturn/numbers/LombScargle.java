package palmturn.numbers;

/**
 * The Lomb-Scargle periodogram of a series whose samples may be uneven in time (Lomb 1976,
 * Astrophys Space Sci 39:447-462; Scargle 1982, Astrophys J 263:835-853).
 */
public final class LombScargle {
  private LombScargle() {}

  /**
   * Returns the share of the series' variance that a sine of each frequency explains, 0 to 1
   * ("standard" normalisation), the mean removed first; 0 for a series without variance.
   *
   * @param times seconds, in any order
   * @param values one for each time
   * @param hz frequencies above 0
   */
  public static double[] power(double[] times, double[] values, double[] hz) {
    double[] power = new double[hz.length];
    Double mean = Stats.mean(values);
    if (mean == null) {
      return power;
    }
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    if (squares == 0) {
      return power;
    }
    for (int k = 0; k < hz.length; k++) {
      power[k] = 2 * classic(times, values, mean, 2 * Math.PI * hz[k]) / squares;
    }
    return power;
  }

  private static double classic(double[] times, double[] values, double mean, double omega) {
    double sin2 = 0;
    double cos2 = 0;
    for (double time : times) {
      sin2 += Math.sin(2 * omega * time);
      cos2 += Math.cos(2 * omega * time);
    }
    double delay = Math.atan2(sin2, cos2) / (2 * omega);
    double yc = 0;
    double ys = 0;
    double cc = 0;
    double ss = 0;
    for (int i = 0; i < times.length; i++) {
      double cos = Math.cos(omega * (times[i] - delay));
      double sin = Math.sin(omega * (times[i] - delay));
      yc += (values[i] - mean) * cos;
      ys += (values[i] - mean) * sin;
      cc += cos * cos;
      ss += sin * sin;
    }
    return (share(yc, cc) + share(ys, ss)) / 2;
  }

  /** At half the rate of even samples one of the two waves is 0 at all of them. */
  private static double share(double product, double squares) {
    return squares > 1e-12 ? product * product / squares : 0;
  }
}
