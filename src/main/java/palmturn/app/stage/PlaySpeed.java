package palmturn.app.stage;

/** A play speed of a clip. */
public enum PlaySpeed {
  SIXTEENTH(1.0 / 16, "1/16"),
  EIGHTH(1.0 / 8, "1/8"),
  QUARTER(1.0 / 4, "1/4"),
  HALF(1.0 / 2, "1/2"),
  FULL(1, "1");

  private final double factor;
  private final String words;

  PlaySpeed(double factor, String words) {
    this.factor = factor;
    this.words = words;
  }

  /** Returns the media seconds in one second of the clock. */
  public double factor() {
    return factor;
  }

  /** Returns how it is written. */
  public String words() {
    return words;
  }

  /** Returns twice as fast, up to 1. */
  public PlaySpeed faster() {
    return values()[Math.min(ordinal() + 1, values().length - 1)];
  }

  /** Returns half as fast, down to 1/16. */
  public PlaySpeed slower() {
    return values()[Math.max(ordinal() - 1, 0)];
  }
}
