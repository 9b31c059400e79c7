package palmturn.measure;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.measure.SideScore.Verdict;
import palmturn.numbers.Confidence;
import palmturn.numbers.Quantiles;
import palmturn.numbers.Range;
import palmturn.numbers.Stats;
import palmturn.trial.TimedBy;

/** Puts the two hands' trials of one block side by side. */
final class Sides {
  private static final int LEAST_TRIALS = 2;
  private static final int MOST_FURTHER_TRIALS = 20;
  private static final double FLOORS_WITHIN_POINTS = 1;

  private Sides() {}

  /** The qualities that have a margin; the elbow has none. */
  static final List<Quality> COMPARED =
      List.of(Quality.SPEED, Quality.ACCURACY, Quality.RHYTHM, Quality.ENDURANCE);

  static SideScore of(
      String block,
      Quality quality,
      List<TrialScore> rights,
      List<TrialScore> lefts,
      Limits.Margins margins) {
    Measure measure = Measures.headline(quality);
    double[] right = values(measure, rights);
    double[] left = values(measure, lefts);
    Double meanRight = Stats.mean(right);
    Double meanLeft = Stats.mean(left);
    Range range = Confidence.welch(right, left);
    boolean alike = quality != Quality.RHYTHM || sameTiming(rights, lefts);
    if (meanRight == null || meanLeft == null || range == null || !alike) {
      return new SideScore(
          block,
          quality,
          measure,
          meanRight,
          meanLeft,
          null,
          null,
          null,
          null,
          Verdict.CANNOT_TELL,
          null);
    }
    if (quality == Quality.ACCURACY) {
      range = wider(range, pooledShares(rights, lefts));
    }
    double difference = meanRight - meanLeft;
    double middle = (meanRight + meanLeft) / 2;
    double margin = margin(quality, middle, margins);
    Verdict verdict = verdict(measure, range, margin);
    Integer furtherTrials = Integer.valueOf(0);
    if (verdict == Verdict.UNCLEAR) {
      furtherTrials = furtherTrials(right, left, difference, margin);
    }
    return new SideScore(
        block,
        quality,
        measure,
        meanRight,
        meanLeft,
        difference,
        quality != Quality.SPEED || middle == 0 ? null : 100 * difference / middle,
        range,
        margin,
        verdict,
        furtherTrials);
  }

  static double[] values(Measure measure, List<TrialScore> scores) {
    return scores.stream()
        .map(measure::value)
        .filter(Objects::nonNull)
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  private static Verdict verdict(Measure measure, Range range, double margin) {
    if (-margin <= range.low() && range.high() <= margin) {
      return Verdict.BALANCED;
    }
    if (range.contains(0)) {
      return Verdict.UNCLEAR;
    }
    boolean rightIsHigher = range.low() > 0;
    boolean rightIsBetter = rightIsHigher == (measure.better() == Measure.Better.HIGHER);
    return rightIsBetter ? Verdict.WEAKER_LEFT : Verdict.WEAKER_RIGHT;
  }

  private static double margin(Quality quality, double middle, Limits.Margins margins) {
    return switch (quality) {
      case SPEED -> margins.speedPct().value() / 100 * middle;
      case ACCURACY -> margins.cleanSharePoints().value();
      case RHYTHM -> margins.steadyCvPoints().value();
      case ENDURANCE -> margins.slowDownPctPerS().value();
      case DRIFT -> throw new IllegalArgumentException("no margin for " + quality.code());
    };
  }

  /**
   * Rhythm timed by other means, or much more coarsely, differs for that reason alone: it is
   * compared only where all trials have one source and the mean floors lie within a point.
   */
  private static boolean sameTiming(List<TrialScore> rights, List<TrialScore> lefts) {
    Double right = Stats.mean(values(Measures.TIMING_FLOOR, rights));
    Double left = Stats.mean(values(Measures.TIMING_FLOOR, lefts));
    Set<TimedBy> sources = sources(rights);
    sources.addAll(sources(lefts));
    return right != null
        && left != null
        && sources.size() == 1
        && Math.abs(right - left) <= FLOORS_WITHIN_POINTS;
  }

  private static Set<TimedBy> sources(List<TrialScore> scores) {
    return scores.stream()
        .filter(score -> score.rhythm().steadyCvPct() != null)
        .map(score -> score.rhythm().timedBy())
        .filter(Objects::nonNull)
        .collect(Collectors.toSet());
  }

  private static @Nullable Range pooledShares(List<TrialScore> rights, List<TrialScore> lefts) {
    Range range =
        Confidence.newcombe(clean(rights), attempts(rights), clean(lefts), attempts(lefts));
    return range == null ? null : range.times(100);
  }

  private static int clean(List<TrialScore> scores) {
    return scores.stream()
        .map(score -> score.accuracy().clean())
        .filter(Objects::nonNull)
        .mapToInt(Integer::intValue)
        .sum();
  }

  private static int attempts(List<TrialScore> scores) {
    return scores.stream()
        .filter(score -> score.accuracy().clean() != null)
        .mapToInt(score -> score.accuracy().attempts())
        .sum();
  }

  private static Range wider(Range a, @Nullable Range b) {
    return b != null && b.width() > a.width() ? b : a;
  }

  /** The fewest further trials a hand whose expected half-width would settle the verdict. */
  private static @Nullable Integer furtherTrials(
      double[] right, double[] left, double difference, double margin) {
    Double sd = Stats.pooledSd(right, left);
    if (sd == null) {
      return null;
    }
    int have = Math.max(LEAST_TRIALS, Math.min(right.length, left.length));
    double room = Math.max(Math.abs(difference), margin - Math.abs(difference));
    for (int n = 1; n <= MOST_FURTHER_TRIALS; n++) {
      double each = have + n;
      double half = Quantiles.t(0.975, 2 * each - 2) * sd * Math.sqrt(2 / each);
      if (half < room) {
        return n;
      }
    }
    return null;
  }
}
