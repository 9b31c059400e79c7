package palmturn.estimate;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2GRAY;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Picture;
import palmturn.trial.Estimate.ElbowPath;

/**
 * Follows the elbow through a trial: the arm around it, always from the reference frame, less the
 * motion of the camera and the trunk.
 */
final class ElbowTracker {
  static final int LONG_SIDE_PX = 640;

  /** Radius of the disc on the elbow; smaller shows too little, larger takes in the sleeve. */
  private static final double DISC_CM = 4.2;

  /** The same without a scale: in a picture that shows the upper body this is about the same. */
  private static final double DISC_SHARE = 0.05;

  private static final double DISC_FOREARMS = 0.17;

  /** Still points are looked for farther away than this many radii of the disc. */
  private static final double AWAY_RADII = 2.2;

  /**
   * The joint may lie farther from where somebody pointed than the disc reaches, but not by much.
   */
  private static final double JOINT_RADII = 1.5;

  /** An arm of which less of the disc has its colour is followed by the whole disc instead. */
  private static final double MASK_SHARE = 0.25;

  /** What was found: a path, or none and why; and what to say about it. */
  record Followed(@Nullable ElbowPath path, List<String> warnings) {
    Followed {
      warnings = List.copyOf(warnings);
    }

    private static Followed none(String why) {
      return new Followed(null, List.of(why));
    }
  }

  private ElbowTracker() {}

  /**
   * Follows the elbow.
   *
   * @param fromFrame the reference frame, the first of the trial
   * @param toFrame after the last frame
   * @param firstSlapS its place is the median over the 0.3 s before this moment
   * @param elbow where it is in the reference frame
   * @param trunk a place on the trunk in the reference frame; null takes all that stands still
   * @throws ClipException if the file is damaged
   * @throws StoppedException if {@code watch} stops it
   */
  static Followed follow(
      ClipFile clip,
      int fromFrame,
      int toFrame,
      double firstSlapS,
      Place elbow,
      @Nullable Point trunk,
      ScaleOf scale,
      Watch watch)
      throws ClipException {
    int fullWidth = clip.facts().width();
    int fullHeight = clip.facts().height();
    Point at = elbow.at();
    if (!(at.x() >= 0 && at.y() >= 0 && at.x() < fullWidth && at.y() < fullHeight)) {
      return Followed.none(
          "The elbow's place lies outside the picture (%d × %d): the elbow was not followed."
              .formatted(fullWidth, fullHeight));
    }
    if (toFrame <= fromFrame) {
      return Followed.none("There are no frames to follow the elbow in.");
    }
    try (FrameFeed frames = new FrameFeed(clip, fromFrame, toFrame, LONG_SIDE_PX)) {
      Picture first = frames.next();
      if (first == null) {
        return Followed.none("There are no frames to follow the elbow in.");
      }
      double fullPerSmall = Math.max(1.0, fullWidth / (double) first.width());
      return follow(
          frames, first, toFrame - fromFrame, firstSlapS, at, trunk, scale, fullPerSmall, watch);
    }
  }

  private static Followed follow(
      FrameFeed frames,
      Picture first,
      int total,
      double firstSlapS,
      Point elbow,
      @Nullable Point trunk,
      ScaleOf scale,
      double fullPerSmall,
      Watch watch)
      throws ClipException {
    Point at = scaled(elbow, 1 / fullPerSmall);
    double radiusPx =
        discFullPx(scale, first.width() * fullPerSmall, first.height() * fullPerSmall)
            / fullPerSmall;
    try (Mat gray = new Mat(first.height(), first.width(), CV_8UC1)) {
      fill(gray, first);
      ElbowPatch patch = new ElbowPatch(gray, at, radiusPx, wanted(first, at, radiusPx));
      try (StillPoints still =
          StillPoints.choose(
              gray,
              at,
              AWAY_RADII * radiusPx,
              trunk == null ? null : scaled(trunk, 1 / fullPerSmall))) {
        if (!patch.usable()) {
          return Followed.none(
              "There is too little texture around the elbow to follow it: point at it, or film in"
                  + " more light.");
        }
        List<ElbowDrift.Sample> samples = new ArrayList<>();
        int done = 0;
        for (Picture frame = first; frame != null; frame = frames.next()) {
          if (watch.stopped()) {
            throw new StoppedException();
          }
          fill(gray, frame);
          samples.add(sample(frame.timeS(), gray, at, patch, still, fullPerSmall));
          watch.at(++done / (double) total, "elbow");
        }
        List<String> warnings = new ArrayList<>();
        if (!still.usable()) {
          warnings.add(
              "Too little texture away from the elbow: the camera's motion is still in its path.");
        }
        if (trunk != null && !still.aroundTrunk() && still.usable()) {
          warnings.add(
              "Too little texture at the place on the trunk: the elbow is measured against the room.");
        }
        return ElbowDrift.path(
            samples, elbow, JOINT_RADII * radiusPx * fullPerSmall, firstSlapS, scale, warnings);
      }
    }
  }

  private static ElbowDrift.Sample sample(
      double timeS, Mat gray, Point at, ElbowPatch patch, StillPoints still, double fullPerSmall) {
    Similarity camera = still.usable() ? still.motion(gray) : Similarity.IDENTITY;
    Similarity arm = patch.follow(gray);
    if (camera == null || arm == null) {
      return new ElbowDrift.Sample(timeS, null);
    }
    Similarity seen =
        new Similarity(
            arm.a(),
            arm.b(),
            at.x() + arm.dx() - arm.a() * at.x() + arm.b() * at.y(),
            at.y() + arm.dy() - arm.b() * at.x() - arm.a() * at.y());
    return new ElbowDrift.Sample(timeS, camera.inverse().after(seen).from(at, fullPerSmall));
  }

  private static boolean[] wanted(Picture picture, Point at, double radiusPx) {
    boolean[] arm = ArmMask.around(picture, at, radiusPx);
    int count = 0;
    for (boolean inside : arm) {
      count += inside ? 1 : 0;
    }
    if (count < MASK_SHARE * Math.PI * radiusPx * radiusPx) {
      Arrays.fill(arm, true);
    }
    return arm;
  }

  private static double discFullPx(ScaleOf scale, double fullWidth, double fullHeight) {
    double share = DISC_SHARE * Math.max(fullWidth, fullHeight);
    if (scale.cmPerPixel() != null) {
      // A mistaken scale must not take in half the picture, nor nothing at all.
      return Math.max(share / 3, Math.min(3 * share, DISC_CM / scale.cmPerPixel()));
    }
    return scale.forearmPx() != null ? DISC_FOREARMS * scale.forearmPx() : share;
  }

  private static Point scaled(Point p, double by) {
    return new Point(p.x() * by, p.y() * by);
  }

  private static void fill(Mat gray, Picture picture) {
    try (Mat colour = Mats.bgra(picture)) {
      cvtColor(colour, gray, COLOR_BGRA2GRAY);
    }
  }
}
