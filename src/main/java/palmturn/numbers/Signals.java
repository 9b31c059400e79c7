package palmturn.numbers;

import java.util.Arrays;

/** Smoothing and description of series. No method changes its input. */
public final class Signals {
  private Signals() {}

  /**
   * Returns the moving median; at the ends over the neighbours that exist.
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
   * Returns the moving mean; at the ends over the neighbours that exist.
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
   * Convolves with a Gaussian kernel truncated at four standard deviations, the ends reflected (d c
   * b a | a b c d | d c b a), as in SciPy's {@code gaussian_filter1d}.
   *
   * @param sigmaSamples standard deviation of the kernel, samples; 0 returns a copy
   */
  public static double[] gaussian(double[] x, double sigmaSamples) {
    if (!(sigmaSamples > 0) || x.length == 0) {
      return x.clone();
    }
    int radius = (int) (4 * sigmaSamples + 0.5);
    double[] kernel = new double[2 * radius + 1];
    double sum = 0;
    for (int k = -radius; k <= radius; k++) {
      kernel[k + radius] = Math.exp(-0.5 * k * k / (sigmaSamples * sigmaSamples));
      sum += kernel[k + radius];
    }
    double[] result = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double total = 0;
      for (int k = -radius; k <= radius; k++) {
        total += kernel[k + radius] * x[mirrored(i + k, x.length)];
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
