package palmturn.estimate;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;

import java.nio.ByteBuffer;
import java.util.Arrays;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;

/**
 * Points of the skin or sleeve in a disc around the elbow, always looked for from the reference
 * frame, so that errors don't add up. To be closed.
 */
final class ElbowPoints implements AutoCloseable {
  private static final int MOST = 40;
  private static final int FEWEST = 4;
  private static final double QUALITY = 0.005;
  private static final double APART_PX = 3;
  private static final int WINDOW_PX = 21;

  /** What a window sees on the coarsest level, and how far the elbow may jump in one frame. */
  private static final int ROOM_PX = 56;

  /** A point that does not come back to where it began has been lost. */
  private static final double RETURN_PX = 0.7;

  private static final double EDGE_PX = 2;

  private final Mat reference;
  private final Rect box;
  private final float[] at;
  private final float[] last;
  private final int width;
  private final int height;
  private double lastX;
  private double lastY;

  private ElbowPoints(Mat gray, Rect box, float[] at) {
    try (Mat view = new Mat(gray, box)) {
      this.reference = view.clone();
    }
    this.box = box;
    this.at = at;
    this.last = at.clone();
    this.width = gray.cols();
    this.height = gray.rows();
  }

  /** Chooses points within {@code radiusPx} of the elbow. */
  static ElbowPoints choose(Mat gray, Point elbow, double radiusPx) {
    int side = 2 * (int) Math.ceil(radiusPx + ROOM_PX);
    Rect box = boxAround(elbow, Math.min(side, gray.cols()), Math.min(side, gray.rows()), gray);
    byte[] wanted = new byte[gray.rows() * gray.cols()];
    int reach = (int) Math.ceil(radiusPx);
    for (int y = (int) elbow.y() - reach; y <= elbow.y() + reach; y++) {
      for (int x = (int) elbow.x() - reach; x <= elbow.x() + reach; x++) {
        boolean inside = x >= 0 && y >= 0 && x < gray.cols() && y < gray.rows();
        if (inside && Math.hypot(x - elbow.x(), y - elbow.y()) <= radiusPx) {
          wanted[y * gray.cols() + x] = (byte) 255;
        }
      }
    }
    try (Mat mask = new Mat(gray.rows(), gray.cols(), CV_8UC1)) {
      ByteBuffer buffer = mask.createBuffer();
      buffer.put(wanted);
      return new ElbowPoints(gray, box, Points.corners(gray, mask, MOST, QUALITY, APART_PX));
    }
  }

  /** Returns whether there is enough texture to follow. */
  boolean usable() {
    return at.length / 2 >= FEWEST;
  }

  /**
   * Returns how far the elbow has gone since the reference frame, pixels; null where it is lost.
   */
  @Nullable Point way(Mat gray) {
    Point middle =
        new Point(box.x() + box.width() / 2.0 + lastX, box.y() + box.height() / 2.0 + lastY);
    try (Rect here = boxAround(middle, box.width(), box.height(), gray);
        Mat view = new Mat(gray, here)) {
      float[] from = shifted(at, -box.x(), -box.y());
      float[] to = shifted(last, -here.x(), -here.y());
      boolean[] found = Points.follow(reference, view, from, to, WINDOW_PX);
      float[] again = from.clone();
      boolean[] back = Points.follow(view, reference, to, again, WINDOW_PX);
      int kept = 0;
      double[] right = new double[found.length];
      double[] down = new double[found.length];
      for (int i = 0; i < found.length; i++) {
        double x = to[2 * i] + here.x();
        double y = to[2 * i + 1] + here.y();
        double miss = Math.hypot(again[2 * i] - from[2 * i], again[2 * i + 1] - from[2 * i + 1]);
        found[i] = found[i] && back[i] && miss < RETURN_PX && insidePicture(x, y);
        if (found[i]) {
          right[kept] = x - at[2 * i];
          down[kept] = y - at[2 * i + 1];
          last[2 * i] = (float) x;
          last[2 * i + 1] = (float) y;
          kept++;
        }
      }
      if (kept < Math.max(FEWEST, found.length / 5)) {
        restart(new boolean[found.length]);
        return null;
      }
      lastX = median(right, kept);
      lastY = median(down, kept);
      restart(found);
      return new Point(lastX, lastY);
    }
  }

  /** Points that were lost begin again where the others say that they are. */
  private void restart(boolean[] found) {
    for (int i = 0; i < found.length; i++) {
      if (!found[i]) {
        last[2 * i] = (float) (at[2 * i] + lastX);
        last[2 * i + 1] = (float) (at[2 * i + 1] + lastY);
      }
    }
  }

  private boolean insidePicture(double x, double y) {
    return x >= EDGE_PX && y >= EDGE_PX && x < width - EDGE_PX && y < height - EDGE_PX;
  }

  private static double median(double[] values, int n) {
    Double median = Stats.median(Arrays.copyOf(values, n));
    return median == null ? 0 : median;
  }

  private static float[] shifted(float[] xy, int dx, int dy) {
    float[] moved = xy.clone();
    for (int i = 0; i < moved.length; i += 2) {
      moved[i] += dx;
      moved[i + 1] += dy;
    }
    return moved;
  }

  /** Returns a box of a size around a place, moved so that it lies in the picture. */
  private static Rect boxAround(Point middle, int width, int height, Mat gray) {
    int x = (int) Math.round(middle.x() - width / 2.0);
    int y = (int) Math.round(middle.y() - height / 2.0);
    return new Rect(
        Math.max(0, Math.min(gray.cols() - width, x)),
        Math.max(0, Math.min(gray.rows() - height, y)),
        width,
        height);
  }

  @Override
  public void close() {
    reference.close();
    box.close();
  }
}
