package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.image.Similarity;
import palmturn.numbers.Robust;
import palmturn.trial.Point;

/**
 * A template of the skin or sleeve around the elbow in the reference frame, registered to each
 * later frame by a similarity transform: Lucas and Kanade's method over all its pixels at once,
 * always from the reference frame with the last result as start, so that errors don't accumulate.
 * Single points on smooth skin get lost as the forearm turns; the whole patch does not.
 */
final class ElbowPatch {
  /** Sampling step in both directions: the blurred picture holds no finer detail. */
  private static final int STEP_PX = 2;

  /** Margin around the disc for its motion from one frame to the next. */
  private static final int ROOM_PX = 24;

  /** Fewest pixels that determine five unknowns against noise. */
  private static final int FEWEST = 60;

  /** Most Gauss-Newton iterations. */
  private static final int ROUNDS = 15;

  /** Step at which the iterations have converged: a tenth of the path's accuracy. */
  private static final double CONVERGED_PX = 0.02;

  /**
   * Huber threshold of the residuals, grey levels: occlusion, specular light and background weigh
   * less.
   */
  private static final double OUTLIER = 8;

  /** Regularisation of turn and size, for texture that does not determine them. */
  private static final double STIFFNESS = 0.02;

  /** Least contrast that can be tracked, grey levels. */
  private static final double LEAST_CONTRAST = 2;

  /**
   * Least gradient along the smoothest direction, grey levels a pixel, below which the patch may
   * slide: from 1.0 on it did not in drawn clips, with 0.8 it slid along the forearm of a real one.
   */
  private static final double LEAST_SLOPE = 0.9;

  /** Correlation with the reference frame below which the patch is lost. */
  private static final double LEAST_CORRELATION = 0.7;

  /**
   * Share of the earlier frames whose correlation a lost patch must reach to be recovered: the rest
   * of the arm looks nearly the same.
   */
  private static final double RECOVERY_SHARE = 0.9;

  /** Least share of the pixels inside the picture. */
  private static final double SEEN_SHARE = 0.7;

  /** Right, down, size, turn and change of light. */
  private static final int UNKNOWNS = 5;

  /** Search steps to a radius of the disc. */
  private static final double SEARCH_STEPS = 12;

  /** Subsampling of the pixels in the search. */
  private static final int SEARCH_SKIP = 5;

  /** Best candidates of the search that are fitted in full. */
  private static final int SEARCHED = 3;

  private final Point elbow;
  private final double radiusPx;
  private final int width;
  private final int height;
  private final BlurredPart view;
  private final double[] right;
  private final double[] down;
  private final double[] gray;
  private final double slope;
  private double[] last = new double[UNKNOWNS];
  private final List<Double> correlations = new ArrayList<>();
  private double lastCorrelation;
  private boolean lost;

  /**
   * Samples the patch in the reference frame.
   *
   * @param wanted for each pixel whether it belongs to the arm
   */
  ElbowPatch(Mat frame, Point elbow, double radiusPx, boolean[] wanted) {
    this.elbow = elbow;
    this.radiusPx = radiusPx;
    width = frame.cols();
    height = frame.rows();
    view = new BlurredPart(width, height);
    look(frame, 0, 0, ROOM_PX);
    int across = 2 * (int) Math.ceil(radiusPx) / STEP_PX + 2;
    double[] xs = new double[across * across];
    double[] ys = new double[across * across];
    double[] grays = new double[across * across];
    int n = 0;
    for (int y = (int) (elbow.y() - radiusPx); y <= elbow.y() + radiusPx; y += STEP_PX) {
      for (int x = (int) (elbow.x() - radiusPx); x <= elbow.x() + radiusPx; x += STEP_PX) {
        boolean near = Math.hypot(x - elbow.x(), y - elbow.y()) <= radiusPx;
        if (near && view.has(x, y) && wanted[y * width + x]) {
          xs[n] = x - elbow.x();
          ys[n] = y - elbow.y();
          grays[n] = view.at(x, y);
          n++;
        }
      }
    }
    right = Arrays.copyOf(xs, n);
    down = Arrays.copyOf(ys, n);
    gray = Arrays.copyOf(grays, n);
    slope = slope();
  }

  /** Returns whether there are enough pixels and enough contrast to track. */
  boolean usable() {
    double mean = Arrays.stream(gray).average().orElse(0);
    double square = Arrays.stream(gray).map(g -> (g - mean) * (g - mean)).average().orElse(0);
    return gray.length >= FEWEST && Math.sqrt(square) >= LEAST_CONTRAST;
  }

  /**
   * Returns whether the patch is so smooth along one direction that it may slide (the aperture
   * problem).
   */
  boolean maySlide() {
    return slope < LEAST_SLOPE;
  }

  /**
   * Returns the root mean square gradient along the smoothest direction, grey levels a pixel: the
   * root of the smaller eigenvalue of the structure tensor.
   */
  private double slope() {
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (int i = 0; i < gray.length; i++) {
      double x = elbow.x() + right[i];
      double y = elbow.y() + down[i];
      double gx = view.slopeRight(x, y);
      double gy = view.slopeDown(x, y);
      xx += gx * gx;
      xy += gx * gy;
      yy += gy * gy;
    }
    double smaller = (xx + yy) / 2 - Math.hypot((xx - yy) / 2, xy);
    return Math.sqrt(Math.max(0, smaller) / Math.max(1, gray.length));
  }

  /**
   * Returns the patch's transform in this frame, with the elbow's place as origin; null where it is
   * lost.
   *
   * @param fits further conditions on the transform
   */
  @Nullable Similarity follow(Mat frame, Predicate<Similarity> fits) {
    look(frame, last[0], last[1], ROOM_PX);
    double[] found = fit(last, fits);
    if (found == null) {
      double[] rest = new double[UNKNOWNS];
      look(frame, 0, 0, ROOM_PX);
      found = fit(rest, fits);
    }
    lost = found == null;
    return found == null ? null : accept(found);
  }

  /**
   * Searches around the last position and returns the patch's transform, null where it is not
   * found.
   *
   * @param reachPx search radius
   * @param fits further conditions on the transform
   */
  @Nullable Similarity find(Mat frame, double reachPx, Predicate<Similarity> fits) {
    look(frame, last[0], last[1], reachPx + ROOM_PX);
    List<Candidate> starts = new ArrayList<>();
    double step = radiusPx / SEARCH_STEPS;
    int most = (int) (reachPx / step);
    for (int j = -most; j <= most; j++) {
      for (int i = -most; i <= most; i++) {
        if (step * Math.hypot(i, j) <= reachPx) {
          double[] where = {last[0] + step * i, last[1] + step * j, last[2], last[3], 0};
          starts.add(new Candidate(where, correlation(where)));
        }
      }
    }
    starts.sort(Comparator.comparingDouble(Candidate::correlation).reversed());
    for (Candidate start : starts.subList(0, Math.min(SEARCHED, starts.size()))) {
      double[] found = fit(start.where, fits);
      if (found != null) {
        lost = false;
        return accept(found);
      }
    }
    return null;
  }

  @SuppressWarnings("ArrayRecordComponent") // Made once and only read.
  private record Candidate(double[] where, double correlation) {}

  private double recoveryCorrelation() {
    double[] before = correlations.stream().mapToDouble(Double::doubleValue).toArray();
    return before.length == 0
        ? LEAST_CORRELATION
        : Math.max(LEAST_CORRELATION, Robust.quantile(before, 1 - RECOVERY_SHARE));
  }

  private Similarity accept(double[] found) {
    last = found;
    correlations.add(lastCorrelation);
    return similarity(found);
  }

  private static Similarity similarity(double[] found) {
    return new Similarity(1 + found[2], found[3], found[0], found[1]);
  }

  /** Returns Pearson's correlation of a subsample of the pixels with the picture there. */
  private double correlation(double[] where) {
    Correlation correlation = new Correlation();
    for (int i = 0; i < gray.length; i += SEARCH_SKIP) {
      double x = x(where, i);
      double y = y(where, i);
      if (view.has(x, y)) {
        correlation.add(gray[i], view.at(x, y));
      }
    }
    return correlation.n < SEEN_SHARE * gray.length / SEARCH_SKIP ? -1 : correlation.value();
  }

  private double x(double[] where, int i) {
    return elbow.x() + right[i] + where[0] + where[2] * right[i] - where[3] * down[i];
  }

  private double y(double[] where, int i) {
    return elbow.y() + down[i] + where[1] + where[3] * right[i] + where[2] * down[i];
  }

  /** A predicate of a pixel. */
  interface Pixels {
    boolean has(int x, int y);
  }

  /** Returns the share of the transformed pixels inside the picture that satisfy a predicate. */
  double share(Similarity how, Pixels pixels) {
    double[] where = {how.dx(), how.dy(), how.a() - 1, how.b()};
    int inside = 0;
    int held = 0;
    for (int i = 0; i < gray.length; i++) {
      int x = (int) Math.round(x(where, i));
      int y = (int) Math.round(y(where, i));
      if (x >= 0 && y >= 0 && x < width && y < height) {
        inside++;
        held += pixels.has(x, y) ? 1 : 0;
      }
    }
    return inside == 0 ? 0 : held / (double) inside;
  }

  /** Fits right, down, size and turn (as a − 1 and b), and the change of brightness. */
  private double @Nullable [] fit(double[] start, Predicate<Similarity> fits) {
    double[] now = start.clone();
    double alike = 0;
    for (int round = 0; round < ROUNDS; round++) {
      double[][] normal = new double[UNKNOWNS][UNKNOWNS + 1];
      int seen = 0;
      Correlation correlation = new Correlation();
      for (int i = 0; i < gray.length; i++) {
        double x = x(now, i);
        double y = y(now, i);
        if (!view.has(x, y)) {
          continue;
        }
        seen++;
        double value = view.at(x, y);
        double gx = view.slopeRight(x, y);
        double gy = view.slopeDown(x, y);
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
        double stiff = STIFFNESS * seen * radiusPx * radiusPx;
        normal[j][j] += stiff;
        normal[j][UNKNOWNS] -= stiff * now[j];
      }
      double[] step = solve(normal);
      for (int j = 0; j < UNKNOWNS; j++) {
        now[j] += step[j];
      }
      alike = correlation.value();
      double moved = Math.hypot(step[0], step[1]) + radiusPx * Math.hypot(step[2], step[3]);
      if (moved < CONVERGED_PX) {
        break;
      }
    }
    lastCorrelation = alike;
    return alike >= (lost ? recoveryCorrelation() : LEAST_CORRELATION) && fits.test(similarity(now))
        ? now
        : null;
  }

  private void look(Mat frame, double aroundX, double aroundY, double room) {
    view.look(frame, elbow.x() + aroundX, elbow.y() + aroundY, radiusPx + room);
  }

  /**
   * Solves the normal equations, of which the upper half is filled, by Gauss's elimination. Five
   * unknowns are solved up to fifteen times a frame, where a library's matrices cost more than the
   * sums; an unknown that nothing determines stays 0, where they would throw.
   */
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

  /**
   * A running Pearson correlation of pairs, summed while they are read; the library's needs arrays.
   */
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
