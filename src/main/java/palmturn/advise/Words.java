package palmturn.advise;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Quality;
import palmturn.numbers.Range;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;

/** Figures and names as an advice says them. */
final class Words {
  private Words() {}

  static String number(double value, int decimals) {
    return BigDecimal.valueOf(value)
        .setScale(decimals, RoundingMode.HALF_UP)
        .toPlainString()
        .replace('-', '−');
  }

  /** Returns a limit without needless decimals. */
  static String plain(double value) {
    BigDecimal stripped = BigDecimal.valueOf(value).stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped)
        .toPlainString()
        .replace('-', '−');
  }

  /** Returns a figure of a quality's headline measure with its unit. */
  static String figure(Quality quality, double value) {
    return switch (quality) {
      case SPEED -> number(value, 2) + " slaps/s";
      case ACCURACY -> number(value, 1) + " % clean";
      case RHYTHM -> "steady CV " + number(value, 1) + " %";
      case ENDURANCE -> "slow-down " + number(value, 1) + " %/s";
      case DRIFT -> number(value, 1) + " cm";
    };
  }

  static int decimals(Quality quality) {
    return switch (quality) {
      case SPEED -> 2;
      case ACCURACY, RHYTHM, ENDURANCE, DRIFT -> 1;
    };
  }

  /** Returns an interval in brackets, as " (60 to 71)"; nothing where there is none. */
  static String range(@Nullable Range range, int decimals) {
    return range == null
        ? ""
        : " (%s to %s)".formatted(number(range.low(), decimals), number(range.high(), decimals));
  }

  static String hand(Hand hand) {
    return "the " + hand.code() + " hand";
  }

  static DrillHand trained(Hand hand) {
    return hand == Hand.LEFT ? DrillHand.LEFT : DrillHand.RIGHT;
  }

  static String capital(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  /** Returns a list as a phrase: a, b and c. */
  static String list(List<String> parts) {
    if (parts.size() < 2) {
      return String.join("", parts);
    }
    return String.join(", ", parts.subList(0, parts.size() - 1))
        + " and "
        + parts.get(parts.size() - 1);
  }
}
