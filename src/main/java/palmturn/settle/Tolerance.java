package palmturn.settle;

import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;

/**
 * The largest time difference of two marks of one slap: one frame or 25 ms, whichever is more, at
 * most a quarter of the median interval, never under one frame.
 *
 * @param seconds real seconds
 * @param tooFewFrames whether one frame is more than a quarter of the median interval, so that a
 *     mark matches by chance too easily for agreement to mean much
 */
public record Tolerance(double seconds, boolean tooFewFrames) {
  private static final double USUAL_S = 0.025;

  /**
   * Returns the tolerance by the rule.
   *
   * @param frameS distance of frames, real seconds
   * @param medianIntervalS between slaps, real seconds; null where there is no interval
   */
  static Tolerance byRule(double frameS, @Nullable Double medianIntervalS) {
    double wanted = Math.max(frameS, USUAL_S);
    if (medianIntervalS == null) {
      return new Tolerance(wanted, false);
    }
    double cap = medianIntervalS / 4;
    return new Tolerance(Math.max(frameS, Math.min(wanted, cap)), frameS > cap);
  }

  /** Returns the median of all intervals inside either list; null without one. */
  static @Nullable Double medianIntervalS(double[] a, double[] b) {
    return Stats.median(DoubleStream.concat(intervals(a), intervals(b)).toArray());
  }

  private static DoubleStream intervals(double[] times) {
    return IntStream.range(1, times.length).mapToDouble(i -> times[i] - times[i - 1]);
  }
}
