package palmturn.estimate.elbow;

import palmturn.trial.Point;

/**
 * A position in the upright full-size picture of a reference frame, with its confidence.
 *
 * @param at the position, pixels
 * @param confidence 0 to 1; 1 for a place that somebody gave
 */
public record ElbowPosition(Point at, double confidence) {
  /** Returns a position that somebody pointed at. */
  public static ElbowPosition given(Point at) {
    return new ElbowPosition(at, 1);
  }
}
