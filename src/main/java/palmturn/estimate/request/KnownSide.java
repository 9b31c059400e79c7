package palmturn.estimate.request;

import palmturn.trial.Side;

/**
 * A slap whose side somebody has seen; it fixes the polarity of all.
 *
 * @param timeS about when it was, media seconds on the picture's clock
 * @param side palm or back
 */
public record KnownSide(double timeS, Side side) {
  public KnownSide {
    if (side == Side.UNKNOWN) {
      throw new IllegalArgumentException("a known side is palm or back");
    }
  }
}
