package palmturn.trial;

/** The moving hand of a trial, always the athlete's own left or right. */
public enum Hand implements Coded {
  LEFT,
  RIGHT;

  /** Returns the other hand. */
  public Hand other() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
