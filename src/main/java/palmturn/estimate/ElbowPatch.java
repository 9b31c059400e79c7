package palmturn.estimate;

import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;

import java.nio.ByteBuffer;
import java.util.Arrays;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Size;
import org.jspecify.annotations.Nullable;

/**
 * The skin or sleeve around the elbow in the reference frame, laid on each later frame by turn,
 * size and shift: Lucas and Kanade's method over all its pixels at once, always from the reference
 * frame with the last result as start, so that errors don't add up. Single points on smooth skin
 * get lost as the forearm turns; the whole patch does not.
 */
final class ElbowPatch {
  private static final int STEP_PX = 2;
  private static final double BLUR_PX = 1.5;
  private static final int ROOM_PX = 24;
  private static final int EDGE_PX = 2;
  private static final int FEWEST = 60;
  private static final int ROUNDS = 15;
  private static final double DONE_PX = 0.02;

  /**
   * Differences over so many grey levels count less: something in front, a shine, the background.
   */
  private static final double OUTLIER = 8;

  /** Holds turn and size where texture does not tell them. */
  private static final double STIFF = 0.02;

  /** Less contrast than this, in grey levels, can't be followed. */
  private static final double LEAST_CONTRAST = 2;

  /** Correlation with the reference frame below which it is lost. */
  private static final double ALIKE = 0.7;

  private static final double SEEN_SHARE = 0.7;
  private static final int UNKNOWNS = 5;

  private final Point elbow;
  private final double radiusPx;
  private final int width;
  private final int height;
  private final double[] right;
  private final double[] down;
  private final double[] gray;
  private double[] last = new double[UNKNOWNS];
  private float[] view = new float[0];
  private byte[] bytes = new byte[0];
  private int viewX;
  private int viewY;
  private int viewWidth;
  private int viewHeight;

  /**
   * Takes the patch from the reference frame.
   *
   * @param wanted for each pixel whether it belongs to the arm
   */
  ElbowPatch(Mat frame, Point elbow, double radiusPx, boolean[] wanted) {
    this.elbow = elbow;
    this.radiusPx = radiusPx;
    width = frame.cols();
    height = frame.rows();
    load(frame, last);
    int across = 2 * (int) Math.ceil(radiusPx) / STEP_PX + 2;
    double[] xs = new double[across * across];
    double[] ys = new double[across * across];
    double[] grays = new double[across * across];
    int n = 0;
    for (int y = (int) (elbow.y() - radiusPx); y <= elbow.y() + radiusPx; y += STEP_PX) {
      for (int x = (int) (elbow.x() - radiusPx); x <= elbow.x() + radiusPx; x += STEP_PX) {
        boolean near = Math.hypot(x - elbow.x(), y - elbow.y()) <= radiusPx;
        if (near && inside(x, y) && wanted[y * width + x]) {
          xs[n] = x - elbow.x();
          ys[n] = y - elbow.y();
          grays[n] = at(x, y);
          n++;
        }
      }
    }
    right = Arrays.copyOf(xs, n);
    down = Arrays.copyOf(ys, n);
    gray = Arrays.copyOf(grays, n);
  }

  /** Returns whether there is enough of it and enough contrast to follow. */
  boolean usable() {
    double mean = Arrays.stream(gray).average().orElse(0);
    double square = Arrays.stream(gray).map(g -> (g - mean) * (g - mean)).average().orElse(0);
    return gray.length >= FEWEST && Math.sqrt(square) >= LEAST_CONTRAST;
  }

  /** Returns how it lies now, from the elbow's place as origin; null where it is lost. */
  @Nullable Similarity follow(Mat frame) {
    load(frame, last);
    double[] found = fit(last);
    if (found == null) {
      double[] rest = new double[UNKNOWNS];
      load(frame, rest);
      found = fit(rest);
    }
    if (found == null) {
      return null;
    }
    last = found;
    return new Similarity(1 + found[2], found[3], found[0], found[1]);
  }

  /** Unknowns: right, down, size and turn (as a − 1 and b), and how much darker it has become. */
  private double @Nullable [] fit(double[] start) {
    double[] now = start.clone();
    double alike = 0;
    for (int round = 0; round < ROUNDS; round++) {
      double[][] normal = new double[UNKNOWNS][UNKNOWNS + 1];
      int seen = 0;
      Correlation correlation = new Correlation();
      for (int i = 0; i < gray.length; i++) {
        double x = elbow.x() + right[i] + now[0] + now[2] * right[i] - now[3] * down[i];
        double y = elbow.y() + down[i] + now[1] + now[3] * right[i] + now[2] * down[i];
        if (!inside(x, y)) {
          continue;
        }
        seen++;
        double value = at(x, y);
        double gx = (at(x + 1, y) - at(x - 1, y)) / 2;
        double gy = (at(x, y + 1) - at(x, y - 1)) / 2;
        double miss = gray[i] - value - now[4];
        double weight = Math.abs(miss) < OUTLIER ? 1 : OUTLIER / Math.abs(miss);
        double[] row = {
          gx, gy, gx * right[i] + gy * down[i], gy * right[i] - gx * down[i], 1, miss
        };
        for (int j = 0; j < UNKNOWNS; j++) {
          for (int k = j; k <= UNKNOWNS; k++) {
            normal[j][k] += weight * row[j] * row[k];
          }
        }
        correlation.add(gray[i], value);
      }
      if (seen < SEEN_SHARE * gray.length) {
        return null;
      }
      for (int j = 2; j < 4; j++) {
        double stiff = STIFF * seen * radiusPx * radiusPx;
        normal[j][j] += stiff;
        normal[j][UNKNOWNS] -= stiff * now[j];
      }
      double[] step = solve(normal);
      for (int j = 0; j < UNKNOWNS; j++) {
        now[j] += step[j];
      }
      alike = correlation.value();
      double moved = Math.hypot(step[0], step[1]) + radiusPx * Math.hypot(step[2], step[3]);
      if (moved < DONE_PX) {
        break;
      }
    }
    return alike >= ALIKE ? now : null;
  }

  /** Solves the normal equations, of which the upper half is filled, by Gauss's elimination. */
  private static double[] solve(double[][] m) {
    int n = m.length;
    for (int j = 0; j < n; j++) {
      for (int k = 0; k < j; k++) {
        m[j][k] = m[k][j];
      }
    }
    for (int j = 0; j < n; j++) {
      for (int k = j + 1; k < n && m[j][j] != 0; k++) {
        double share = m[k][j] / m[j][j];
        for (int l = j; l <= n; l++) {
          m[k][l] -= share * m[j][l];
        }
      }
    }
    double[] solution = new double[n];
    for (int j = n - 1; j >= 0; j--) {
      double rest = m[j][n];
      for (int k = j + 1; k < n; k++) {
        rest -= m[j][k] * solution[k];
      }
      solution[j] = m[j][j] == 0 ? 0 : rest / m[j][j];
    }
    return solution;
  }

  /** Blurs the part of the frame in which the patch will be looked for. */
  private void load(Mat frame, double[] around) {
    int reach = (int) Math.ceil(radiusPx) + ROOM_PX;
    viewX = clamp((int) (elbow.x() + around[0]) - reach, width);
    viewY = clamp((int) (elbow.y() + around[1]) - reach, height);
    viewWidth = clamp((int) (elbow.x() + around[0]) + reach, width) - viewX + 1;
    viewHeight = clamp((int) (elbow.y() + around[1]) + reach, height) - viewY + 1;
    int size = viewWidth * viewHeight;
    if (view.length < size) {
      view = new float[size];
      bytes = new byte[size];
    }
    try (Rect box = new Rect(viewX, viewY, viewWidth, viewHeight);
        Mat part = new Mat(frame, box);
        Mat blurred = new Mat();
        Size auto = new Size(0, 0)) {
      GaussianBlur(part, blurred, auto, BLUR_PX);
      ByteBuffer buffer = blurred.createBuffer();
      buffer.get(bytes, 0, size);
    }
    for (int i = 0; i < size; i++) {
      view[i] = bytes[i] & 255;
    }
  }

  private static int clamp(int value, int size) {
    return Math.max(0, Math.min(size - 1, value));
  }

  private boolean inside(double x, double y) {
    return x >= viewX + EDGE_PX
        && y >= viewY + EDGE_PX
        && x < viewX + viewWidth - 1 - EDGE_PX
        && y < viewY + viewHeight - 1 - EDGE_PX;
  }

  private double at(double x, double y) {
    double fromX = x - viewX;
    double fromY = y - viewY;
    int i = (int) fromX;
    int j = (int) fromY;
    double shareX = fromX - i;
    double shareY = fromY - j;
    int k = j * viewWidth + i;
    double above = view[k] + shareX * (view[k + 1] - view[k]);
    int under = k + viewWidth;
    double below = view[under] + shareX * (view[under + 1] - view[under]);
    return above + shareY * (below - above);
  }

  /** Pearson's correlation of pairs as they come. */
  private static final class Correlation {
    private int n;
    private double sumA;
    private double sumB;
    private double sumAa;
    private double sumBb;
    private double sumAb;

    void add(double a, double b) {
      n++;
      sumA += a;
      sumB += b;
      sumAa += a * a;
      sumBb += b * b;
      sumAb += a * b;
    }

    double value() {
      double varA = sumAa - sumA * sumA / n;
      double varB = sumBb - sumB * sumB / n;
      return varA <= 0 || varB <= 0 ? 0 : (sumAb - sumA * sumB / n) / Math.sqrt(varA * varB);
    }
  }
}
