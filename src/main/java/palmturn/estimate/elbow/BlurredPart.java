package palmturn.estimate.elbow;

import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;

import java.nio.ByteBuffer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Size;

/** A blurred part of a grey picture, read with bilinear interpolation. */
final class BlurredPart {
  /**
   * Standard deviation that suppresses noise and compression blocks but keeps the texture of skin;
   * chosen on drawn clips.
   */
  private static final double BLUR_PX = 1.5;

  /** Margin that the gradient needs at the edge. */
  private static final int EDGE_PX = 2;

  private final int width;
  private final int height;
  private float[] gray = new float[0];
  private byte[] bytes = new byte[0];
  private int left;
  private int top;
  private int across;
  private int down;

  /**
   * @param width of the pictures, pixels
   * @param height of the pictures, pixels
   */
  BlurredPart(int width, int height) {
    this.width = width;
    this.height = height;
  }

  /** Reads the square around a place, clipped to the picture. */
  void look(Mat frame, double middleX, double middleY, double reachPx) {
    int reach = (int) Math.ceil(reachPx);
    left = clamp((int) middleX - reach, width);
    top = clamp((int) middleY - reach, height);
    across = clamp((int) middleX + reach, width) - left + 1;
    down = clamp((int) middleY + reach, height) - top + 1;
    int size = across * down;
    if (gray.length < size) {
      gray = new float[size];
      bytes = new byte[size];
    }
    try (Rect box = new Rect(left, top, across, down);
        Mat part = new Mat(frame, box);
        Mat blurred = new Mat();
        Size auto = new Size(0, 0)) {
      GaussianBlur(part, blurred, auto, BLUR_PX);
      ByteBuffer buffer = blurred.createBuffer();
      buffer.get(bytes, 0, size);
    }
    for (int i = 0; i < size; i++) {
      gray[i] = bytes[i] & 255;
    }
  }

  private static int clamp(int value, int size) {
    return Math.max(0, Math.min(size - 1, value));
  }

  /**
   * Returns whether a place of the picture is inside the part, with the margin for its gradient.
   */
  boolean has(double x, double y) {
    return x >= left + EDGE_PX
        && y >= top + EDGE_PX
        && x < left + across - 1 - EDGE_PX
        && y < top + down - 1 - EDGE_PX;
  }

  /** Returns the grey level at a place of the picture inside the part, 0 to 255. */
  double at(double x, double y) {
    double fromX = x - left;
    double fromY = y - top;
    int i = (int) fromX;
    int j = (int) fromY;
    double shareX = fromX - i;
    double shareY = fromY - j;
    int k = j * across + i;
    double above = gray[k] + shareX * (gray[k + 1] - gray[k]);
    int under = k + across;
    double below = gray[under] + shareX * (gray[under + 1] - gray[under]);
    return above + shareY * (below - above);
  }

  /** Returns the gradient to the right, grey levels a pixel. */
  double slopeRight(double x, double y) {
    return (at(x + 1, y) - at(x - 1, y)) / 2;
  }

  /** Returns the gradient downwards, grey levels a pixel. */
  double slopeDown(double x, double y) {
    return (at(x, y + 1) - at(x, y - 1)) / 2;
  }
}
