package palmturn.cli;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measure;
import palmturn.measure.Quality;
import palmturn.numbers.Range;

/** Figures as the commands print them: − for minus, – for what can't be told. */
final class FigureText {
  static final String NONE = "–";

  private FigureText() {}

  static String number(@Nullable Double value, int digits) {
    if (value == null) {
      return NONE;
    }
    String text = String.format(Locale.ROOT, "%." + digits + "f", value);
    // What rounds to nothing has no sign.
    return text.replaceFirst("^-(0(\\.0+)?)$", "$1").replace('-', '−');
  }

  /** Returns seconds as milliseconds. */
  static String ms(@Nullable Double seconds) {
    return number(seconds == null ? null : 1000 * seconds, 1);
  }

  /** Returns a measure's name with its unit. */
  static String named(Measure measure) {
    return measure.name() + (measure.unit().isEmpty() ? "" : ", " + measure.unit());
  }

  /** Returns how many digits a quality's headline figure is told with. */
  static int digits(Quality quality) {
    return quality == Quality.SPEED ? 2 : 1;
  }

  static String range(@Nullable Range range, int digits) {
    return range == null
        ? NONE
        : number(range.low(), digits) + " to " + number(range.high(), digits);
  }
}
