package palmturn.measure;

/**
 * A number to judge by, with where it comes from.
 *
 * @param value in the unit its name in {@link Limits} says
 * @param source a citation, or "Palmturn's choice, no source"
 */
public record Limit(double value, String source) {
  /** The text in place of a source where there is none. */
  public static final String OWN_CHOICE = "Palmturn's choice, no source";

  public Limit {
    if (!(value >= 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException("a limit must be 0 or more, not " + value);
    }
  }
}
