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
final class Rows {
  /** Above this rate 30 frames a second are too few for a goal. */
  private static final double FASTEST_AT_30 = 6;

  private final List<Measured> clips;
  private final List<Row> rows = new ArrayList<>();

  private Rows(List<Measured> clips) {
    this.clips = clips;
  }

  static List<Row> of(List<Measured> clips) {
    Rows rows = new Rows(clips);
    rows.slaps();
    rows.errors();
    rows.sidesAndDoubles("", "by all sources", Measured::all);
    rows.sidesAndDoubles("Picture", "by picture only", Measured::picture);
    rows.elbow();
    rows.noTrial();
    rows.times();
    return List.copyOf(rows.rows);
  }

  private void slaps() {
    Predicate<Measured> heard = clip -> clip.hasTrial() && clip.hasSound();
    Predicate<Measured> fast = clip -> clip.hasTrial() && clip.fast();
    Predicate<Measured> slow = clip -> clip.hasTrial() && clip.slow();
    Predicate<Measured> upTo6 =
        clip -> clip.trueRateSlapsPerS() != null && clip.trueRateSlapsPerS() <= FASTEST_AT_30;
    f(
        "soundF",
        "slaps with sound, 60 frames/s, F at ±25 ms",
        heard.and(fast),
        Measured::all,
        0.995);
    error(
        "soundErrorMs",
        "slaps with sound, 60 frames/s, mean absolute error after the clip's offset",
        heard.and(fast),
        Measured::all,
        Comparison::errorSumOffS,
        1.0);
    f(
        "sound30F",
        "slaps with sound, 30 frames/s, F at ±40 ms",
        heard.and(slow),
        Measured::all,
        null);
    f(
        "picture60F",
        "slaps by picture only, 60 frames/s, F at ±25 ms",
        fast,
        Measured::picture,
        0.98);
    error(
        "picture60ErrorMs",
        "slaps by picture only, 60 frames/s, mean absolute error",
        fast,
        Measured::picture,
        Comparison::errorSumS,
        4.0);
    f(
        "picture30F",
        "slaps by picture only, 30 frames/s, up to 6 slaps/s, F at ±40 ms",
        slow.and(upTo6),
        Measured::picture,
        0.95);
    error(
        "picture30ErrorMs",
        "slaps by picture only, 30 frames/s, up to 6 slaps/s, mean absolute error",
        slow.and(upTo6),
        Measured::picture,
        Comparison::errorSumS,
        8.0);
    f(
        "picture30FastF",
        "slaps by picture only, 30 frames/s, over 6 slaps/s, F at ±40 ms",
        slow.and(upTo6.negate()),
        Measured::picture,
        null);
  }

  private void errors() {
    Predicate<Measured> any = Measured::hasTrial;
    every("rate", "rate", "%", any, clip -> clip.all().rateErrorPct());
    every(
        "cv",
        "interval CV with sound",
        "points",
        any.and(Measured::hasSound),
        clip -> clip.all().cvErrorPoints());
    every("frequency", "rotation frequency", "%", any, clip -> clip.all().frequencyErrorPct());
  }

  private void sidesAndDoubles(String id, String how, Function<Measured, Comparison> by) {
    Predicate<Measured> any = Measured::hasTrial;
    share(
        "sides" + id + "Pct",
        "side of matched slaps right, one labelled, " + how,
        "%",
        any,
        clip -> 100 * by.apply(clip).sidesRight(),
        clip -> by.apply(clip).matched(),
        98.0);
    share(
        "doubles" + id + "Recall",
        "double taps found, " + how,
        "",
        any,
        clip -> by.apply(clip).doublesMatched(),
        clip -> by.apply(clip).doublesTruth(),
        0.95);
    share(
        "doubles" + id + "Precision",
        "double taps reported that are ones, " + how,
        "",
        any,
        clip -> by.apply(clip).doublesMatched(),
        clip -> by.apply(clip).doublesFound(),
        0.95);
  }

  private void elbow() {
    share(
        "elbowWithinPct",
        "elbow drift right to 0.3 cm, place and scale given, frames",
        "%",
        clip -> clip.elbow() != null,
        clip -> clip.elbow() == null ? 0 : 100 * clip.elbow().within(),
        clip -> clip.elbow() == null ? 0 : clip.elbow().frames(),
        95.0);
    List<Measured> unfollowed =
        clips.stream().filter(clip -> clip.hasTrial() && clip.elbow() == null).toList();
    rows.add(
        new Row(
            "elbowNotFollowed",
            "clips with a trial in which no elbow was followed",
            "clips",
            (int) clips.stream().filter(Measured::hasTrial).count(),
            (double) unfollowed.size(),
            null,
            false,
            unfollowed.isEmpty() ? null : unfollowed.get(0).name(),
            null));
  }

  private void noTrial() {
    List<Measured> none = clips.stream().filter(clip -> !clip.hasTrial()).toList();
    ToIntFunction<Measured> most = clip -> Math.max(clip.all().found(), clip.picture().found());
    Measured worst = none.stream().max(Comparator.comparingInt(most)).orElse(null);
    rows.add(
        new Row(
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

  private void times() {
    Predicate<Measured> hd = clip -> clip.fast() && Math.min(clip.width(), clip.height()) == 720;
    Predicate<Measured> any = clip -> true;
    String length = "time of an estimate/length of the clip, ";
    String decoding = "time of an estimate/time of decoding alone, ";
    ratio("timeOfLength720p60", length + "720p60, clips", hd, Measured::durationS, 0.5);
    ratio("timeOfDecoding720p60", decoding + "720p60, clips", hd, Measured::decodeS, 2.0);
    ratio("timeOfLength", length + "all sizes, clips", any, Measured::durationS, null);
    ratio("timeOfDecoding", decoding + "all sizes, clips", any, Measured::decodeS, null);
  }

  private void f(
      String id,
      String what,
      Predicate<Measured> which,
      Function<Measured, Comparison> by,
      @Nullable Double goal) {
    pooled(
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

  private void error(
      String id,
      String what,
      Predicate<Measured> which,
      Function<Measured, Comparison> by,
      ToDoubleFunction<Comparison> sumS,
      double goalMs) {
    pooled(
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

  private void share(
      String id,
      String what,
      String unit,
      Predicate<Measured> which,
      ToDoubleFunction<Measured> part,
      ToIntFunction<Measured> whole,
      double goal) {
    pooled(id, what, unit, which, part, whole::applyAsInt, goal, true, whole);
  }

  private void ratio(
      String id,
      String what,
      Predicate<Measured> which,
      ToDoubleFunction<Measured> whole,
      @Nullable Double goal) {
    pooled(id, what, "", which, Measured::estimateS, whole, goal, false, clip -> 1);
  }

  private void pooled(
      String id,
      String what,
      String unit,
      Predicate<Measured> which,
      ToDoubleFunction<Measured> part,
      ToDoubleFunction<Measured> whole,
      @Nullable Double goal,
      boolean higherIsBetter,
      ToIntFunction<Measured> counted) {
    List<Pooled.Part> parts =
        clips.stream()
            .filter(which)
            .map(
                clip ->
                    new Pooled.Part(
                        clip.name(),
                        part.applyAsDouble(clip),
                        whole.applyAsDouble(clip),
                        counted.applyAsInt(clip)))
            .toList();
    rows.add(Pooled.row(id, what, unit, parts, goal, higherIsBetter));
  }

  /** A figure that every clip must reach: the median, the largest, and how many have none. */
  private void every(
      String id,
      String what,
      String unit,
      Predicate<Measured> which,
      Function<Measured, @Nullable Double> error) {
    List<ErrorRows.Error> errors =
        clips.stream()
            .filter(which)
            .map(clip -> new ErrorRows.Error(clip.name(), error.apply(clip)))
            .toList();
    rows.addAll(ErrorRows.of(id, what, unit, errors, 0.5));
  }
}
