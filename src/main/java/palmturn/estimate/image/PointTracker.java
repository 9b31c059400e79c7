package palmturn.estimate.image;

import static org.bytedeco.opencv.global.opencv_core.CV_32FC2;
import static org.bytedeco.opencv.global.opencv_imgproc.goodFeaturesToTrack;
import static org.bytedeco.opencv.global.opencv_video.OPTFLOW_USE_INITIAL_FLOW;
import static org.bytedeco.opencv.global.opencv_video.calcOpticalFlowPyrLK;

import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.TermCriteria;

/** Corners of a grey picture, and the same points in another one. Points lie as x, y, x, y … */
public final class PointTracker {
  /** Levels of the pyramid: each doubles the step that can be followed. */
  private static final int LEVELS = 3;

  /** Rounds and step at which a point is settled, well under what is read off it. */
  private static final int ROUNDS = 20;

  private static final double STEP_PX = 0.03;

  /** OpenCV's own default: less texture can't be followed. */
  private static final double LEAST_TEXTURE = 1e-4;

  private PointTracker() {}

  /**
   * Returns the strongest corners (Shi and Tomasi 1994).
   *
   * @param mask 0 where none are wanted
   * @param quality least strength, as a share of the strongest
   * @param apartPx least distance of two
   */
  public static float[] corners(Mat gray, Mat mask, int atMost, double quality, double apartPx) {
    try (Mat found = new Mat()) {
      goodFeaturesToTrack(gray, found, atMost, quality, apartPx, mask, 3, false, 0.04);
      return found.empty() ? new float[0] : floats(found);
    }
  }

  /**
   * Finds points again by pyramidal Lucas-Kanade (Bouguet 2000).
   *
   * @param at their places in {@code from}
   * @param start where in {@code to} to begin looking; holds the places found afterwards
   * @return which were found
   */
  public static boolean[] follow(Mat from, Mat to, float[] at, float[] start, int windowPx) {
    int n = at.length / 2;
    boolean[] found = new boolean[n];
    if (n == 0) {
      return found;
    }
    try (Mat before = mat(at);
        Mat after = mat(start);
        Mat status = new Mat();
        Mat error = new Mat();
        Size window = new Size(windowPx, windowPx);
        TermCriteria until =
            new TermCriteria(TermCriteria.COUNT + TermCriteria.EPS, ROUNDS, STEP_PX)) {
      calcOpticalFlowPyrLK(
          from,
          to,
          before,
          after,
          status,
          error,
          window,
          LEVELS - 1,
          until,
          OPTFLOW_USE_INITIAL_FLOW,
          LEAST_TEXTURE);
      FloatBuffer places = after.createBuffer();
      places.get(start);
      ByteBuffer flags = status.createBuffer();
      for (int i = 0; i < n; i++) {
        found[i] =
            flags.get(i) != 0 && Float.isFinite(start[2 * i]) && Float.isFinite(start[2 * i + 1]);
      }
    }
    return found;
  }

  /** Returns points as a column of two-channel floats, to be closed. */
  static Mat mat(float[] xy) {
    Mat mat = new Mat(xy.length / 2, 1, CV_32FC2);
    FloatBuffer buffer = mat.createBuffer();
    buffer.put(xy);
    return mat;
  }

  private static float[] floats(Mat mat) {
    float[] values = new float[2 * mat.rows()];
    FloatBuffer buffer = mat.createBuffer();
    buffer.get(values);
    return values;
  }
}
