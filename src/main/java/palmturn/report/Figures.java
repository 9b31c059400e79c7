package palmturn.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;

/** Numbers as the report prints them: − for minus, and a space that does not break before %. */
final class Figures {
  /** Stands where a figure can't be told. */
  static final String NONE = "–";

  private static final String NO_BREAK = "\u00A0";

  private Figures() {}

  /** Returns a number rounded to a count of decimals, half away from zero. */
  static String number(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.toPlainString().replace('-', '−');
  }

  /** Returns a number with its sign, + too, and without one where it rounds to nothing. */
  static String signed(double value, int decimals) {
    String number = number(value, decimals);
    boolean zero = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).signum() == 0;
    return zero || number.startsWith("−") ? number : "+" + number;
  }

  /** Returns a limit or margin without needless decimals. */
  static String plain(double value) {
    BigDecimal stripped = BigDecimal.valueOf(value).stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped)
        .toPlainString()
        .replace('-', '−');
  }

  /** Returns a figure of a measure, without unit. */
  static String of(Measure measure, double value) {
    return directed(measure) ? signed(value, decimals(measure)) : number(value, decimals(measure));
  }

  /** Returns both ends of an interval of a measure, without unit. */
  static String of(Measure measure, Range range) {
    return of(measure, range.low()) + " to " + of(measure, range.high());
  }

  /** Returns a text with its unit; empty units add nothing. */
  static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + NO_BREAK + unit;
  }

  /** Returns a percentage. */
  static String pct(double value, int decimals) {
    return withUnit(number(value, decimals), "%");
  }

  /** Returns a count with its noun, in the singular for one. */
  static String count(long count, String one, String more) {
    return count + NO_BREAK + (count == 1 ? one : more);
  }

  /** Returns a count as words: once, twice, 3 times. */
  static String times(long count) {
    return count == 1 ? "once" : count == 2 ? "twice" : count + NO_BREAK + "times";
  }

  static int decimals(Measure measure) {
    if (measure.id().equals(Measures.CLEAN_SHARE.id())
        || measure.id().equals(Measures.LATE_FAULTS.id())
        || measure.id().equals(Measures.ELBOW_OVER.id())) {
      return 0;
    }
    return switch (measure.unit()) {
      case "%", "%/s", "cm" -> 1;
      case "" -> measure.id().equals(Measures.NPVI.id()) ? 1 : count(measure) ? 0 : 2;
      default -> 2;
    };
  }

  private static boolean count(Measure measure) {
    return measure.id().equals(Measures.SLAPS.id())
        || measure.id().equals(Measures.DOUBLES.id())
        || measure.id().equals(Measures.PAUSES.id());
  }

  private static boolean directed(Measure measure) {
    return measure.id().equals(Measures.SLOW_DOWN.id())
        || measure.id().equals(Measures.TURN_BIAS.id())
        || measure.id().equals(Measures.LATE_FAULTS.id());
  }

  /** Returns the 95 % interval that a trial's figure comes with, null for those without one. */
  static @Nullable Range interval(Measure measure, TrialScore score) {
    if (measure.id().equals(Measures.CLEAN_SHARE.id())) {
      return score.accuracy().cleanShareRangePct();
    }
    if (measure.id().equals(Measures.STEADY_CV.id())) {
      return score.rhythm().steadyCvRangePct();
    }
    return measure.id().equals(Measures.SLOW_DOWN.id())
        ? score.endurance().slowDownRangePctPerS()
        : null;
  }
}
