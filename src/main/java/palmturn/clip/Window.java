package palmturn.clip;

import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * The frames worth having at hand around the one that is shown.
 *
 * @param at the frame that is shown
 * @param direction of travel: 1 or −1
 * @param size frames in the clip
 * @param most frames at hand at the most
 */
record Window(int at, int direction, int size, int most) {
  /** So many frames in the direction of travel come before all others. */
  private static final int NEXT = 12;

  /** A little less than all, so that a frame kept beside these pushes none of them out. */
  private static final double USED = 0.9;

  /** Going back costs most, since decoding starts at a key frame each time. */
  private static final double BEHIND_GOING_BACK = 0.7;

  /** Frames to be decoded in order, both ends with them. */
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

  /** Returns how far off a frame is: 1 at the window's edge. */
  double farness(int index) {
    return index < at ? (at - index) / (behind() + 0.5) : (index - at) / (ahead() + 0.5);
  }

  /**
   * Returns what to decode next; null while enough is at hand. A side is filled up once a good part
   * of it is missing, so that going back doesn't decode from a key frame for each frame.
   */
  @Nullable Run missing(IntPredicate atHand) {
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

  /** Returns the part of a run that lies in this window, null if none does. */
  @Nullable Run inside(@Nullable Run run) {
    if (run == null) {
      return null;
    }
    Run part = new Run(Math.max(run.from(), first()), Math.min(run.to(), last()));
    return part.from() > part.to() ? null : part;
  }
}
