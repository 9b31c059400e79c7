package palmturn.app.tally;

import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;

/**
 * A figure on a gauge between two ends, all in the figure's unit.
 *
 * @param from value at the left end
 * @param to value at the right end
 * @param value the figure
 * @param interval its 95 % interval, if it has one
 * @param limit the limit, if there is one
 * @param insideBelow whether values under the limit are the good ones
 * @param floor the timing floor; null for none
 * @param other the other hand's figure, if there is one
 * @param otherName which hand that is
 */
public record Gauge(
    double from,
    double to,
    double value,
    @Nullable Range interval,
    @Nullable Double limit,
    boolean insideBelow,
    @Nullable Double floor,
    @Nullable Double other,
    String otherName) {

  /** Returns the place of a value, 0 at the left end to 1 at the right; beyond them, the end. */
  double share(double what) {
    return Math.max(0, Math.min(1, (what - from) / (to - from)));
  }
}
