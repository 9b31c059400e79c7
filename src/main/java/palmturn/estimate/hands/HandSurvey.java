package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;

/**
 * Looks for hands in a few frames of a trial: the target hand is the one that is always found in
 * the same place, and the moving hand points in another direction.
 */
final class HandSurvey {
  /**
   * Least score of a detected palm, least presence of its landmarks, and that of a hand whose
   * direction counts; set on drawn clips.
   */
  private static final double LEAST_SCORE = 0.5;

  private static final double LEAST_PRESENCE = 0.7;
  private static final double SURE_PRESENCE = 0.9;

  /** The target hand stays within this many palm lengths, and turns by less than this. */
  private static final double SAME_PALMS = 0.12;

  /** Radians. */
  private static final double SAME_TURN = 0.2;

  /** The target is seen in at least this share of the frames, and in at least this many. */
  private static final double LEAST_SHARE = 0.25;

  private static final int FEWEST = 4;

  /** The moving hand is this near to the target, in palm lengths. */
  private static final double NEAR_PALMS = 2.2;

  /** Directions within this angle, radians, are one hand's. */
  private static final double NEAR_TURN = 0.5;

  private final Networks networks;
  private final List<List<HandMarks>> frames = new ArrayList<>();

  /**
   * The two hands of a trial, on the stage: where the first frame's background is.
   *
   * @param target the hand that is slapped
   * @param direction the direction the moving hand mostly points in, radians
   */
  record Hands(HandMarks target, double direction) {}

  /** Starts with the networks, which stay the caller's. */
  HandSurvey(Networks networks) {
    this.networks = networks;
  }

  /**
   * Looks at a frame.
   *
   * @param picture blue, green, red
   * @param stage from the picture to the stage
   */
  void look(Mat picture, Registration stage) {
    List<HandMarks> found = new ArrayList<>();
    for (PalmDetection palm : networks.palms(picture, LEAST_SCORE)) {
      HandMarks marks = HandFollower.refined(networks, picture, Square.of(palm));
      if (marks != null && marks.presence() > LEAST_PRESENCE) {
        found.add(stage.of(marks));
      }
    }
    frames.add(found);
  }

  /** Returns the two hands, null where they were not both seen. */
  @Nullable Hands hands() {
    List<HandMarks> best = List.of();
    for (List<HandMarks> frame : frames) {
      for (HandMarks each : frame) {
        List<HandMarks> same = likeIn(each);
        if (same.size() > best.size()) {
          best = same;
        }
      }
    }
    if (best.size() < Math.max(FEWEST, LEAST_SHARE * frames.size())) {
      return null;
    }
    HandMarks target = HandMarks.median(best);
    Double direction = direction(target);
    return direction == null ? null : new Hands(target, direction);
  }

  /** Returns the marks like these, one of each frame at most. */
  private List<HandMarks> likeIn(HandMarks these) {
    List<HandMarks> same = new ArrayList<>();
    for (List<HandMarks> frame : frames) {
      frame.stream()
          .filter(other -> these.palmsTo(other) < SAME_PALMS && these.angleTo(other) < SAME_TURN)
          .findFirst()
          .ifPresent(same::add);
    }
    return same;
  }

  /**
   * Returns the direction of most other hands near the target, radians; null where there are few.
   */
  private @Nullable Double direction(HandMarks target) {
    List<HandMarks> others =
        frames.stream()
            .flatMap(List::stream)
            .filter(each -> each.presence() > SURE_PRESENCE)
            .filter(each -> !HandFollower.same(each, target))
            .filter(each -> target.palmsTo(each) < NEAR_PALMS)
            .filter(
                each ->
                    each.palmLength() > 0.5 * target.palmLength()
                        && each.palmLength() < 1.6 * target.palmLength())
            .toList();
    List<HandMarks> best = List.of();
    for (HandMarks each : others) {
      List<HandMarks> alike =
          others.stream().filter(other -> each.angleTo(other) < NEAR_TURN).toList();
      if (alike.size() > best.size()) {
        best = alike;
      }
    }
    if (best.size() < FEWEST) {
      return null;
    }
    double right = best.stream().mapToDouble(each -> Math.cos(each.direction())).sum();
    double down = best.stream().mapToDouble(each -> Math.sin(each.direction())).sum();
    return Math.atan2(down, right);
  }
}
