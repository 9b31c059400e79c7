package palmturn.measure;

import org.jspecify.annotations.Nullable;

/**
 * The speed of the hand in real time; null where it is unknown.
 *
 * @param rateSlapsPerS (n−1)/(t_n−t_1), doubles left out
 * @param cycleRateHz half of the rate: a cycle is there and back
 * @param tenCycleS time for ten cycles: t_21−t_1, or 20/rate
 * @param tenCycleExtrapolated whether {@code tenCycleS} is 20/rate because the window is shorter
 * @param bestTwoSecondsSlapsPerS largest rate over up to two seconds, at least 1.5
 * @param cleanRateSlapsPerS rate times clean share
 */
public record Speed(
    @Nullable Double rateSlapsPerS,
    @Nullable Double cycleRateHz,
    @Nullable Double tenCycleS,
    boolean tenCycleExtrapolated,
    @Nullable Double bestTwoSecondsSlapsPerS,
    @Nullable Double cleanRateSlapsPerS) {
  private static final int TEN_CYCLES = 20;
  private static final double BEST_OVER_S = 2;
  private static final double BEST_AT_LEAST_S = 1.5;

  static Speed of(Window window, @Nullable Double cleanSharePct) {
    double[] t = window.timesS();
    if (!window.scale().known() || t.length < 2 || window.lengthS() <= 0) {
      return new Speed(null, null, null, false, null, null);
    }
    double rate = (t.length - 1) / window.lengthS();
    boolean extrapolated = t.length <= TEN_CYCLES;
    return new Speed(
        rate,
        rate / 2,
        extrapolated ? TEN_CYCLES / rate : t[TEN_CYCLES],
        extrapolated,
        bestTwoSeconds(t),
        cleanSharePct == null ? null : rate * cleanSharePct / 100);
  }

  private static @Nullable Double bestTwoSeconds(double[] t) {
    Double best = null;
    int j = 0;
    for (int i = 0; i < t.length; i++) {
      while (j + 1 < t.length && t[j + 1] <= t[i] + BEST_OVER_S + Window.EDGE_S) {
        j++;
      }
      double tookS = t[j] - t[i];
      if (tookS >= BEST_AT_LEAST_S - Window.EDGE_S) {
        double rate = (j - i) / tookS;
        best = best == null ? rate : Math.max(best, rate);
      }
    }
    return best;
  }
}
