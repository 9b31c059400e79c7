package palmturn.trial;

import java.util.List;
import java.util.Locale;

/**
 * A quantity over time.
 *
 * @param timesS media seconds, rising
 * @param values one for each time, in the unit that the holder names
 */
public record Curve(List<Double> timesS, List<Double> values) {
  /** No samples. */
  public static final Curve EMPTY = new Curve(List.of(), List.of());

  public Curve {
    timesS = NumberList.copyOf(timesS);
    values = NumberList.copyOf(values);
    if (timesS.size() != values.size()) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%d times but %d values", timesS.size(), values.size()));
    }
  }

  /** Returns a curve through points. */
  public static Curve of(double[] timesS, double[] values) {
    return new Curve(NumberList.of(timesS), NumberList.of(values));
  }

  /** Returns whether there are no samples. */
  public boolean isEmpty() {
    return timesS.isEmpty();
  }
}
