package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;

/**
 * The elbows by body landmarks, where head and legs may be out of the picture: the network runs on
 * several squares of a body's size about the target hand, and their median counts.
 */
final class ElbowLandmarks {
  /** Heights of the squares' centres over the target hand, in its palm lengths. */
  private static final double[] UP = {-0.7, 0.7, 2.1, 3.5};

  /** Sides of the squares, in palm lengths: a body with some room about it. */
  private static final double[] SIDES = {22.5, 27.5, 32.5};

  /** Under these the network doubts that there is a body, or that the elbow is in view. */
  private static final double LEAST_PRESENCE = 0.8;

  private static final double LEAST_VISIBILITY = 0.8;

  /** Half of the twelve squares of one frame. */
  private static final int FEWEST = 6;

  /** Largest median distance of the looks from their common position, palm lengths. */
  private static final double MOST_SPREAD = 0.7;

  private final Networks networks;
  private final HandMarks target;
  private final List<BodyMarks> bodies = new ArrayList<>();

  /**
   * @param networks stay the caller's
   * @param target the target hand on the stage
   */
  ElbowLandmarks(Networks networks, HandMarks target) {
    this.networks = networks;
    this.target = target;
  }

  /**
   * Looks at a frame from before the first slap, or soon after.
   *
   * @param picture blue, green, red
   * @param stage from the picture to the stage
   */
  void look(Mat picture, Registration stage) {
    squares(picture, stage).stream()
        .filter(body -> body.presence() > LEAST_PRESENCE)
        .forEach(bodies::add);
  }

  /**
   * Returns an elbow's position by each square of a frame.
   *
   * @param timeS the frame's, real seconds
   * @param picture blue, green, red
   * @param stage from the picture to the stage
   * @param right whether it is the right one
   */
  ElbowCandidates look(double timeS, Mat picture, Registration stage, boolean right) {
    int elbow = BodyMarks.elbow(right);
    List<BodyMarks> seen = squares(picture, stage);
    return new ElbowCandidates(
        timeS,
        seen.stream().mapToDouble(body -> body.x()[elbow]).toArray(),
        seen.stream().mapToDouble(body -> body.y()[elbow]).toArray(),
        seen.stream()
            .mapToDouble(body -> body.presence() > LEAST_PRESENCE ? body.visibility()[elbow] : 0)
            .toArray());
  }

  private List<BodyMarks> squares(Mat picture, Registration stage) {
    HandMarks here = stage.back(target);
    double palm = here.palmLength();
    List<BodyMarks> seen = new ArrayList<>();
    for (double up : UP) {
      for (double side : SIDES) {
        Square square = new Square(here.palmX(), here.palmY() - up * palm, side * palm, 0);
        seen.add(networks.body(picture, square).on(stage));
      }
    }
    return seen;
  }

  /**
   * Returns an elbow's place on the stage, x and y; null where the looks do not agree.
   *
   * @param right whether it is the right one
   */
  double @Nullable [] place(boolean right) {
    int elbow = BodyMarks.elbow(right);
    List<BodyMarks> seen =
        bodies.stream().filter(body -> body.visibility()[elbow] > LEAST_VISIBILITY).toList();
    if (seen.size() < FEWEST) {
      return null;
    }
    double x = Robust.median(seen.stream().mapToDouble(body -> body.x()[elbow]).toArray());
    double y = Robust.median(seen.stream().mapToDouble(body -> body.y()[elbow]).toArray());
    double spread =
        Robust.median(
            seen.stream()
                .mapToDouble(body -> Math.hypot(body.x()[elbow] - x, body.y()[elbow] - y))
                .toArray());
    return spread > MOST_SPREAD * target.palmLength() ? null : new double[] {x, y};
  }
}
