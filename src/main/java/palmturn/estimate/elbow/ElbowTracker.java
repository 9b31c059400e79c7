package palmturn.estimate.elbow;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2GRAY;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.clip.StoppedException;
import palmturn.estimate.image.BackgroundPoints;
import palmturn.estimate.image.FrameFeed;
import palmturn.estimate.image.Mats;
import palmturn.estimate.image.Similarity;
import palmturn.estimate.motion.LivelyParts;
import palmturn.trial.ElbowPath;
import palmturn.trial.Point;

/**
 * Tracks the elbow through a trial: registers the arm around it to the reference frame, less the
 * motion of the camera and the trunk.
 */
public final class ElbowTracker {
  /** Longer side of the pictures: 1 pixel is 0.1 to 0.2 cm where the upper body fills them. */
  static final int LONG_SIDE_PX = 640;

  /** Radius of the disc on the elbow; smaller shows too little, larger takes in the sleeve. */
  private static final double DISC_CM = 4.2;

  /** The same without a scale: in a picture that shows the upper body this is about the same. */
  private static final double DISC_SHARE = 0.05;

  /** The disc's 4.2 cm as a share of an adult's forearm of 25 cm. */
  private static final double DISC_FOREARMS = 0.17;

  /** Least distance of background points from the elbow, radii of the disc. */
  private static final double AWAY_RADII = 2.2;

  /**
   * Largest distance of the joint from the given place, radii of the disc: skin is pointed at,
   * beside the joint.
   */
  private static final double JOINT_RADII = 1.5;

  /**
   * Least share of the frames with a known camera motion; with fewer, the camera is assumed still.
   */
  private static final double STEADIED_SHARE = 0.5;

  /** A tracked path, or null, with warnings for the reader. */
  public record TrackedElbow(@Nullable ElbowPath path, List<String> warnings) {
    public TrackedElbow {
      warnings = List.copyOf(warnings);
    }

    private static TrackedElbow none(String why) {
      return new TrackedElbow(null, List.of(why));
    }
  }

  /**
   * A frame.
   *
   * @param camera motion from the reference frame to this one; null where unknown
   * @param arm motion of the skin around the elbow from the reference frame to this one; null where
   *     the elbow is lost
   */
  private record Seen(double timeS, @Nullable Similarity camera, @Nullable Similarity arm) {
    /** Returns the arm's motion less the camera's, or as it is where that is unknown throughout. */
    ElbowDrift.ArmPose sample(boolean steady, Point at, double fullPerSmall) {
      Similarity motion = arm;
      if (steady && arm != null) {
        motion = camera == null ? null : camera.inverse().after(arm);
      }
      return new ElbowDrift.ArmPose(timeS, motion == null ? null : motion.from(at, fullPerSmall));
    }
  }

  private ElbowTracker() {}

  /**
   * The start of a path, in the reference frame: the first of the trial.
   *
   * @param elbow its place, full-size pixels
   * @param firstSlapS displacements count from the median position over the 0.3 s before this
   *     moment
   * @param trunk a place on the trunk; null uses all that stands still
   * @param scale at the elbow
   */
  public record Start(Point elbow, double firstSlapS, @Nullable Point trunk, ElbowScale scale) {}

  /**
   * Tracks the elbow.
   *
   * @param frames the reference frame and those after it
   * @throws ClipException if the file is damaged
   * @throws StoppedException if {@code watch} stops it
   */
  public static TrackedElbow follow(
      ClipFile clip, LivelyParts.FrameRange frames, Start start, Progress watch)
      throws ClipException {
    int fullWidth = clip.facts().width();
    int fullHeight = clip.facts().height();
    Point at = start.elbow;
    if (!(at.x() >= 0 && at.y() >= 0 && at.x() < fullWidth && at.y() < fullHeight)) {
      return TrackedElbow.none(
          String.format(
              Locale.ROOT,
              "The elbow's place lies outside the picture (%d × %d): the elbow was not followed.",
              fullWidth,
              fullHeight));
    }
    int total = Math.max(0, frames.to() - frames.from());
    try (FrameFeed feed = new FrameFeed(clip, frames.from(), frames.from() + total, LONG_SIDE_PX)) {
      Picture first = feed.next();
      if (first == null) {
        return TrackedElbow.none("There are no frames to follow the elbow in.");
      }
      double fullPerSmall = Math.max(1.0, fullWidth / (double) first.width());
      return follow(feed, first, total, start, fullPerSmall, watch);
    }
  }

  private static TrackedElbow follow(
      FrameFeed feed, Picture first, int total, Start start, double fullPerSmall, Progress watch)
      throws ClipException {
    Point at = scaled(start.elbow, 1 / fullPerSmall);
    Point trunk = start.trunk == null ? null : scaled(start.trunk, 1 / fullPerSmall);
    double radiusPx =
        discFullPx(start.scale, first.width() * fullPerSmall, first.height() * fullPerSmall)
            / fullPerSmall;
    try (Mat gray = new Mat(first.height(), first.width(), CV_8UC1)) {
      fill(gray, first);
      ElbowFollower follower = new ElbowFollower(first, gray, at, radiusPx);
      try (BackgroundPoints still =
          BackgroundPoints.choose(gray, at, AWAY_RADII * radiusPx, trunk)) {
        if (!follower.usable()) {
          return TrackedElbow.none(
              "There is too little texture around the elbow to follow it: point at it, or film in"
                  + " more light.");
        }
        List<Seen> frames = new ArrayList<>();
        Similarity known = Similarity.IDENTITY;
        for (Picture frame = first; frame != null; frame = feed.next()) {
          if (watch.stopped()) {
            throw new StoppedException();
          }
          fill(gray, frame);
          Similarity camera = still.usable() ? still.cameraMotion(gray) : null;
          known = camera == null ? known : camera;
          frames.add(new Seen(frame.timeS(), camera, follower.follow(frame, gray, known)));
          watch.at(frames.size() / (double) total, "elbow");
        }
        long steadied = frames.stream().filter(seen -> seen.camera != null).count();
        boolean steady = steadied >= STEADIED_SHARE * frames.size();
        List<ElbowDrift.ArmPose> samples =
            frames.stream().map(seen -> seen.sample(steady, at, fullPerSmall)).toList();
        List<String> warnings = new ArrayList<>();
        if (!steady) {
          warnings.add(
              "Too little stands still away from the elbow: the camera's motion is still in its"
                  + " path.");
        }
        if (follower.maySlide()) {
          warnings.add(
              "The skin around the elbow is smooth: its path may slide along the arm. Check the"
                  + " trail in the picture.");
        }
        if (trunk != null && !still.aroundTrunk() && steady) {
          warnings.add(
              "Too little texture at the place on the trunk: the elbow is measured against the room.");
        }
        return ElbowDrift.path(samples, start, JOINT_RADII * radiusPx * fullPerSmall, warnings);
      }
    }
  }

  /** Returns the radius of the tracked disc, full-size pixels. */
  public static double discFullPx(ElbowScale scale, double fullWidth, double fullHeight) {
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
