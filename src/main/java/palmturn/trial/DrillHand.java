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

  /** Returns the hand alone. */
  public static DrillHand of(Hand hand) {
    return hand == Hand.LEFT ? LEFT : RIGHT;
  }

  @Override
  public String code() {
    return code;
  }
}
