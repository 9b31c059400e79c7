package palmturn.app.look;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** Numbers in text fields, typed with a decimal point or comma. */
public final class NumberField {
  private NumberField() {}

  /** Returns a number of 0 or more; null for anything else, an empty field among it. */
  public static @Nullable Double parse(String typed) {
    String said = typed.strip().replace(',', '.');
    return said.matches("\\d{1,6}(\\.\\d*)?|\\.\\d+") ? Double.valueOf(said) : null;
  }

  /** Returns a number as it stands in a field, without needless decimals. */
  public static String format(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
