package palmturn.advise;

import palmturn.trial.Coded;
import palmturn.trial.DrillHand;

/** Which hand a drill trains; only a drill of one hand leaves the other as its control. */
public enum Trains implements Coded {
  /** The hand that is to be trained. */
  ONE("one"),
  BOTH("both"),
  /** Eyes, head or breath. */
  NONE("none");

  private final String code;

  Trains(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }

  /** Returns the hand that the drill trains where an advice is for a hand. */
  public DrillHand of(DrillHand advised) {
    return switch (this) {
      case ONE -> advised;
      case BOTH -> DrillHand.BOTH;
      case NONE -> DrillHand.NONE;
    };
  }
}
