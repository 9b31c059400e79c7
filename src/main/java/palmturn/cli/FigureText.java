package palmturn.cli;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

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
}
