package palmturn.estimate.elbow;

import java.util.Arrays;
import java.util.function.Predicate;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Picture;
import palmturn.estimate.image.Similarity;
import palmturn.trial.Point;

/**
 * Tracks the elbow from frame to frame. The patch around it is registered to each frame, and the
 * result must be plausible: of the arm's colour, of about its size, and within an elbow's reach. A
 * smooth arm looks alike along its length, so that the patch of an occluded elbow would match the
 * visible rest of the arm.
 */
final class ElbowFollower {
  /** Least share of the disc in the arm's colour; with less, the whole disc is tracked. */
  private static final double MASK_SHARE = 0.25;

  /** Least share of the patch in the arm's colour; with less, it is occluded. */
  private static final double COLOURED_SHARE = 0.75;

  /**
   * The same for an elbow that was lost: stricter, since the rest of the arm looks nearly the same.
   */
  private static final double COLOURED_SHARE_AGAIN = 0.93;

  /** Least relative size, of an elbow whose forearm points at the camera. */
  private static final double SMALLEST = 0.6;

  /** Largest relative size, of an elbow that has come towards the camera. */
  private static final double LARGEST = 1.5;

  /** Largest speed, radii of the disc a second: 1.5 m/s, more than an elbow held at the side. */
  private static final double RADII_PER_S = 36;

  /** Allowance for the position's own error, radii of the disc: about a centimetre. */
  private static final double STEP_RADII = 0.25;

  /** Search radius for a lost elbow, radii of the disc. */
  private static final double REACH_RADII = 2;

  private final Point at;
  private final double radiusPx;
  private final ElbowPatch patch;
  private final @Nullable ArmColour colour;
  private Point last;
  private double lastS;

  /**
   * Starts from the elbow in the reference frame.
   *
   * @param gray the same frame
   * @param at the elbow in it, pixels
   * @param radiusPx of the tracked disc
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

  /** Returns whether there is enough texture to track. */
  boolean usable() {
    return patch.usable();
  }

  /** Returns whether the skin is so smooth that its path may slide along the arm. */
  boolean maySlide() {
    return patch.maySlide();
  }

  /**
   * Returns the motion of the skin around the elbow from the reference frame to this one, in pixels
   * of the picture; null where the elbow is lost.
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

  /** Returns the elbow's position less the camera's motion, pixels. */
  private Point place(Similarity arm, Similarity camera) {
    return camera.applyInverse(new Point(at.x() + arm.dx(), at.y() + arm.dy()));
  }

  private double coloured(Picture picture, Similarity arm) {
    return colour == null
        ? 1
        : patch.share(arm, (x, y) -> colour.like(picture.argb()[y * picture.width() + x]));
  }
}
