package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/** Pools measured clips into the figures to reach. */
final class EstimateFigures {
  /** The fastest rate, slaps/s, for which 30 frames a second are enough for a goal. */
  private static final double FASTEST_AT_30 = 6;

  private final List<ClipMeasurement> clips;
  private final List<BenchFigure> figures = new ArrayList<>();

  private EstimateFigures(List<ClipMeasurement> clips) {
    this.clips = clips;
  }

  static List<BenchFigure> of(List<ClipMeasurement> clips) {
    EstimateFigures rows = new EstimateFigures(clips);
    rows.addSlaps();
    rows.addMeasureErrors();
    rows.addSidesAndDoubles("", "by all sources", ClipMeasurement::allSources);
    rows.addSidesAndDoubles("Picture", "by picture only", ClipMeasurement::pictureOnly);
    rows.addElbow();
    rows.addNoTrial();
    rows.addTimes();
    return List.copyOf(rows.figures);
  }

  private void addSlaps() {
    Predicate<ClipMeasurement> heard = clip -> clip.hasTrial() && clip.hasSound();
    Predicate<ClipMeasurement> fast = clip -> clip.hasTrial() && clip.isFast();
    Predicate<ClipMeasurement> slow = clip -> clip.hasTrial() && clip.isSlow();
    Predicate<ClipMeasurement> upTo6 =
        clip -> clip.trueRateSlapsPerS() != null && clip.trueRateSlapsPerS() <= FASTEST_AT_30;
    addF(
        "soundF",
        "slaps with sound, 60 frames/s, F at ±25 ms",
        heard.and(fast),
        ClipMeasurement::allSources,
        0.995);
    addTimeError(
        "soundErrorMs",
        "slaps with sound, 60 frames/s, mean absolute error after the clip's offset",
        heard.and(fast),
        ClipMeasurement::allSources,
        EstimateComparison::errorSumAfterOffsetS,
        1.0);
    addF(
        "sound30F",
        "slaps with sound, 30 frames/s, F at ±40 ms",
        heard.and(slow),
        ClipMeasurement::allSources,
        null);
    addF(
        "picture60F",
        "slaps by picture only, 60 frames/s, F at ±25 ms",
        fast,
        ClipMeasurement::pictureOnly,
        0.98);
    addTimeError(
        "picture60ErrorMs",
        "slaps by picture only, 60 frames/s, mean absolute error",
        fast,
        ClipMeasurement::pictureOnly,
        EstimateComparison::errorSumS,
        4.0);
    addF(
        "picture30F",
        "slaps by picture only, 30 frames/s, up to 6 slaps/s, F at ±40 ms",
        slow.and(upTo6),
        ClipMeasurement::pictureOnly,
        0.95);
    addTimeError(
        "picture30ErrorMs",
        "slaps by picture only, 30 frames/s, up to 6 slaps/s, mean absolute error",
        slow.and(upTo6),
        ClipMeasurement::pictureOnly,
        EstimateComparison::errorSumS,
        8.0);
    addF(
        "picture30FastF",
        "slaps by picture only, 30 frames/s, over 6 slaps/s, F at ±40 ms",
        slow.and(upTo6.negate()),
        ClipMeasurement::pictureOnly,
        null);
  }

  private void addMeasureErrors() {
    Predicate<ClipMeasurement> any = ClipMeasurement::hasTrial;
    addErrors("rate", "rate", "%", any, clip -> clip.allSources().rateErrorPct());
    addErrors(
        "cv",
        "interval CV with sound",
        "points",
        any.and(ClipMeasurement::hasSound),
        clip -> clip.allSources().cvErrorPoints());
    addErrors(
        "frequency", "rotation frequency", "%", any, clip -> clip.allSources().frequencyErrorPct());
  }

  private void addSidesAndDoubles(
      String id, String how, Function<ClipMeasurement, EstimateComparison> by) {
    Predicate<ClipMeasurement> any = ClipMeasurement::hasTrial;
    addShare(
        "sides" + id + "Pct",
        "side of matched slaps right, one labelled, " + how,
        "%",
        any,
        clip -> 100 * by.apply(clip).sidesRight(),
        clip -> by.apply(clip).matched(),
        98.0);
    addShare(
        "doubles" + id + "Recall",
        "double taps found, " + how,
        "",
        any,
        clip -> by.apply(clip).doublesMatched(),
        clip -> by.apply(clip).trueDoubles(),
        0.95);
    addShare(
        "doubles" + id + "Precision",
        "double taps reported that are ones, " + how,
        "",
        any,
        clip -> by.apply(clip).doublesMatched(),
        clip -> by.apply(clip).doublesFound(),
        0.95);
  }

  private void addElbow() {
    addShare(
        "elbowWithinPct",
        "elbow drift right to 0.3 cm, place and scale given, frames",
        "%",
        clip -> clip.elbow() != null,
        clip -> clip.elbow() == null ? 0 : 100 * clip.elbow().within(),
        clip -> clip.elbow() == null ? 0 : clip.elbow().frames(),
        95.0);
    List<ClipMeasurement> unfollowed =
        clips.stream().filter(clip -> clip.hasTrial() && clip.elbow() == null).toList();
    figures.add(
        new BenchFigure(
            "elbowNotFollowed",
            "clips with a trial in which no elbow was followed",
            "clips",
            (int) clips.stream().filter(ClipMeasurement::hasTrial).count(),
            (double) unfollowed.size(),
            null,
            false,
            unfollowed.isEmpty() ? null : unfollowed.get(0).name(),
            null));
  }

  private void addNoTrial() {
    List<ClipMeasurement> none = clips.stream().filter(clip -> !clip.hasTrial()).toList();
    ToIntFunction<ClipMeasurement> most =
        clip -> Math.max(clip.allSources().found(), clip.pictureOnly().found());
    ClipMeasurement worst = none.stream().max(Comparator.comparingInt(most)).orElse(null);
    figures.add(
        new BenchFigure(
            "noTrialSlaps",
            "slaps reported in clips without a trial, clips",
            "slaps",
            none.size(),
            none.isEmpty() ? null : (double) none.stream().mapToInt(most).sum(),
            0.0,
            false,
            worst == null ? null : worst.name(),
            worst == null ? null : (double) most.applyAsInt(worst)));
  }

  private void addTimes() {
    Predicate<ClipMeasurement> hd =
        clip -> clip.isFast() && Math.min(clip.width(), clip.height()) == 720;
    Predicate<ClipMeasurement> any = clip -> true;
    String length = "time of an estimate/length of the clip, ";
    String decoding = "time of an estimate/time of decoding alone, ";
    addTimeRatio(
        "timeOfLength720p60", length + "720p60, clips", hd, ClipMeasurement::durationS, 0.5);
    addTimeRatio(
        "timeOfDecoding720p60", decoding + "720p60, clips", hd, ClipMeasurement::decodeS, 2.0);
    addTimeRatio(
        "timeOfLength", length + "all sizes, clips", any, ClipMeasurement::durationS, null);
    addTimeRatio(
        "timeOfDecoding", decoding + "all sizes, clips", any, ClipMeasurement::decodeS, null);
  }

  private void addF(
      String id,
      String what,
      Predicate<ClipMeasurement> which,
      Function<ClipMeasurement, EstimateComparison> by,
      @Nullable Double goal) {
    addPooled(
        id,
        what,
        "",
        which,
        clip -> 2.0 * by.apply(clip).matched(),
        clip -> by.apply(clip).truth() + by.apply(clip).found(),
        goal,
        true,
        clip -> by.apply(clip).truth());
  }

  private void addTimeError(
      String id,
      String what,
      Predicate<ClipMeasurement> which,
      Function<ClipMeasurement, EstimateComparison> by,
      ToDoubleFunction<EstimateComparison> sumS,
      double goalMs) {
    addPooled(
        id,
        what,
        "ms",
        which,
        clip -> 1000 * sumS.applyAsDouble(by.apply(clip)),
        clip -> by.apply(clip).matched(),
        goalMs,
        false,
        clip -> by.apply(clip).matched());
  }

  private void addShare(
      String id,
      String what,
      String unit,
      Predicate<ClipMeasurement> which,
      ToDoubleFunction<ClipMeasurement> part,
      ToIntFunction<ClipMeasurement> whole,
      double goal) {
    addPooled(id, what, unit, which, part, whole::applyAsInt, goal, true, whole);
  }

  private void addTimeRatio(
      String id,
      String what,
      Predicate<ClipMeasurement> which,
      ToDoubleFunction<ClipMeasurement> whole,
      @Nullable Double goal) {
    addPooled(id, what, "", which, ClipMeasurement::estimateS, whole, goal, false, clip -> 1);
  }

  private void addPooled(
      String id,
      String what,
      String unit,
      Predicate<ClipMeasurement> which,
      ToDoubleFunction<ClipMeasurement> part,
      ToDoubleFunction<ClipMeasurement> whole,
      @Nullable Double goal,
      boolean higherIsBetter,
      ToIntFunction<ClipMeasurement> counted) {
    List<PooledRatio.ClipRatio> parts =
        clips.stream()
            .filter(which)
            .map(
                clip ->
                    new PooledRatio.ClipRatio(
                        clip.name(),
                        part.applyAsDouble(clip),
                        whole.applyAsDouble(clip),
                        counted.applyAsInt(clip)))
            .toList();
    figures.add(PooledRatio.figure(id, what, unit, parts, goal, higherIsBetter));
  }

  /** A figure that every clip must reach: the median, the largest, and how many have none. */
  private void addErrors(
      String id,
      String what,
      String unit,
      Predicate<ClipMeasurement> which,
      Function<ClipMeasurement, @Nullable Double> error) {
    List<ErrorFigures.ClipError> errors =
        clips.stream()
            .filter(which)
            .map(clip -> new ErrorFigures.ClipError(clip.name(), error.apply(clip)))
            .toList();
    figures.addAll(ErrorFigures.of(id, what, unit, errors, 0.5));
  }
}
