package palmturn.measure;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Side;

/** The direction of the turn between two slaps. */
public enum TurnClass {
  PALM_TO_BACK(0.5),
  BACK_TO_PALM(-0.5);

  private final double regressor;

  TurnClass(double regressor) {
    this.regressor = regressor;
  }

  /** Returns the value that stands for the turn in a regression: +½ or −½. */
  double regressor() {
    return regressor;
  }

  /** Returns the turn between two sides, null where the same side came twice or one is unknown. */
  static @Nullable TurnClass between(Side from, Side to) {
    if (from == Side.PALM && to == Side.BACK) {
      return PALM_TO_BACK;
    }
    return from == Side.BACK && to == Side.PALM ? BACK_TO_PALM : null;
  }
}
