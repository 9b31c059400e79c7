package palmturn.estimate;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;

/**
 * Where the moving arm's elbow is in the first frame: where somebody pointed, else where the motion
 * puts it, unless the body's shape puts it elsewhere.
 */
final class ElbowPlace {
  /** Motion puts it more exactly, but where the two are this far apart it is mistaken. */
  private static final double APART_PALMS = 0.8;

  private static final double SHAPE_CONFIDENCE = 0.6;

  private ElbowPlace() {}

  /**
   * Returns the place, null where nothing tells it.
   *
   * @param shape null where the shape of the hands was not seen
   */
  static @Nullable Place of(Request request, Motion motion, ShapePass.@Nullable Seen shape) {
    Point given = request.hints().elbow();
    if (given != null) {
      return Place.given(given);
    }
    Place moved = byMotion(request.hand(), motion);
    Point seen = shape == null ? null : shape.elbow();
    if (shape == null || seen == null) {
      return moved;
    }
    boolean agree =
        moved != null
            && Math.hypot(moved.at().x() - seen.x(), moved.at().y() - seen.y())
                < APART_PALMS * shape.paths().rest().palmLength();
    return agree ? moved : new Place(seen, SHAPE_CONFIDENCE);
  }

  private static @Nullable Place byMotion(Hand hand, Motion motion) {
    Footage footage = motion.contacts().motion().footage();
    Place place =
        ElbowFinder.find(
            Regions.liveliness(footage),
            footage.width(),
            footage.pxPerCell(),
            footage.pictures().get(0),
            motion.contacts().motion().blob());
    if (place == null) {
      return null;
    }
    // Filmed from the front, the right elbow is left of the hands in the picture.
    Estimate.Region region = motion.region();
    boolean leftOfHands = place.at().x() < region.x() + region.width() / 2;
    return leftOfHands == (hand == Hand.RIGHT) ? place : null;
  }
}
