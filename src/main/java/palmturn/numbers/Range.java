package palmturn.numbers;

/**
 * A confidence interval, 95 % unless stated otherwise.
 *
 * @param low lower end
 * @param high upper end, not below {@code low}
 */
public record Range(double low, double high) {
  public Range {
    if (!(high >= low)) {
      throw new IllegalArgumentException("a range must not run backwards: " + low + " to " + high);
    }
  }

  /** Returns the distance between the ends. */
  public double width() {
    return high - low;
  }

  /** Returns whether a value lies inside, both ends included. */
  public boolean contains(double value) {
    return low <= value && value <= high;
  }

  /** Returns both ends times a factor of 0 or more. */
  public Range times(double factor) {
    return new Range(low * factor, high * factor);
  }
}
