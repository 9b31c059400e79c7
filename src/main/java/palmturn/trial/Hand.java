package palmturn.trial;

/** The moving hand of a trial, always the athlete's own left or right. */
public enum Hand implements Coded {
  LEFT("left"),
  RIGHT("right");

  private final String code;

  Hand(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }

  /** Returns the other hand. */
  public Hand other() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
