package palmturn.trial;

/** Whether the file shows the athlete mirrored, as some front cameras do. */
public enum Mirrored implements Coded {
  TRUE("true"),
  FALSE("false"),
  UNKNOWN("unknown");

  private final String code;

  Mirrored(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}
