package palmturn.wording;

import org.jspecify.annotations.Nullable;
import palmturn.measure.Decimals;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;

/** Figures as text: those that can't be told, with units, as percentages and counts. */
public final class Figures {
  /** Stands where a figure can't be told. */
  public static final String NONE = "–";

  private static final String NO_BREAK = "\u00A0";
  private static final double MS_PER_S = 1000;

  private Figures() {}

  /** Returns a number with a fixed count of decimals. */
  public static String number(@Nullable Double value, int decimals) {
    return value == null ? NONE : Decimals.fixed(value, decimals);
  }

  /** Returns both ends of an interval. */
  public static String range(@Nullable Range range, int decimals) {
    return range == null
        ? NONE
        : number(range.low(), decimals) + " to " + number(range.high(), decimals);
  }

  /** Returns a figure of a measure, without its unit. */
  public static String of(Measure measure, @Nullable Double value) {
    return value == null ? NONE : measure.text(value);
  }

  /** Returns the interval of a figure of a measure, without its unit. */
  public static String of(Measure measure, @Nullable Range range) {
    return range == null ? NONE : measure.text(range);
  }

  /** Returns a figure of a trial, without its unit; a CV near the timing floor has "≤ ". */
  public static String of(Measure measure, TrialScore score) {
    Double value = measure.value(score);
    return value == null
        ? NONE
        : (atMost(measure, score) ? "≤" + NO_BREAK : "") + measure.text(value);
  }

  /** Returns whether a figure of a trial is an upper bound: a CV too near the timing floor. */
  public static boolean atMost(Measure measure, TrialScore score) {
    Double value = measure.value(score);
    boolean cv =
        measure.equals(Measures.STEADY_CV)
            || measure.equals(Measures.INTERVAL_CV)
            || measure.equals(Measures.SAME_TURN_CV);
    return cv && value != null && !score.rhythm().resolves(value);
  }

  /** Returns a difference of a quality's headline figures, with its sign and without unit. */
  public static String difference(Quality quality, @Nullable Double value) {
    return value == null ? NONE : Measures.headline(quality).form().difference(value);
  }

  /** Returns the interval of a difference, with signs and without unit. */
  public static String difference(Quality quality, @Nullable Range range) {
    return range == null ? NONE : Measures.headline(quality).form().difference(range);
  }

  /** Returns a difference and its interval in brackets. */
  public static String difference(Quality quality, @Nullable Double value, @Nullable Range range) {
    return value == null || range == null
        ? NONE
        : "%s (%s)".formatted(difference(quality, value), difference(quality, range));
  }

  /** Returns a text with its unit, on one line; an empty unit adds nothing. */
  public static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + NO_BREAK + unit;
  }

  /** Returns a percentage. */
  public static String percent(double value, int decimals) {
    return withUnit(number(value, decimals), "%");
  }

  /** Returns seconds as milliseconds with one decimal, without unit. */
  public static String ms(@Nullable Double seconds) {
    return number(seconds == null ? null : MS_PER_S * seconds, 1);
  }

  /** Returns a moment or a length in seconds. */
  public static String seconds(double seconds, int decimals) {
    return withUnit(number(seconds, decimals), "s");
  }

  /** Returns a count with its noun, whose plural adds an s. */
  public static String count(long count, String noun) {
    return withUnit(String.valueOf(count), count == 1 ? noun : noun + "s");
  }

  /** Returns how often: once, twice, 3 times. */
  public static String times(long count) {
    return switch ((int) Math.min(count, 3)) {
      case 1 -> "once";
      case 2 -> "twice";
      default -> withUnit(String.valueOf(count), "times");
    };
  }

  /** Returns how many slaps and doubles a trial has. */
  public static String slaps(long slaps, long doubles) {
    return count(slaps, "slap") + (doubles == 0 ? "" : ", " + count(doubles, "double"));
  }
}
