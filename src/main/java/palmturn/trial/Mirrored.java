package palmturn.trial;

/** The mirroring of a file's picture, as some front cameras do it. */
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
