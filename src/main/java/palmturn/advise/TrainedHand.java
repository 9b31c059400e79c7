package palmturn.advise;

import palmturn.trial.Coded;
import palmturn.trial.DrillHand;

/**
 * The hand or hands that a library drill trains; only a one-handed drill leaves the other hand as
 * its control.
 */
public enum TrainedHand implements Coded {
  /** The hand that is to be trained. */
  ONE,
  BOTH,
  /** Eyes, head or breath. */
  NONE;

  /** Returns the hand that the drill trains, given the advised one. */
  public DrillHand forAdvice(DrillHand advised) {
    return switch (this) {
      case ONE -> advised;
      case BOTH -> DrillHand.BOTH;
      case NONE -> DrillHand.NONE;
    };
  }
}
