package palmturn.measure;

import java.util.List;
import java.util.Map;
import palmturn.measure.Measure.Better;
import palmturn.measure.Measure.Form;

/** Every measure of a trial, in the order in which it is shown. */
public final class Measures {
  private Measures() {}

  public static final Measure SLAPS =
      new Measure(
          "slaps",
          Quality.SPEED,
          "slaps",
          "",
          "How many times the hand touched the target after a turn, inside the window.",
          "n, without doubles and missed turns",
          Limit.OWN_CHOICE,
          Form.COUNT,
          Better.NEITHER,
          s -> (double) s.accuracy().slaps());

  public static final Measure RATE =
      new Measure(
          "rateSlapsPerS",
          Quality.SPEED,
          "rate",
          "slaps/s",
          "How many slaps a second, from the first slap of the window to the last.",
          "(n−1)/(t_n−t_1)",
          "elementary: events counted over the time they span",
          Form.HUNDREDTHS,
          Better.HIGHER,
          s -> s.speed().rateSlapsPerS());

  public static final Measure CYCLE_RATE =
      new Measure(
          "cycleRateHz",
          Quality.SPEED,
          "cycle rate",
          "Hz",
          "How many times a second the hand turned there and back.",
          "rate/2",
          "elementary: two slaps are one cycle",
          Form.HUNDREDTHS,
          Better.HIGHER,
          s -> s.speed().cycleRateHz());

  public static final Measure TEN_CYCLES =
      new Measure(
          "tenCycleS",
          Quality.SPEED,
          "ten-cycle time",
          "s",
          "How long ten turns there and back took, or would take at this rate.",
          "t_21−t_1, or 20/rate, then marked extrapolated",
          "ten cycles are counted in the ataxia scale SARA, item 7 (Schmitz-Hübsch et al. 2006);"
              + " extrapolating is Palmturn's choice",
          Form.HUNDREDTHS,
          Better.LOWER,
          s -> s.speed().tenCycleS());

  public static final Measure BEST_TWO_SECONDS =
      new Measure(
          "bestTwoSecondsSlapsPerS",
          Quality.SPEED,
          "best two seconds",
          "slaps/s",
          "The highest rate that was held for about two seconds.",
          "largest (j−i)/(t_j−t_i), t_j the last slap up to t_i + 2 s and at least 1.5 s after t_i",
          Limit.OWN_CHOICE,
          Form.HUNDREDTHS,
          Better.HIGHER,
          s -> s.speed().bestTwoSecondsSlapsPerS());

  public static final Measure CLEAN_RATE =
      new Measure(
          "cleanRateSlapsPerS",
          Quality.SPEED,
          "clean rate",
          "slaps/s",
          "The rate times the share of clean attempts: speed that was also accurate.",
          "rate × clean share/100",
          Limit.OWN_CHOICE,
          Form.HUNDREDTHS,
          Better.HIGHER,
          s -> s.speed().cleanRateSlapsPerS());

  public static final Measure CLEAN_SHARE =
      new Measure(
          "cleanSharePct",
          Quality.ACCURACY,
          "clean share",
          "%",
          "Of all attempts, doubles and missed turns too, how many had no fault.",
          "100·clean/all, with Wilson's 95 % interval if slaps were independent",
          "interval: Wilson 1927",
          Form.WHOLE,
          Better.HIGHER,
          s -> s.accuracy().cleanSharePct(),
          s -> s.accuracy().cleanShareRangePct());

  public static final Measure DOUBLES =
      new Measure(
          "doubles",
          Quality.ACCURACY,
          "doubles",
          "",
          "How many second contacts came without a turn between.",
          "count of double marks",
          Limit.OWN_CHOICE,
          Form.COUNT,
          Better.LOWER,
          s -> (double) s.accuracy().doubles());

  public static final Measure STEADY_CV =
      new Measure(
          "steadyCvPct",
          Quality.RHYTHM,
          "steady CV",
          "%",
          "How uneven the slaps were once slowing down and a steady lean to one turn are taken out;"
              + " some unevenness is normal.",
          "100·residual SD/mean d, from least squares of d on interval midpoint and turn class"
              + " (palm→back +½, back→palm −½), divisor n−3, or n−2 without the turn term;"
              + " interval CV·√(ν/χ²), ν that divisor",
          Limit.OWN_CHOICE,
          Form.TENTHS,
          Better.LOWER,
          s -> s.rhythm().steadyCvPct(),
          s -> s.rhythm().steadyCvRangePct());

  public static final Measure INTERVAL_CV =
      new Measure(
          "intervalCvPct",
          Quality.RHYTHM,
          "interval CV",
          "%",
          "How much the times between slaps differ, slowing down and lean included.",
          "100·SD(n−1)/mean of d",
          "the coefficient of variation is the usual figure of tapping studies (Saito and Maruyama"
              + " 2008)",
          Form.TENTHS,
          Better.LOWER,
          s -> s.rhythm().intervalCvPct());

  public static final Measure TURN_BIAS =
      new Measure(
          "turnBiasPct",
          Quality.RHYTHM,
          "turn bias",
          "%",
          "How much longer the turn from palm to back takes than the turn from back to palm.",
          "100·(mean palm→back − mean back→palm)/mean d",
          "that the two turns differ in healthy adults: Noro et al. 1993; the formula is Palmturn's"
              + " choice",
          Form.SIGNED_TENTHS,
          Better.ZERO,
          s -> s.rhythm().turnBiasPct());

  public static final Measure SAME_TURN_CV =
      new Measure(
          "sameTurnCvPct",
          Quality.RHYTHM,
          "same-turn CV",
          "%",
          "How much the times of turns in the same direction differ.",
          "100·√(Σ(n_c−1)s_c²/Σ(n_c−1))/mean d over the two turn classes",
          Limit.OWN_CHOICE,
          Form.TENTHS,
          Better.LOWER,
          s -> s.rhythm().sameTurnCvPct());

  public static final Measure NPVI =
      new Measure(
          "npvi",
          Quality.RHYTHM,
          "nPVI",
          "",
          "How much each time between slaps differs from the next one; a steady lean to one turn"
              + " raises it.",
          "100/(m−1) Σ|d_k−d_{k+1}|/((d_k+d_{k+1})/2) over neighbouring intervals",
          "Grabe and Low 2002",
          Form.TENTHS,
          Better.LOWER,
          s -> s.rhythm().npvi());

  public static final Measure TIMING_FLOOR =
      new Measure(
          "timingFloorPct",
          Quality.RHYTHM,
          "timing floor",
          "%",
          "The unevenness that marks this coarse would give a perfectly even hand.",
          "100·s/mean d, s² the mean over intervals of the two marks' variances summed: r²/12 by"
              + " picture (r the distance to the frame before), SD² by sound",
          "the variance of a uniform distribution; checked by simulation",
          Form.TENTHS,
          Better.LOWER,
          s -> s.rhythm().timingFloorPct());

  public static final Measure PAUSES =
      new Measure(
          "pauses",
          Quality.RHYTHM,
          "pauses",
          "",
          "How many times the hand stopped: a gap over 2.2 times the usual one, or marked so.",
          "count of intervals over 2.2 × median, or with the middle of a pause span inside",
          Limit.OWN_CHOICE,
          Form.COUNT,
          Better.LOWER,
          s -> (double) s.rhythm().pauses());

  public static final Measure SLOW_DOWN =
      new Measure(
          "slowDownPctPerS",
          Quality.ENDURANCE,
          "slow-down",
          "%/s",
          "By how many per cent the time between slaps grew each second; below 0 the hand sped up.",
          "100·(e^b−1), b the least-squares slope of ln d on interval midpoint, with t-interval",
          Limit.OWN_CHOICE,
          Form.SIGNED_TENTHS,
          Better.LOWER,
          s -> s.endurance().slowDownPctPerS(),
          s -> s.endurance().slowDownRangePctPerS());

  public static final Measure LAST_OVER_FIRST =
      new Measure(
          "lastOverFirstThird",
          Quality.ENDURANCE,
          "last third/first third",
          "",
          "The rate in the last third of the time over the rate in the first; 1 is no change.",
          "count/Σd of the intervals with midpoint in the last third, over the same in the first",
          Limit.OWN_CHOICE,
          Form.HUNDREDTHS,
          Better.HIGHER,
          s -> s.endurance().lastOverFirstThird());

  public static final Measure LATE_FAULTS =
      new Measure(
          "lateFaultsPct",
          Quality.ENDURANCE,
          "late faults",
          "points",
          "How much larger the share of faulty attempts was in the second half than in the first.",
          "100·(faulty/all in the second half − faulty/all in the first), halves by time",
          Limit.OWN_CHOICE,
          Form.SIGNED_WHOLE,
          Better.LOWER,
          s -> s.endurance().lateFaultsPct());

  public static final Measure ELBOW_MAX =
      new Measure(
          "elbowMaxCm",
          Quality.DRIFT,
          "elbow drift, largest",
          "cm",
          "How far the elbow went from its place at most, as seen in the picture.",
          "largest distance in the picture plane",
          Limit.OWN_CHOICE,
          Form.TENTHS,
          Better.LOWER,
          s -> s.drift().elbowMaxCm());

  public static final Measure ELBOW_P95 =
      new Measure(
          "elbowP95Cm",
          Quality.DRIFT,
          "elbow drift, 95th percentile",
          "cm",
          "The distance from its place that the elbow stayed under in 95 of 100 frames.",
          "95th percentile of the distance",
          "percentile: Hyndman and Fan 1996, type 7",
          Form.TENTHS,
          Better.LOWER,
          s -> s.drift().elbowP95Cm());

  public static final Measure ELBOW_OVER =
      new Measure(
          "elbowOverLimitPct",
          Quality.DRIFT,
          "elbow drift, time over the limit",
          "%",
          "For how much of the time the elbow was farther from its place than the limit.",
          "100·time over the limit/time tracked",
          Limit.OWN_CHOICE,
          Form.WHOLE,
          Better.LOWER,
          s -> s.drift().elbowOverLimitPct());

  /** All of them. */
  public static final List<Measure> ALL =
      List.of(
          SLAPS,
          RATE,
          CYCLE_RATE,
          TEN_CYCLES,
          BEST_TWO_SECONDS,
          CLEAN_RATE,
          CLEAN_SHARE,
          DOUBLES,
          STEADY_CV,
          INTERVAL_CV,
          TURN_BIAS,
          SAME_TURN_CV,
          NPVI,
          TIMING_FLOOR,
          PAUSES,
          SLOW_DOWN,
          LAST_OVER_FIRST,
          LATE_FAULTS,
          ELBOW_MAX,
          ELBOW_P95,
          ELBOW_OVER);

  private static final Map<Quality, Measure> HEADLINES =
      Map.of(
          Quality.SPEED, RATE,
          Quality.ACCURACY, CLEAN_SHARE,
          Quality.RHYTHM, STEADY_CV,
          Quality.ENDURANCE, SLOW_DOWN,
          Quality.DRIFT, ELBOW_MAX);

  /** Returns the measure that limits, verdicts and comparisons of a quality use. */
  public static Measure headline(Quality quality) {
    Measure measure = HEADLINES.get(quality);
    if (measure == null) {
      throw new IllegalArgumentException("no headline measure for " + quality.code());
    }
    return measure;
  }
}
