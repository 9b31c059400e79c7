package palmturn.trial;

/** The hand or hands that a drill trains. */
public enum DrillHand implements Coded {
  LEFT("left"),
  RIGHT("right"),
  BOTH("both"),
  NONE("none");

  private final String code;

  DrillHand(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}
