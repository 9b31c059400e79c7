package palmturn.estimate;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.trial.Estimate.ElbowPath;

/**
 * Follows the elbow through a trial: points on it, always from the reference frame, less the motion
 * of the camera and the trunk.
 */
final class ElbowTracker {
  static final int LONG_SIDE_PX = 640;

  /** Radius of the disc on the elbow; smaller has too few points, larger takes in the sleeve. */
  private static final double DISC_CM = 3;

  /** The same without a scale: in a picture that shows the upper body this is about the same. */
  private static final double DISC_SHARE = 0.035;

  private static final double DISC_FOREARMS = 0.12;

  /** Still points are looked for farther away than this many radii of the disc. */
  private static final double AWAY_RADII = 3;

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
   * @throws CancellationException if {@code watch} stops it
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
    try (GrayFrames frames = new GrayFrames(clip, fromFrame, toFrame, LONG_SIDE_PX)) {
      GrayFrames.Gray first = frames.next();
      if (first == null) {
        return Followed.none("There are no frames to follow the elbow in.");
      }
      double fullPerSmall = Math.max(1.0, fullWidth / (double) first.width());
      return follow(
          frames, first, toFrame - fromFrame, firstSlapS, at, trunk, scale, fullPerSmall, watch);
    }
  }

  private static Followed follow(
      GrayFrames frames,
      GrayFrames.Gray first,
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
      try (ElbowPoints points = ElbowPoints.choose(gray, at, radiusPx);
          StillPoints still =
              StillPoints.choose(
                  gray,
                  at,
                  AWAY_RADII * radiusPx,
                  trunk == null ? null : scaled(trunk, 1 / fullPerSmall))) {
        if (!points.usable()) {
          return Followed.none(
              "There is too little texture around the elbow to follow it; point at it with"
                  + " --elbow, or film against more light.");
        }
        List<ElbowDrift.Sample> samples = new ArrayList<>();
        int done = 0;
        for (GrayFrames.Gray frame = first; frame != null; frame = frames.next()) {
          if (watch.stopped()) {
            throw new CancellationException("stopped");
          }
          fill(gray, frame);
          samples.add(sample(frame.timeS(), gray, at, points, still, fullPerSmall));
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
        return ElbowDrift.path(samples, elbow, firstSlapS, scale, warnings);
      }
    }
  }

  private static ElbowDrift.Sample sample(
      double timeS,
      Mat gray,
      Point at,
      ElbowPoints points,
      StillPoints still,
      double fullPerSmall) {
    Similarity moved = still.usable() ? still.motion(gray) : Similarity.IDENTITY;
    Point way = points.way(gray);
    if (moved == null || way == null) {
      return new ElbowDrift.Sample(timeS, null);
    }
    Point steady = moved.back(new Point(at.x() + way.x(), at.y() + way.y()));
    return new ElbowDrift.Sample(
        timeS, scaled(new Point(steady.x() - at.x(), steady.y() - at.y()), fullPerSmall));
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

  private static void fill(Mat gray, GrayFrames.Gray frame) {
    ByteBuffer buffer = gray.createBuffer();
    buffer.put(frame.gray());
  }
}
