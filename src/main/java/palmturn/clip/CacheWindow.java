package palmturn.clip;

import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * The range of frames to cache around the one that is shown.
 *
 * @param at the frame that is shown
 * @param direction of travel: 1 or −1
 * @param size frames in the clip
 * @param most frames that fit the cache
 */
record CacheWindow(int at, int direction, int size, int most) {
  /** Frames in the direction of travel that come before all others. */
  private static final int NEXT = 12;

  /** Share of the cache, so that one frame more evicts none of these. */
  private static final double USED = 0.9;

  /**
   * Share behind when going back, which costs most, since decoding starts at a key frame each time.
   */
  private static final double BEHIND_GOING_BACK = 0.7;

  /** A run of frames to decode in order, both ends included. */
  record Run(int from, int to) {}

  private int behind() {
    double share = direction < 0 ? BEHIND_GOING_BACK : 0.5;
    return Math.min(at, (int) (USED * share * (most - 1)));
  }

  private int ahead() {
    double share = direction < 0 ? 1 - BEHIND_GOING_BACK : 0.5;
    return Math.min(size - 1 - at, (int) (USED * share * (most - 1)));
  }

  int first() {
    return at - behind();
  }

  int last() {
    return at + ahead();
  }

  /** Returns a frame's distance relative to the window: 1 at its edge. */
  double relativeDistance(int index) {
    return index < at ? (at - index) / (behind() + 0.5) : (index - at) / (ahead() + 0.5);
  }

  /**
   * Returns the next run to decode; null while enough is cached. A side is refilled once a good
   * part of it is missing, so that going back doesn't decode from a key frame for each frame.
   */
  @Nullable Run nextRun(IntPredicate atHand) {
    int behind = 0;
    while (behind < behind() && atHand.test(at - behind - 1)) {
      behind++;
    }
    int ahead = 0;
    while (ahead < ahead() && atHand.test(at + ahead + 1)) {
      ahead++;
    }
    int next = Math.min(NEXT, ahead());
    if (direction > 0 && ahead < next) {
      return new Run(at + ahead + 1, at + next);
    }
    if (behind < (2 * behind() + 2) / 3) {
      return new Run(first(), at - behind - 1);
    }
    return ahead < (ahead() + 1) / 2 ? new Run(at + ahead + 1, last()) : null;
  }

  /** Returns the part of a run inside this window; null if none is. */
  @Nullable Run intersect(@Nullable Run run) {
    if (run == null) {
      return null;
    }
    Run part = new Run(Math.max(run.from(), first()), Math.min(run.to(), last()));
    return part.from() > part.to() ? null : part;
  }
}
