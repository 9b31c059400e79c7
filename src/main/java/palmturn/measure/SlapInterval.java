package palmturn.measure;

import org.jspecify.annotations.Nullable;

/**
 * The time from one slap to the next, in real seconds.
 *
 * @param midS its midpoint, counted from the first slap of the window
 * @param durationS how long it lasted
 * @param turn which way the hand turned, null if that can't be told
 * @param use whether rhythm and slow-down rest on it
 * @param varianceS2 variance of the two marks' times together, seconds squared; null for a typed
 *     mark, whose variance is not known
 */
public record SlapInterval(
    double midS, double durationS, @Nullable TurnClass turn, Use use, @Nullable Double varianceS2) {

  /** Whether rhythm and slow-down rest on an interval. */
  public enum Use {
    /** They do. */
    RHYTHM,
    /** Over 2.2 times the median, or marked by the reader: a rest, not rhythm. */
    PAUSE,
    /** A turn without contact lies between, so that two turns share the interval. */
    MISSED_TURN,
    /** Its ends have no time from the source that the others are timed by. */
    OTHER_SOURCE
  }
}
