package palmturn.settle;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;

/** The constant time offset between two lists of times. */
final class ClockOffset {
  /** Without any interval to go by. */
  private static final double REACH_S = 0.1;

  private ClockOffset() {}

  /**
   * Returns the median of second minus first over the moments that belong together, seconds; 0
   * where none do. It must be under half the median interval: beyond that a slap's neighbour lies
   * nearer than itself.
   */
  static double medianS(double[] a, double[] b) {
    Double intervalS = Tolerance.medianIntervalS(a, b);
    double reachS = intervalS == null ? REACH_S : intervalS / 2;
    double offsetS = median(a, b, reachS);
    // Once more: what fell out of reach on one side by the offset is in reach now.
    return offsetS + median(a, shifted(b, -offsetS), reachS);
  }

  static double[] shifted(double[] times, double byS) {
    return Arrays.stream(times).map(time -> time + byS).toArray();
  }

  private static double median(double[] a, double[] b, double reachS) {
    @Nullable Double median = Stats.median(Matching.of(a, b, reachS).differencesS());
    return median == null ? 0 : median;
  }
}
