package palmturn.trial;

/** The hand or hands that a drill trains. */
public enum DrillHand implements Coded {
  LEFT,
  RIGHT,
  BOTH,
  NONE;

  /** Returns the hand alone. */
  public static DrillHand of(Hand hand) {
    return hand == Hand.LEFT ? LEFT : RIGHT;
  }
}
