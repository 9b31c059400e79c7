package palmturn.estimate.hands;

import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.HandFollower.TimedHand;
import palmturn.numbers.Robust;

/**
 * The moving hand's length in the picture, unforeshortened. Pointing towards the camera or away
 * from it, and bending the fingers, only shorten a hand, so that a high quantile is used.
 */
public final class HandLength {
  private static final int[] WRIST_TO_TIP = {HandMarks.WRIST, HandMarks.MIDDLE, 10, 11, 12};

  /** Blurred hands look short; only clear ones are measured. */
  private static final double SURE_PRESENCE = 0.9;

  /** Quantile of the lengths: above it are frames with gross landmark errors. */
  private static final double LONG = 0.95;

  /** Fewer frames give no steady quantile. */
  private static final int FEWEST = 20;

  private HandLength() {}

  /**
   * Returns the length from the wrist over the middle finger's joints to its tip, pixels of the
   * stage; null where too few frames show the hand clearly.
   */
  public static @Nullable Double px(HandPaths paths) {
    double[] lengths =
        paths.moving().stream()
            .map(TimedHand::marks)
            .filter(marks -> marks.presence() >= SURE_PRESENCE)
            .mapToDouble(HandLength::along)
            .toArray();
    return lengths.length < FEWEST ? null : Robust.quantile(lengths, LONG);
  }

  private static double along(HandMarks marks) {
    double length = 0;
    for (int i = 1; i < WRIST_TO_TIP.length; i++) {
      int from = WRIST_TO_TIP[i - 1];
      int to = WRIST_TO_TIP[i];
      length += Math.hypot(marks.x()[to] - marks.x()[from], marks.y()[to] - marks.y()[from]);
    }
    return length;
  }
}
