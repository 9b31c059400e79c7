package palmturn.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.Quantiles;
import palmturn.numbers.Range;
import palmturn.numbers.Stats;
import palmturn.trial.TimedBy;

/**
 * A weighted sum of the means of groups of trials, by a quality's headline measure: a difference of
 * two groups, or a difference of two differences.
 *
 * @param value null where it can't be told
 * @param range95 its 95 % interval
 * @param margin a value too small to matter
 * @param outcome what may be said of it
 * @param furtherTrials further trials a group, 1 to 20, that should settle an unclear outcome; 0
 *     where it is settled; null for more than 20 or where it can't be told
 */
record Contrast(
    @Nullable Double value,
    @Nullable Range range95,
    @Nullable Double margin,
    Outcome outcome,
    @Nullable Integer furtherTrials) {

  static final Contrast CANNOT_TELL = new Contrast(null, null, null, Outcome.CANNOT_TELL, null);
  private static final int LEAST_TRIALS = 2;
  private static final int MOST_FURTHER_TRIALS = 20;
  private static final double FLOORS_WITHIN_POINTS = 1;

  /** The qualities that have a margin; the elbow has none. */
  static final List<Quality> COMPARED =
      List.of(Quality.SPEED, Quality.ACCURACY, Quality.RHYTHM, Quality.ENDURANCE);

  /** The possible verdicts on a contrast. */
  enum Outcome {
    /** The interval lies inside the margin. */
    SMALL,
    /** The value is on the measure's better side of 0. */
    BETTER,
    /** The value is on the measure's worse side of 0. */
    WORSE,
    UNCLEAR,
    CANNOT_TELL
  }

  /** Trials and the weight of their mean. */
  record Group(int weight, List<TrialScore> trials) {}

  static Contrast of(Quality quality, Limits.Margins margins, List<Group> groups) {
    return of(
        quality, margins, groups, Confidence.contrast(weights(groups), values(quality, groups)));
  }

  /**
   * Returns a contrast whose interval is known otherwise.
   *
   * @param range its 95 % interval, which that of pooled shares may still widen; null where it
   *     can't be told
   */
  static Contrast of(
      Quality quality, Limits.Margins margins, List<Group> groups, @Nullable Range range) {
    Measure measure = Measures.headline(quality);
    double[] weights = weights(groups);
    double[][] values = values(quality, groups);
    if (range == null || quality == Quality.RHYTHM && !sameTiming(groups)) {
      return CANNOT_TELL;
    }
    if (quality == Quality.ACCURACY) {
      range = wider(range, pooledShares(weights, groups));
    }
    double value = 0;
    double size = 0;
    double total = 0;
    for (int i = 0; i < weights.length; i++) {
      double mean = Objects.requireNonNull(Stats.mean(values[i]));
      value += weights[i] * mean;
      size += Math.abs(weights[i]);
      total += Math.abs(weights[i]) * mean;
    }
    double margin = margin(quality, total / size, margins);
    Outcome outcome = outcome(measure, range, margin);
    Integer furtherTrials = Integer.valueOf(0);
    if (outcome == Outcome.UNCLEAR) {
      furtherTrials = furtherTrials(values, value, margin);
    }
    return new Contrast(value, range, margin, outcome, furtherTrials);
  }

  private static double[] weights(List<Group> groups) {
    return groups.stream().mapToDouble(Group::weight).toArray();
  }

  private static double[][] values(Quality quality, List<Group> groups) {
    return groups.stream()
        .map(group -> values(Measures.headline(quality), group.trials()))
        .toArray(double[][]::new);
  }

  static double[] values(Measure measure, List<TrialScore> scores) {
    return scores.stream()
        .map(measure::value)
        .filter(Objects::nonNull)
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  /** Returns whose marks the values of a measure come from, each named once. */
  static List<String> readings(Measure measure, List<TrialScore> scores) {
    return scores.stream()
        .filter(score -> measure.value(score) != null)
        .map(TrialScore::reading)
        .distinct()
        .toList();
  }

  private static Outcome outcome(Measure measure, Range range, double margin) {
    if (-margin <= range.low() && range.high() <= margin) {
      return Outcome.SMALL;
    }
    if (range.contains(0)) {
      return Outcome.UNCLEAR;
    }
    boolean higher = range.low() > 0;
    return higher == (measure.better() == Measure.Better.HIGHER) ? Outcome.BETTER : Outcome.WORSE;
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
  private static boolean sameTiming(List<Group> groups) {
    List<Double> floors = new ArrayList<>();
    for (Group group : groups) {
      Double floor = Stats.mean(values(Measures.TIMING_FLOOR, group.trials()));
      if (floor == null) {
        return false;
      }
      floors.add(floor);
    }
    Set<TimedBy> sources =
        groups.stream()
            .flatMap(group -> group.trials().stream())
            .filter(score -> score.rhythm().steadyCvPct() != null)
            .map(score -> score.rhythm().timedBy())
            .filter(Objects::nonNull)
            .collect(Collectors.toSet());
    double[] each = floors.stream().mapToDouble(Double::doubleValue).toArray();
    double most = Objects.requireNonNull(Stats.max(each));
    double least = Objects.requireNonNull(Stats.min(each));
    return sources.size() == 1 && most - least <= FLOORS_WITHIN_POINTS;
  }

  /** By Newcombe's method carried to a weighted sum, which is cited from memory. */
  private static @Nullable Range pooledShares(double[] weights, List<Group> groups) {
    Range range =
        Confidence.shares(
            weights,
            groups.stream().mapToInt(Contrast::clean).toArray(),
            groups.stream().mapToInt(Contrast::attempts).toArray());
    return range == null ? null : range.times(100);
  }

  private static int clean(Group group) {
    return group.trials().stream()
        .map(score -> score.accuracy().clean())
        .filter(Objects::nonNull)
        .mapToInt(Integer::intValue)
        .sum();
  }

  private static int attempts(Group group) {
    return group.trials().stream()
        .filter(score -> score.accuracy().clean() != null)
        .mapToInt(score -> score.accuracy().attempts())
        .sum();
  }

  private static Range wider(Range a, @Nullable Range b) {
    return b != null && b.width() > a.width() ? b : a;
  }

  /** The fewest further trials a group whose expected half-width would settle the outcome. */
  private static @Nullable Integer furtherTrials(double[][] groups, double value, double margin) {
    Double sd = Stats.pooledSd(groups);
    if (sd == null) {
      return null;
    }
    int fewest = Integer.MAX_VALUE;
    for (double[] group : groups) {
      fewest = Math.min(fewest, group.length);
    }
    int have = Math.max(LEAST_TRIALS, fewest);
    double room = Math.max(Math.abs(value), margin - Math.abs(value));
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
