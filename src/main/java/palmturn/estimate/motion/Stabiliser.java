package palmturn.estimate.motion;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;

import java.util.Arrays;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Scalar;
import palmturn.estimate.image.BackgroundPoints;
import palmturn.estimate.image.PointTracker;
import palmturn.estimate.image.Similarity;

/**
 * Estimates the camera's motion from one frame to the next, from corners all over the picture.
 * Subtracting the camera's motion after the flow fails where walls have no texture, so frames are
 * registered first.
 */
final class Stabiliser implements AutoCloseable {
  /**
   * Number, quality and distance of the corners, and the window they are tracked in; chosen on
   * drawn clips at 320 pixels.
   */
  private static final int CORNERS = 120;

  private static final double QUALITY = 0.01;
  private static final double APART_PX = 8;
  private static final int WINDOW_PX = 15;

  /** Share of the picture at each edge without corners: they would leave it. */
  private static final double MARGIN = 0.03;

  /** Largest forward-backward error of a tracked corner. */
  private static final double BACK_PX = 0.5;

  /** Residual over which a corner moves by itself. */
  private static final double MISS_PX = 0.6;

  /** Fewer corners could agree by chance. */
  private static final int FEWEST = 8;

  private final Mat mask;

  Stabiliser(int width, int height) {
    mask = new Mat(height, width, CV_8UC1, new Scalar(0));
    int x = (int) Math.ceil(MARGIN * width);
    int y = (int) Math.ceil(MARGIN * height);
    try (Rect inner = new Rect(x, y, width - 2 * x, height - 2 * y);
        Mat inside = new Mat(mask, inner);
        Mat full = new Mat(new Scalar(255))) {
      inside.setTo(full);
    }
  }

  /**
   * Returns the transform of the background from the first frame to the second; identity if
   * unknown.
   */
  Similarity between(Mat first, Mat second) {
    float[] at = PointTracker.corners(first, mask, CORNERS, QUALITY, APART_PX);
    float[] there = at.clone();
    boolean[] found = PointTracker.follow(first, second, at, there, WINDOW_PX);
    float[] back = there.clone();
    boolean[] foundBack = PointTracker.follow(second, first, there, back, WINDOW_PX);
    float[] from = new float[at.length];
    float[] to = new float[at.length];
    int n = 0;
    for (int i = 0; i < found.length; i++) {
      double off = Math.hypot(back[2 * i] - at[2 * i], back[2 * i + 1] - at[2 * i + 1]);
      if (found[i] && foundBack[i] && off < BACK_PX) {
        from[2 * n] = at[2 * i];
        from[2 * n + 1] = at[2 * i + 1];
        to[2 * n] = there[2 * i];
        to[2 * n + 1] = there[2 * i + 1];
        n++;
      }
    }
    Similarity moved =
        n < FEWEST
            ? null
            : BackgroundPoints.fit(Arrays.copyOf(from, 2 * n), Arrays.copyOf(to, 2 * n), MISS_PX);
    return moved == null ? Similarity.IDENTITY : moved;
  }

  @Override
  public void close() {
    mask.close();
  }
}
