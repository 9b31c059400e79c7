package palmturn.estimate.elbow;

import java.util.Arrays;
import java.util.function.Predicate;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Picture;
import palmturn.estimate.image.Similarity;
import palmturn.trial.Point;

/**
 * The elbow from one frame to the next. The patch around it is laid on each frame, and where it
 * then lies must be able to be the elbow: of the arm's colour, of about its size, and not farther
 * than an elbow comes. A smooth arm is much alike all along, so that a patch whose elbow is covered
 * would lie well on what is left of the arm.
 */
final class ElbowFollower {
  /** An arm of which less of the disc has its colour is followed by the whole disc instead. */
  private static final double MASK_SHARE = 0.25;

  /** Where less of the patch has the arm's colour, something covers it. */
  private static final double COLOURED_SHARE = 0.75;

  /**
   * The same for an elbow that was lost: stricter, since the rest of the arm is nearly as like it.
   */
  private static final double COLOURED_SHARE_AGAIN = 0.93;

  /** As small as an elbow looks whose forearm points at the camera, and as large. */
  private static final double SMALLEST = 0.6;

  /** Size of an elbow that has come towards the camera, against the reference frame. */
  private static final double LARGEST = 1.5;

  /** With a radius of 4.2 cm, 1.5 m/s and a centimetre: no elbow held at the side is faster. */
  private static final double RADII_PER_S = 36;

  /** Room for the error of the place itself, radii of the disc: about a centimetre. */
  private static final double STEP_RADII = 0.25;

  /** A lost elbow is searched for so many radii around. */
  private static final double REACH_RADII = 2;

  private final Point at;
  private final double radiusPx;
  private final ElbowPatch patch;
  private final @Nullable ArmColour colour;
  private Point last;
  private double lastS;

  /**
   * Takes the elbow from the reference frame.
   *
   * @param gray the same frame
   * @param at the elbow in it, pixels
   * @param radiusPx of the disc that is followed
   */
  ElbowFollower(Picture first, Mat gray, Point at, double radiusPx) {
    this.at = at;
    this.radiusPx = radiusPx;
    boolean[] arm = ArmMask.around(first, at, radiusPx);
    boolean plain = count(arm) >= MASK_SHARE * Math.PI * radiusPx * radiusPx;
    if (!plain) {
      Arrays.fill(arm, true);
    }
    patch = new ElbowPatch(gray, at, radiusPx, arm);
    colour = plain ? ArmColour.at(first, at) : null;
    last = at;
    lastS = first.timeS();
  }

  private static int count(boolean[] mask) {
    int count = 0;
    for (boolean inside : mask) {
      count += inside ? 1 : 0;
    }
    return count;
  }

  /** Returns whether there is enough to follow. */
  boolean usable() {
    return patch.usable();
  }

  /** Returns whether the skin is so smooth that its path may slide along the arm. */
  boolean maySlide() {
    return patch.maySlide();
  }

  /**
   * Returns how the skin around the elbow goes from the reference frame to this one, in pixels of
   * the picture; null where the elbow is lost.
   *
   * @param gray the same frame
   * @param camera from the reference frame to this one, as far as that is known
   */
  @Nullable Similarity follow(Picture picture, Mat gray, Similarity camera) {
    double reachPx = REACH_RADII * radiusPx;
    double stepPx = radiusPx * (STEP_RADII + RADII_PER_S * (picture.timeS() - lastS));
    Similarity arm =
        patch.follow(gray, fits(picture, camera, COLOURED_SHARE, Math.min(stepPx, reachPx)));
    if (arm == null) {
      arm = patch.find(gray, reachPx, fits(picture, camera, COLOURED_SHARE_AGAIN, reachPx));
    }
    if (arm == null) {
      return null;
    }
    last = place(arm, camera);
    lastS = picture.timeS();
    return new Similarity(
        arm.a(),
        arm.b(),
        at.x() + arm.dx() - arm.a() * at.x() + arm.b() * at.y(),
        at.y() + arm.dy() - arm.b() * at.x() - arm.a() * at.y());
  }

  private Predicate<Similarity> fits(
      Picture picture, Similarity camera, double colouredShare, double mostPx) {
    return arm -> {
      double size = Math.hypot(arm.a(), arm.b());
      Point now = place(arm, camera);
      return size > SMALLEST
          && size < LARGEST
          && Math.hypot(now.x() - last.x(), now.y() - last.y()) <= mostPx
          && coloured(picture, arm) >= colouredShare;
    };
  }

  /** Returns where the elbow is without the camera's motion, pixels. */
  private Point place(Similarity arm, Similarity camera) {
    return camera.applyInverse(new Point(at.x() + arm.dx(), at.y() + arm.dy()));
  }

  private double coloured(Picture picture, Similarity arm) {
    return colour == null
        ? 1
        : patch.share(arm, (x, y) -> colour.like(picture.argb()[y * picture.width() + x]));
  }
}
