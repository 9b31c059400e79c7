package palmturn.estimate.elbow;

import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.LandmarkPass;
import palmturn.estimate.image.Footage;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.motion.MovingRegions;
import palmturn.estimate.request.Request;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Point;

/**
 * Locates the moving arm's elbow in the first frame: at the place that was pointed at, else by the
 * motion, near the body's landmark.
 */
final class ElbowLocator {
  /**
   * Accuracy of the body's landmarks, palm lengths, by drawn clips of two makers. Within it motion
   * is more exact; farther off other skin-coloured regions mislead it.
   */
  private static final double WITHIN_PALMS = 0.8;

  private ElbowLocator() {}

  /**
   * Returns the place, null where unknown.
   *
   * @param shape null where the shape of the hands was not seen
   */
  static @Nullable Point of(
      Request request, Motion motion, LandmarkPass.@Nullable Landmarks shape) {
    Point given = request.hints().elbow();
    if (given != null) {
      return given;
    }
    Point seen = shape == null ? null : shape.elbow();
    if (shape == null || seen == null) {
      return byMotion(request.hand(), motion, null);
    }
    double within = WITHIN_PALMS * shape.paths().rest().palmLength();
    Point moved = byMotion(request.hand(), motion, new ElbowFinder.SearchArea(seen, within));
    return moved == null ? seen : moved;
  }

  private static @Nullable Point byMotion(
      Hand hand, Motion motion, ElbowFinder.@Nullable SearchArea about) {
    Footage footage = motion.contacts().motion().footage();
    Point place =
        ElbowFinder.find(
            MovingRegions.motionEnergy(footage),
            footage.width(),
            footage.pxPerCell(),
            footage.pictures().get(0),
            motion.contacts().motion().blob(),
            about);
    if (place == null) {
      return null;
    }
    // Filmed from the front, the right elbow is left of the hands in the picture.
    Estimate.Region region = motion.region();
    boolean leftOfHands = place.x() < region.x() + region.width() / 2;
    return leftOfHands == (hand == Hand.RIGHT) ? place : null;
  }
}
