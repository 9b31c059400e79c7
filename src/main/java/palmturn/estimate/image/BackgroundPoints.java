package palmturn.estimate.image;

import static org.bytedeco.opencv.global.opencv_calib3d.RANSAC;
import static org.bytedeco.opencv.global.opencv_calib3d.estimateAffinePartial2D;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.bytedeco.opencv.global.opencv_core.countNonZero;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;

import java.nio.ByteBuffer;
import java.nio.DoubleBuffer;
import java.util.Arrays;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Point;

/**
 * Points of the room and the trunk, well away from the elbow: their common motion is the camera's
 * or the trunk's. Tracked at half size from the reference frame. To be closed.
 */
public final class BackgroundPoints implements AutoCloseable {
  /** More points cost time and agree with the others. */
  private static final int MOST = 80;

  /** Fewer points could agree by chance: a similarity is settled by two. */
  private static final int FEWEST = 8;

  /** Window, distance and quality of the corners, tried out on drawn clips at half size. */
  private static final int WINDOW_PX = 15;

  private static final double APART_PX = 7;
  private static final double QUALITY = 0.01;

  /** A point that is farther off moves by itself. */
  private static final double MISS_PX = 0.5;

  /** Parameters of RANSAC (Fischler and Bolles 1981): rounds, confidence, rounds of refinement. */
  private static final int ROUNDS = 300;

  private static final double SURE = 0.99;
  private static final int REFINE = 10;

  private final Mat reference;
  private final float[] at;
  private final float[] last;
  private final boolean aroundTrunk;

  private BackgroundPoints(Mat reference, float[] at, boolean aroundTrunk) {
    this.reference = reference;
    this.at = at;
    this.last = at.clone();
    this.aroundTrunk = aroundTrunk;
  }

  /**
   * Chooses points in the reference frame.
   *
   * @param elbow where nothing is wanted, within {@code awayPx}
   * @param trunk where points are wanted, within {@code awayPx}, as long as there are enough; null
   *     takes all
   */
  public static BackgroundPoints choose(
      Mat gray, Point elbow, double awayPx, @Nullable Point trunk) {
    Mat half = half(gray);
    float[] near = trunk == null ? new float[0] : corners(half, elbow, awayPx, trunk);
    boolean enough = near.length / 2 >= 2 * FEWEST;
    return new BackgroundPoints(half, enough ? near : corners(half, elbow, awayPx, null), enough);
  }

  private static float[] corners(Mat half, Point elbow, double awayPx, @Nullable Point trunk) {
    double away = awayPx / 2;
    byte[] wanted = new byte[half.rows() * half.cols()];
    for (int y = 0; y < half.rows(); y++) {
      for (int x = 0; x < half.cols(); x++) {
        boolean far = Math.hypot(x - elbow.x() / 2, y - elbow.y() / 2) > away;
        boolean near = trunk == null || Math.hypot(x - trunk.x() / 2, y - trunk.y() / 2) < away;
        wanted[y * half.cols() + x] = (byte) (far && near ? 255 : 0);
      }
    }
    try (Mat mask = new Mat(half.rows(), half.cols(), CV_8UC1)) {
      ByteBuffer buffer = mask.createBuffer();
      buffer.put(wanted);
      return PointTracker.corners(half, mask, MOST, QUALITY, APART_PX);
    }
  }

  /** Returns whether there are enough points to tell the camera's motion at all. */
  public boolean usable() {
    return at.length / 2 >= FEWEST;
  }

  /** Returns whether all points lie on the trunk that was pointed at. */
  public boolean aroundTrunk() {
    return aroundTrunk;
  }

  /** Returns the picture's motion since the reference frame, null where unknown. */
  @Nullable
  public Similarity cameraMotion(Mat gray) {
    try (Mat half = half(gray)) {
      float[] now = last.clone();
      boolean[] found = PointTracker.follow(reference, half, at, now, WINDOW_PX);
      int n = 0;
      float[] from = new float[at.length];
      float[] to = new float[at.length];
      for (int i = 0; i < found.length; i++) {
        if (found[i]) {
          from[2 * n] = at[2 * i];
          from[2 * n + 1] = at[2 * i + 1];
          to[2 * n] = now[2 * i];
          to[2 * n + 1] = now[2 * i + 1];
          n++;
        }
      }
      Similarity moved = n < FEWEST ? null : fit(trim(from, n), trim(to, n), MISS_PX);
      for (int i = 0; moved != null && i < found.length; i++) {
        Point there = moved.apply(new Point(at[2 * i], at[2 * i + 1]));
        last[2 * i] = (float) there.x();
        last[2 * i + 1] = (float) there.y();
      }
      return moved == null
          ? null
          : new Similarity(moved.a(), moved.b(), 2 * moved.dx(), 2 * moved.dy());
    }
  }

  private static float[] trim(float[] xy, int points) {
    return Arrays.copyOf(xy, 2 * points);
  }

  public static @Nullable Similarity fit(float[] from, float[] to, double missPx) {
    try (Mat before = PointTracker.mat(from);
        Mat after = PointTracker.mat(to);
        Mat inliers = new Mat();
        Mat affine =
            estimateAffinePartial2D(before, after, inliers, RANSAC, missPx, ROUNDS, SURE, REFINE)) {
      int agree = inliers.empty() ? 0 : countNonZero(inliers);
      if (affine.empty() || agree < Math.max(FEWEST, from.length / 2 / 4)) {
        return null;
      }
      DoubleBuffer m = affine.createBuffer();
      return new Similarity(m.get(0), m.get(3), m.get(2), m.get(5));
    }
  }

  private static Mat half(Mat gray) {
    Mat half = new Mat();
    try (Size size = new Size(Math.max(1, gray.cols() / 2), Math.max(1, gray.rows() / 2))) {
      resize(gray, half, size, 0, 0, INTER_AREA);
    }
    return half;
  }

  @Override
  public void close() {
    reference.close();
  }
}
