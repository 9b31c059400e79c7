package palmturn.estimate.elbow;

import java.util.Arrays;
import palmturn.numbers.Stats;

/** Smooths a series whose samples may be unevenly spaced. */
final class TimedSmoothing {
  /** Reach of the Gaussian: farther off its weight is under 1.2 % of the peak. */
  private static final double REACH_SIGMAS = 3;

  private TimedSmoothing() {}

  /**
   * Returns at each sample the median of the samples around it.
   *
   * @param widthS of the window, seconds, half of it on either side
   */
  static double[] median(double[] timesS, double[] values, double widthS) {
    double[] smooth = new double[values.length];
    int from = 0;
    int to = 0;
    for (int i = 0; i < values.length; i++) {
      while (timesS[from] < timesS[i] - widthS / 2) {
        from++;
      }
      while (to < values.length && timesS[to] <= timesS[i] + widthS / 2) {
        to++;
      }
      Double median = Stats.median(Arrays.copyOfRange(values, from, to));
      smooth[i] = median == null ? values[i] : median;
    }
    return smooth;
  }

  /** Returns at each sample the mean of those around it, weighted by a Gaussian of their time. */
  static double[] gaussian(double[] timesS, double[] values, double sigmaS) {
    double[] smooth = new double[values.length];
    int from = 0;
    for (int i = 0; i < values.length; i++) {
      while (timesS[from] < timesS[i] - REACH_SIGMAS * sigmaS) {
        from++;
      }
      double sum = 0;
      double weights = 0;
      for (int k = from; k < values.length && timesS[k] <= timesS[i] + REACH_SIGMAS * sigmaS; k++) {
        double z = (timesS[k] - timesS[i]) / sigmaS;
        double weight = Math.exp(-z * z / 2);
        sum += weight * values[k];
        weights += weight;
      }
      smooth[i] = sum / weights;
    }
    return smooth;
  }
}
