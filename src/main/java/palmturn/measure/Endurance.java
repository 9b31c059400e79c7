package palmturn.measure;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.LeastSquares;
import palmturn.numbers.Range;
import palmturn.trial.Slap;

/**
 * The effect of the trial's length on the hand.
 *
 * @param slowDownPctPerS 100·(e^b−1), b the slope of ln interval on its midpoint; positive slows
 * @param slowDownRangePctPerS its 95 % t-interval
 * @param lastOverFirstThird rate in the window's last third over that in its first
 * @param lateFaultsPct share of faulty attempts in the second half less that in the first, points
 */
public record Endurance(
    @Nullable Double slowDownPctPerS,
    @Nullable Range slowDownRangePctPerS,
    @Nullable Double lastOverFirstThird,
    @Nullable Double lateFaultsPct) {

  static Endurance of(Window window, Series series) {
    if (!window.scale().known()) {
      return new Endurance(null, null, null, null);
    }
    List<SlapInterval> used = series.rhythm();
    double[] logs = Arrays.stream(Rhythm.durations(used)).map(Math::log).toArray();
    LeastSquares.Line line = LeastSquares.line(Rhythm.midpoints(used), logs);
    return new Endurance(
        line == null ? null : perSecond(line.slope()),
        line == null
            ? null
            : new Range(perSecond(line.slope95().low()), perSecond(line.slope95().high())),
        lastOverFirstThird(window),
        lateFaults(window));
  }

  private static double perSecond(double slope) {
    return 100 * Math.expm1(slope);
  }

  private static @Nullable Double lastOverFirstThird(Window window) {
    Double first = rateOver(window, 0, window.lengthS() / 3);
    Double last = rateOver(window, window.lengthS() * 2 / 3, Double.POSITIVE_INFINITY);
    return first == null || last == null ? null : last / first;
  }

  /** The rate of the intervals whose midpoints lie in a stretch, pauses and all. */
  private static @Nullable Double rateOver(Window window, double fromS, double toS) {
    double[] t = window.timesS();
    int count = 0;
    double tookS = 0;
    for (int i = 0; i + 1 < t.length; i++) {
      double midS = (t[i] + t[i + 1]) / 2;
      if (fromS <= midS && midS < toS) {
        count++;
        tookS += t[i + 1] - t[i];
      }
    }
    return tookS <= 0 ? null : count / tookS;
  }

  private static @Nullable Double lateFaults(Window window) {
    if (window.slaps().size() < 2 || !Accuracy.known(window)) {
      return null;
    }
    double halfS = window.lengthS() / 2;
    int[] all = new int[2];
    int[] faulty = new int[2];
    for (Slap mark : window.marks()) {
      int half = window.realS(mark.timeS()) < halfS ? 0 : 1;
      all[half]++;
      if (!window.clean(mark)) {
        faulty[half]++;
      }
    }
    return all[0] == 0 || all[1] == 0
        ? null
        : 100.0 * faulty[1] / all[1] - 100.0 * faulty[0] / all[0];
  }
}
