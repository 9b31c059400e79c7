package palmturn.measure;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.LeastSquares;
import palmturn.numbers.Range;
import palmturn.numbers.Stats;
import palmturn.trial.Side;
import palmturn.trial.TimedBy;

/**
 * The evenness of the slaps, over the intervals that are neither pauses nor span a missed turn.
 *
 * @param timedBy what all the intervals are timed by; null without an interval
 * @param intervals how many the figures rest on
 * @param leftOut how many were left out for want of a time from that source
 * @param pauses how many were pauses
 * @param intervalCvPct SD/mean
 * @param steadyCvPct residual SD/mean after a straight slow-down and a steady turn bias are taken
 *     out
 * @param steadyCvRangePct 95 % interval of it, by chi-squared
 * @param turnBiasPct (mean palm→back − mean back→palm)/mean
 * @param sameTurnCvPct pooled SD within the two turn classes/mean
 * @param npvi change from each interval to the next
 * @param timingFloorPct the CV that marks this coarse would give a perfectly even hand
 */
public record Rhythm(
    @Nullable TimedBy timedBy,
    int intervals,
    int leftOut,
    int pauses,
    @Nullable Double intervalCvPct,
    @Nullable Double steadyCvPct,
    @Nullable Range steadyCvRangePct,
    @Nullable Double turnBiasPct,
    @Nullable Double sameTurnCvPct,
    @Nullable Double npvi,
    @Nullable Double timingFloorPct) {
  private static final int LEAST_PER_TURN = 2;

  static Rhythm of(Window window, Series series) {
    List<SlapInterval> used = series.rhythm();
    int leftOut = series.count(SlapInterval.Use.OTHER_SOURCE);
    int pauses = series.count(SlapInterval.Use.PAUSE);
    double[] d = durations(used);
    Double mean = Stats.mean(d);
    if (!window.scale().known() || series.timedBy() == TimedBy.TYPED || mean == null) {
      return new Rhythm(
          series.timedBy(), 0, leftOut, pauses, null, null, null, null, null, null, null);
    }
    boolean sidesKnown = window.slaps().stream().noneMatch(s -> s.side() == Side.UNKNOWN);
    double[] there = durations(withTurn(used, TurnClass.PALM_TO_BACK));
    double[] back = durations(withTurn(used, TurnClass.BACK_TO_PALM));
    Double meanThere = Stats.mean(there);
    Double meanBack = Stats.mean(back);
    Double sameTurnSd = Stats.pooledSd(there, back);
    boolean turnTerm =
        sidesKnown && there.length >= LEAST_PER_TURN && back.length >= LEAST_PER_TURN;
    Steady steady = turnTerm ? steadyWithTurn(used) : steadyWithoutTurn(used);
    return new Rhythm(
        series.timedBy(),
        used.size(),
        leftOut,
        pauses,
        Stats.cvPct(d),
        steady == null ? null : steady.cvPct,
        steady == null ? null : Confidence.sd(steady.cvPct, steady.freedom),
        sidesKnown && meanThere != null && meanBack != null
            ? 100 * (meanThere - meanBack) / mean
            : null,
        sidesKnown && sameTurnSd != null ? 100 * sameTurnSd / mean : null,
        Stats.npvi(runs(series.intervals())),
        floorPct(used, mean));
  }

  /** Returns whether a CV stands clear of the timing floor: twice the floor or more. */
  public boolean resolves(double cvPct) {
    return timingFloorPct != null && cvPct >= 2 * timingFloorPct;
  }

  /**
   * Returns whether the steady CV, or the interval CV where there is no steady one, stands clear of
   * the timing floor; below that it is shown as "at most". Null where there is neither.
   */
  public @Nullable Boolean resolved() {
    Double cv = steadyCvPct != null ? steadyCvPct : intervalCvPct;
    return cv == null || timingFloorPct == null ? null : resolves(cv);
  }

  private record Steady(double cvPct, int freedom) {
    static @Nullable Steady of(double[] d, double[]... regressors) {
      Double sd = LeastSquares.residualSd(d, regressors);
      Double mean = Stats.mean(d);
      return sd == null || mean == null
          ? null
          : new Steady(100 * sd / mean, d.length - regressors.length - 1);
    }
  }

  private static @Nullable Steady steadyWithTurn(List<SlapInterval> used) {
    List<SlapInterval> turned = new ArrayList<>(withTurn(used, TurnClass.PALM_TO_BACK));
    turned.addAll(withTurn(used, TurnClass.BACK_TO_PALM));
    double[] turns =
        turned.stream()
            .mapToDouble(each -> each.turn() == null ? 0 : each.turn().regressor())
            .toArray();
    return Steady.of(durations(turned), midpoints(turned), turns);
  }

  private static @Nullable Steady steadyWithoutTurn(List<SlapInterval> used) {
    return Steady.of(durations(used), midpoints(used));
  }

  private static @Nullable Double floorPct(List<SlapInterval> used, double mean) {
    double sum = 0;
    for (SlapInterval each : used) {
      if (each.varianceS2() == null) {
        return null;
      }
      sum += each.varianceS2();
    }
    return 100 * Math.sqrt(sum / used.size()) / mean;
  }

  private static List<SlapInterval> withTurn(List<SlapInterval> intervals, TurnClass turn) {
    return intervals.stream().filter(each -> each.turn() == turn).toList();
  }

  static double[] durations(List<SlapInterval> intervals) {
    return intervals.stream().mapToDouble(SlapInterval::durationS).toArray();
  }

  static double[] midpoints(List<SlapInterval> intervals) {
    return intervals.stream().mapToDouble(SlapInterval::midS).toArray();
  }

  private static double[][] runs(List<SlapInterval> intervals) {
    List<double[]> runs = new ArrayList<>();
    List<SlapInterval> run = new ArrayList<>();
    for (SlapInterval each : intervals) {
      if (each.use() == SlapInterval.Use.RHYTHM) {
        run.add(each);
      } else {
        runs.add(durations(run));
        run.clear();
      }
    }
    runs.add(durations(run));
    return runs.toArray(double[][]::new);
  }
}
