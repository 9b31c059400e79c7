package palmturn.numbers;

/** Smoothing and description of series. No method changes its input. */
public final class Signals {
  private Signals() {}

  /**
   * Returns the autocorrelation Σ(y_t−m)(y_{t+lag}−m)/Σ(y_t−m)² (Box and Jenkins); 0 where no
   * sample lies {@code lag} after another, and for a series without variance.
   *
   * @param lag samples, 0 or more
   */
  public static double autocorrelation(double[] x, int lag) {
    Double mean = Stats.mean(x);
    if (mean == null) {
      return 0;
    }
    double products = 0;
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double here = x[i] - mean;
      squares += here * here;
      if (i + lag < x.length) {
        products += here * (x[i + lag] - mean);
      }
    }
    return squares == 0 ? 0 : products / squares;
  }

  /**
   * Returns the kurtosis m4/m2², central moments with divisor n: 1 for two values equally often,
   * 1.8 for the uniform distribution, 3 for the normal one; 0 without variance.
   */
  public static double kurtosis(double[] x) {
    Double mean = Stats.mean(x);
    if (mean == null) {
      return 0;
    }
    double second = 0;
    double fourth = 0;
    for (double value : x) {
      double square = (value - mean) * (value - mean);
      second += square;
      fourth += square * square;
    }
    return second == 0 ? 0 : x.length * fourth / (second * second);
  }

  private static int mirrored(int index, int length) {
    int folded = Math.floorMod(index, 2 * length);
    return folded < length ? folded : 2 * length - 1 - folded;
  }
}
