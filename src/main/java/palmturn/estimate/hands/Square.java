package palmturn.estimate.hands;

import static org.bytedeco.opencv.global.opencv_core.BORDER_REPLICATE;
import static org.bytedeco.opencv.global.opencv_core.CV_64FC1;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_LINEAR;
import static org.bytedeco.opencv.global.opencv_imgproc.warpAffine;

import org.bytedeco.javacpp.indexer.DoubleIndexer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * A rotated square of a picture, the input of a landmark network.
 *
 * @param x of its centre, pixels
 * @param y of its centre, pixels
 * @param side pixels
 * @param turn clockwise as seen, radians; 0 stands upright
 */
public record Square(double x, double y, double side, double turn) {
  /** A palm is looked at in a square this many times as long as its box, the fingers too. */
  private static final double PALM_TO_HAND = 2.6;

  private static final double UP_SHARE = 0.5;

  /** A hand that is followed is looked at in a square this many times as long as its palm's box. */
  private static final double FOLLOWED = 2.0;

  private static final double FOLLOWED_UP_SHARE = 0.1;

  /** The landmarks of the palm and of the fingers' first joints: the tips move too much. */
  private static final int[] STEADY = {0, 1, 2, 3, 5, 6, 9, 10, 13, 14, 17, 18};

  /** Returns the square about the whole hand of a detected palm. */
  public static Square of(PalmDetection palm) {
    double turn = upright(palm.x()[0], palm.y()[0], palm.x()[2], palm.y()[2]);
    double up = UP_SHARE * palm.height();
    return new Square(
        palm.centreX() + up * Math.sin(turn),
        palm.centreY() - up * Math.cos(turn),
        PALM_TO_HAND * Math.max(palm.width(), palm.height()),
        turn);
  }

  /** Returns the square about a hand that was seen in the previous frame. */
  static Square around(HandMarks hand) {
    double[] x = hand.x();
    double[] y = hand.y();
    double turn =
        upright(x[0], y[0], ((x[6] + x[14]) / 2 + x[10]) / 2, ((y[6] + y[14]) / 2 + y[10]) / 2);
    double cos = Math.cos(turn);
    double sin = Math.sin(turn);
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double top = Double.POSITIVE_INFINITY;
    double bottom = Double.NEGATIVE_INFINITY;
    for (int i : STEADY) {
      double across = cos * x[i] + sin * y[i];
      double down = -sin * x[i] + cos * y[i];
      left = Math.min(left, across);
      right = Math.max(right, across);
      top = Math.min(top, down);
      bottom = Math.max(bottom, down);
    }
    double across = (left + right) / 2;
    double down = (top + bottom) / 2 - FOLLOWED_UP_SHARE * (bottom - top);
    return new Square(
        cos * across - sin * down,
        sin * across + cos * down,
        FOLLOWED * Math.max(right - left, bottom - top),
        turn);
  }

  private static double upright(double fromX, double fromY, double toX, double toY) {
    double turn = Math.PI / 2 - Math.atan2(fromY - toY, toX - fromX);
    return Math.atan2(Math.sin(turn), Math.cos(turn));
  }

  /**
   * Returns the square's picture, upright; the caller closes it.
   *
   * @param n pixels along a side of the result
   */
  Mat cut(Mat picture, int n) {
    double scale = n / side;
    double cos = scale * Math.cos(turn);
    double sin = scale * Math.sin(turn);
    Mat out = new Mat();
    try (Mat affine = new Mat(2, 3, CV_64FC1);
        Size size = new Size(n, n);
        Scalar none = new Scalar(0)) {
      try (DoubleIndexer m = affine.createIndexer()) {
        m.put(0, 0, cos, sin, n / 2.0 - cos * x - sin * y);
        m.put(1, 0, -sin, cos, n / 2.0 + sin * x - cos * y);
      }
      warpAffine(picture, out, affine, size, INTER_LINEAR, BORDER_REPLICATE, none);
    }
    return out;
  }

  /** Returns the picture's x of a place of the square; both arguments 0 to 1. */
  double toX(double u, double v) {
    return x + side * (Math.cos(turn) * (u - 0.5) - Math.sin(turn) * (v - 0.5));
  }

  /** Returns the picture's y of a place of the square; both arguments 0 to 1. */
  double toY(double u, double v) {
    return y + side * (Math.sin(turn) * (u - 0.5) + Math.cos(turn) * (v - 0.5));
  }

  /** Returns whether its numbers are usable. */
  boolean usable() {
    return side >= 8 && side < 1e5 && Double.isFinite(x + y + turn);
  }
}
