package palmturn.numbers;

import java.util.Arrays;

/** Smooths a series, or says how it is shaped. None changes its input. */
public final class Signals {
  private Signals() {}

  /**
   * Returns the median of each sample with its neighbours; at the ends of those that are there.
   *
   * @param half neighbours on each side, 0 or more
   */
  public static double[] movingMedian(double[] x, int half) {
    double[] result = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double[] window =
          Arrays.copyOfRange(x, Math.max(0, i - half), Math.min(x.length, i + half + 1));
      Arrays.sort(window);
      result[i] = (window[(window.length - 1) / 2] + window[window.length / 2]) / 2;
    }
    return result;
  }

  /**
   * Returns the mean of each sample with its neighbours; at the ends of those that are there.
   *
   * @param half neighbours on each side, 0 or more
   */
  public static double[] movingMean(double[] x, int half) {
    double[] sums = new double[x.length + 1];
    for (int i = 0; i < x.length; i++) {
      sums[i + 1] = sums[i] + x[i];
    }
    double[] result = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      int from = Math.max(0, i - half);
      int to = Math.min(x.length, i + half + 1);
      result[i] = (sums[to] - sums[from]) / (to - from);
    }
    return result;
  }

  /**
   * Returns the series under a Gaussian bell cut off at four standard deviations, the ends mirrored
   * (d c b a | a b c d | d c b a), as SciPy's {@code gaussian_filter1d} does.
   *
   * @param sigmaSamples standard deviation of the bell in samples; 0 leaves the series as it is
   */
  public static double[] gaussian(double[] x, double sigmaSamples) {
    if (!(sigmaSamples > 0) || x.length == 0) {
      return x.clone();
    }
    int radius = (int) (4 * sigmaSamples + 0.5);
    double[] bell = new double[2 * radius + 1];
    double sum = 0;
    for (int k = -radius; k <= radius; k++) {
      bell[k + radius] = Math.exp(-0.5 * k * k / (sigmaSamples * sigmaSamples));
      sum += bell[k + radius];
    }
    double[] result = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double total = 0;
      for (int k = -radius; k <= radius; k++) {
        total += bell[k + radius] * x[mirrored(i + k, x.length)];
      }
      result[i] = total / sum;
    }
    return result;
  }

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
   * Returns how peaked the values lie, m4/m2² with central moments of divisor n: 1 for two values
   * equally often, 1.8 for evenly spread ones, 3 for normal ones; 0 without variance.
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
