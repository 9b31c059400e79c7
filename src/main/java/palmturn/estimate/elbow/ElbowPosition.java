package palmturn.estimate.elbow;

import palmturn.trial.Point;

/**
 * Where something is in the upright full-size picture of a reference frame, and how sure that is.
 *
 * @param at its middle
 * @param confidence 0 to 1; 1 for a place that somebody gave
 */
public record ElbowPosition(Point at, double confidence) {
  /** A place that somebody pointed at. */
  public static ElbowPosition given(Point at) {
    return new ElbowPosition(at, 1);
  }
}
