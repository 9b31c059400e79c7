package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.HandSurvey.Hands;

/**
 * Tracks the moving hand from frame to frame by its landmarks, and samples the target hand where it
 * is not occluded. The target's place distinguishes the two: a hand detected at the target is not
 * the moving one, however high its presence.
 */
public final class HandFollower {
  /** Least presence: below it the network more likely sees no hand than one. */
  private static final double LEAST_PRESENCE = 0.5;

  /** Presence below which the hand is also detected anew. */
  private static final double SURE_PRESENCE = 0.8;

  /** Least score of a detected palm; low, since the landmarks judge it again. */
  private static final double LEAST_SCORE = 0.3;

  /**
   * Two detections are one hand within this distance, in palm lengths, and this angle, in radians.
   */
  private static final double SAME_PALMS = 0.5;

  private static final double SAME_TURN = 0.6;

  /** The moving hand keeps its direction to within this, radians. */
  private static final double MOST_TURN = 1.2;

  /** The moving hand stays this near to the target, in palm lengths. */
  private static final double FARTHEST_PALMS = 2.5;

  /** The target is looked at only while the moving hand is this far, in palm lengths. */
  private static final double UNCOVERED_PALMS = 0.9;

  /** Interval of target samples, in uncovered frames: the target hardly moves. */
  private static final int TARGET_EVERY = 4;

  private final Networks networks;
  private final Hands hands;
  private final List<TimedHand> moving = new ArrayList<>();
  private final List<TimedHand> target = new ArrayList<>();
  private @Nullable HandMarks before;
  private @Nullable HandMarks targetBefore;
  private int frames;

  /**
   * A hand in a frame.
   *
   * @param timeS the frame's time, seconds
   * @param marks on the stage
   */
  public record TimedHand(double timeS, HandMarks marks) {}

  /**
   * @param networks stay the caller's
   * @param hands what the survey found
   */
  HandFollower(Networks networks, Hands hands) {
    this.networks = networks;
    this.hands = hands;
  }

  /**
   * Looks at the next frame.
   *
   * @param timeS its time, seconds
   * @param picture blue, green, red
   * @param stage from the picture to the stage
   */
  void follow(double timeS, Mat picture, Registration stage) {
    HandMarks found = null;
    HandMarks last = before;
    if (last != null) {
      found = better(null, around(picture, last), stage);
    }
    if (found == null || found.presence() < SURE_PRESENCE) {
      for (PalmDetection palm : networks.palms(picture, LEAST_SCORE)) {
        found = better(found, refined(networks, picture, Square.of(palm)), stage);
      }
    }
    before = found;
    HandMarks placed = found == null ? null : stage.of(found);
    if (placed != null) {
      moving.add(new TimedHand(timeS, placed));
    }
    boolean covered = placed != null && hands.target().palmsTo(placed) < UNCOVERED_PALMS;
    if (!covered && frames++ % TARGET_EVERY == 0) {
      target(timeS, picture, stage);
    }
  }

  private void target(double timeS, Mat picture, Registration stage) {
    HandMarks last = targetBefore;
    if (last == null) {
      for (PalmDetection palm : networks.palms(picture, LEAST_SCORE)) {
        HandMarks seen = refined(networks, picture, Square.of(palm));
        if (seen != null && same(stage.of(seen), hands.target())) {
          last = seen;
        }
      }
    }
    HandMarks seen = last == null ? null : around(picture, last);
    boolean good =
        seen != null && seen.presence() > SURE_PRESENCE && same(stage.of(seen), hands.target());
    targetBefore = good ? seen : null;
    if (good && seen != null) {
      target.add(new TimedHand(timeS, stage.of(seen)));
    }
  }

  private @Nullable HandMarks around(Mat picture, HandMarks last) {
    Square where = Square.around(last);
    return where.usable() ? networks.hand(picture, where) : null;
  }

  private @Nullable HandMarks better(
      @Nullable HandMarks one, @Nullable HandMarks other, Registration stage) {
    if (other == null || !isMoving(stage.of(other))) {
      return one;
    }
    return one == null || other.presence() > one.presence() ? other : one;
  }

  private boolean isMoving(HandMarks marks) {
    HandMarks still = hands.target();
    return marks.presence() > LEAST_PRESENCE
        && HandMarks.angle(marks.direction(), hands.direction()) < MOST_TURN
        && marks.palmLength() > 0.3 * still.palmLength()
        && marks.palmLength() < 2 * still.palmLength()
        && still.palmsTo(marks) < FARTHEST_PALMS
        && !same(marks, still);
  }

  /** Returns whether two hands agree in place and direction. */
  static boolean same(HandMarks one, HandMarks other) {
    return Math.min(one.palmsTo(other), other.palmsTo(one)) < SAME_PALMS
        && one.angleTo(other) < SAME_TURN;
  }

  /**
   * Returns the hand in a square, refined by a second run on a square about the first result; null
   * if there is none.
   */
  static @Nullable HandMarks refined(Networks networks, Mat picture, Square where) {
    if (!where.usable()) {
      return null;
    }
    Square again = Square.around(networks.hand(picture, where));
    return again.usable() ? networks.hand(picture, again) : null;
  }

  /** Returns where the moving hand was seen, in order. */
  List<TimedHand> moving() {
    return List.copyOf(moving);
  }

  /** Returns where the target hand was seen uncovered, in order. */
  List<TimedHand> target() {
    return List.copyOf(target);
  }
}
