package palmturn.wording;

import java.util.Locale;
import java.util.Map;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;
import palmturn.trial.TimedBy;

/** One plain sentence for each figure of a trial, or why it can't be told. */
public final class MeasureSentences {
  private MeasureSentences() {}

  private static final Map<String, BiFunction<Double, TrialScore, String>> SENTENCES =
      Map.ofEntries(
          Map.entry(
              Measures.SLAPS.id(),
              (v, s) ->
                  v == 0
                      ? "No touch of the target was marked."
                      : "The hand touched the target " + Figures.times(Math.round(v)) + "."),
          Map.entry(
              Measures.RATE.id(),
              (v, s) -> "It made %s slaps a second.".formatted(Measures.RATE.text(v))),
          Map.entry(
              Measures.CYCLE_RATE.id(),
              (v, s) -> "It turned there and back %s times a second.".formatted(number(v, 2))),
          Map.entry(
              Measures.TEN_CYCLES.id(),
              (v, s) ->
                  s.speed().tenCycleExtrapolated()
                      ? "At this rate ten turns there and back would take %s s (extrapolated)."
                          .formatted(number(v, 2))
                      : "Ten turns there and back took %s s.".formatted(number(v, 2))),
          Map.entry(
              Measures.BEST_TWO_SECONDS.id(),
              (v, s) ->
                  "Its fastest two seconds ran at %s slaps a second.".formatted(number(v, 2))),
          Map.entry(
              Measures.CLEAN_RATE.id(),
              (v, s) -> "It made %s clean slaps a second.".formatted(number(v, 2))),
          Map.entry(Measures.CLEAN_SHARE.id(), (v, s) -> clean(s)),
          Map.entry(Measures.DOUBLES.id(), (v, s) -> doubles(Math.round(v))),
          Map.entry(
              Measures.STEADY_CV.id(),
              (v, s) ->
                  "With slow-down and turn bias taken out, intervals varied by %s of their mean%s."
                      .formatted(cv(Measures.STEADY_CV, s, v), floor(v, s))),
          Map.entry(
              Measures.INTERVAL_CV.id(),
              (v, s) ->
                  "With slow-down and turn bias left in, intervals varied by %s of their mean."
                      .formatted(cv(Measures.INTERVAL_CV, s, v))),
          Map.entry(Measures.TURN_BIAS.id(), (v, s) -> bias(v)),
          Map.entry(
              Measures.SAME_TURN_CV.id(),
              (v, s) ->
                  "Turns in the same direction varied by %s."
                      .formatted(cv(Measures.SAME_TURN_CV, s, v))),
          Map.entry(
              Measures.NPVI.id(),
              (v, s) ->
                  "From one interval to the next the time changed by %s on average."
                      .formatted(Figures.percent(v, 1))),
          Map.entry(
              Measures.TIMING_FLOOR.id(),
              (v, s) ->
                  "A perfectly even hand, marked this coarsely, would seem to vary by %s."
                      .formatted(Figures.percent(v, 1))),
          Map.entry(
              Measures.PAUSES.id(),
              (v, s) ->
                  v == 0
                      ? "The hand never paused."
                      : "The hand paused %s.".formatted(Figures.times(Math.round(v)))),
          Map.entry(
              Measures.SLOW_DOWN.id(), (v, s) -> slowDown(v, s.endurance().slowDownRangePctPerS())),
          Map.entry(
              Measures.LAST_OVER_FIRST.id(),
              (v, s) ->
                  "The last third ran at %s times the rate of the first.".formatted(number(v, 2))),
          Map.entry(Measures.LATE_FAULTS.id(), (v, s) -> late(v)),
          Map.entry(
              Measures.ELBOW_MAX.id(),
              (v, s) -> "The elbow left its place by up to %s cm.".formatted(number(v, 1))),
          Map.entry(
              Measures.ELBOW_P95.id(),
              (v, s) ->
                  "For 95 of 100 frames it stayed within %s cm of its place."
                      .formatted(number(v, 1))),
          Map.entry(
              Measures.ELBOW_OVER.id(),
              (v, s) ->
                  "It was past the limit for %s of the time.".formatted(Figures.percent(v, 0))));

  /** Returns the sentence for a figure of a trial. */
  public static String of(Measure measure, TrialScore score) {
    Double value = measure.value(score);
    if (value == null) {
      return "Can’t be told: " + why(measure, score) + ".";
    }
    BiFunction<Double, TrialScore, String> sentence = SENTENCES.get(measure.id());
    return sentence == null ? measure.help() : sentence.apply(value, score);
  }

  /** Returns whether a measure has words of its own. */
  public static boolean knows(Measure measure) {
    return SENTENCES.containsKey(measure.id());
  }

  private static String why(Measure measure, TrialScore score) {
    if (measure.quality() == Quality.DRIFT) {
      return "no elbow was tracked in this clip";
    }
    if (!score.timeRefusedWhy().isEmpty() && measure.quality() != Quality.ACCURACY) {
      return score.timeRefusedWhy();
    }
    boolean needsZones =
        measure.id().equals(Measures.CLEAN_SHARE.id())
            || measure.id().equals(Measures.CLEAN_RATE.id())
            || measure.id().equals(Measures.LATE_FAULTS.id());
    if (needsZones && score.accuracy().clean() == null) {
      return "where the hand touched is unknown for at least one slap";
    }
    if (measure.quality() == Quality.RHYTHM && score.rhythm().timedBy() == TimedBy.TYPED) {
      return "at least one mark still stands where it was typed";
    }
    boolean needsSides =
        measure.id().equals(Measures.TURN_BIAS.id())
            || measure.id().equals(Measures.SAME_TURN_CV.id());
    return needsSides
        ? "the side of a slap is unknown, or there are too few turns"
        : "there are too few slaps";
  }

  private static String clean(TrialScore score) {
    Integer clean = score.accuracy().clean();
    Range range = score.accuracy().cleanShareRangePct();
    String counts =
        String.format(
            Locale.ROOT,
            "%d of %s %s clean",
            clean,
            Figures.count(score.accuracy().attempts(), "attempt"),
            clean != null && clean == 1 ? "was" : "were");
    return range == null
        ? counts + "."
        : counts
            + "; if slaps were independent, the share would lie between %s and %s."
                .formatted(Figures.percent(range.low(), 0), Figures.percent(range.high(), 0));
  }

  private static String doubles(long count) {
    return count == 0
        ? "No repeat contact came without a turn."
        : Figures.count(count, "repeat contact") + " came without a turn between.";
  }

  /** Returns a CV as a share of the mean interval, as an upper bound near the timing floor. */
  private static String cv(Measure measure, TrialScore score, double value) {
    return (Figures.atMost(measure, score) ? "at most " : "")
        + Figures.withUnit(measure.text(value), "%");
  }

  private static String floor(double cvPct, TrialScore score) {
    return score.rhythm().resolves(cvPct) ? "" : ", which is too near the timing floor to say more";
  }

  private static String bias(double value) {
    String size = Figures.percent(Math.abs(value), 1);
    if (size.equals(Figures.percent(0, 1))) {
      return "Both turns took the same time.";
    }
    return value > 0
        ? "Palm to back took longer than back to palm, by %s of an interval.".formatted(size)
        : "Back to palm took longer than palm to back, by %s of an interval.".formatted(size);
  }

  private static String slowDown(double value, @Nullable Range range) {
    String size = Figures.percent(Math.abs(value), 1);
    if (size.equals(Figures.percent(0, 1))) {
      return "The hand kept its pace.";
    }
    String change = "Intervals %s by %s each second".formatted(value > 0 ? "grew" : "shrank", size);
    if (range != null && range.contains(0)) {
      return change + ", which so few slaps can’t tell from no change.";
    }
    return change + (value > 0 ? ": the hand slowed." : ": the hand sped up.");
  }

  private static String late(double value) {
    long points = Math.round(Math.abs(value));
    if (points == 0) {
      return "Faults were as frequent in the second half as in the first.";
    }
    return "Faults were %s frequent in the second half, by %s."
        .formatted(value > 0 ? "more" : "less", Figures.count(points, "point"));
  }

  private static String number(double value, int decimals) {
    return Figures.number(value, decimals);
  }
}
