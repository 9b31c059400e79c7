package palmturn.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Decimal numbers as text, rounded half away from zero, with − for minus. */
public final class Decimals {
  private Decimals() {}

  /** Returns a number with a fixed count of decimals; one that rounds to zero has no sign. */
  public static String fixed(double value, int decimals) {
    return text(rounded(value, decimals));
  }

  /** Returns a number with a fixed count of decimals and its sign, + too, except for zero. */
  public static String signed(double value, int decimals) {
    BigDecimal rounded = rounded(value, decimals);
    return rounded.signum() > 0 ? "+" + text(rounded) : text(rounded);
  }

  /** Returns a number with no more decimals than it has, such as a limit. */
  public static String plain(double value) {
    BigDecimal stripped = BigDecimal.valueOf(value).stripTrailingZeros();
    return text(stripped.scale() < 0 ? stripped.setScale(0) : stripped);
  }

  private static BigDecimal rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
  }

  private static String text(BigDecimal number) {
    return number.toPlainString().replace('-', '−');
  }
}
