package palmturn.estimate.elbow;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.motion.Blob;
import palmturn.numbers.Robust;
import palmturn.trial.Point;

/**
 * Finds the moving arm's elbow from a map of motion energy: a forearm rotates about its elbow, so
 * that its speed decreases gradually towards the elbow, while past the fingertips it drops at once.
 */
public final class ElbowFinder {
  /** Least speed of a cell of the hand, as a share of the highest. */
  private static final double HAND = 0.5;

  /** Speed at which the forearm's motion ends, as a share of the highest. */
  private static final double REST = 0.12;

  /** Noise floor, in medians of the speed over the picture. */
  private static final double NOISE = 1.5;

  /** Least length of the forearm's fall-off, as a share of the hand's width. */
  private static final double LEAST_LENGTH = 0.35;

  /**
   * Cosine of the angle from the farthest cell beyond which motion counts as on the opposite side.
   */
  private static final double OPPOSITE_COS = 0.3;

  /** Share of the reach beyond which cells are averaged to the elbow. */
  private static final double END = 0.85;

  /** Least share of red in skin of any tone. */
  private static final double RED = 0.37;

  /** Least excess of red over green in skin, as a share of the light. */
  private static final double REDDER = 0.04;

  /** Least brightness of shaded skin, as a share of the hand's. */
  private static final double DARK = 0.5;

  /** Forearm 0.161 of the stature, hand 0.108 of it, of which half is up to its middle. */
  private static final double FOREARM = 0.161 / (0.161 + 0.108 / 2);

  /**
   * With the elbows at the sides and the hands in front, the forearm points half at the camera. In
   * fifteen drawn clips of two makers 0.57 to 0.80 of it was seen.
   */
  private static final double SEEN = 0.68;

  /**
   * Cells nearer to the hand than this share of its distance from the area belong to the search
   * area.
   */
  private static final double LEADS_THERE = 0.9;

  /**
   * A search area for the elbow, from evidence other than motion.
   *
   * @param at pixels of the upright full-size picture
   * @param withinPx radius of the area
   */
  record SearchArea(Point at, double withinPx) {
    boolean holds(Point place) {
      return Math.hypot(place.x() - at.x(), place.y() - at.y()) <= withinPx;
    }

    /** Returns a mask of the grid cells in the area or between it and a cell of the hand. */
    boolean[] cells(int count, int width, double pxPerCell, int hand) {
      double x = at.x() / pxPerCell - hand % width;
      double y = at.y() / pxPerCell - hand / width;
      boolean[] inside = new boolean[count];
      for (int i = 0; i < count; i++) {
        double right = i % width - hand % width;
        double down = i / width - hand / width;
        inside[i] =
            Math.hypot(right - x, down - y) <= withinPx / pxPerCell
                || Math.hypot(right, down) < LEADS_THERE * Math.hypot(x, y);
      }
      return inside;
    }
  }

  private ElbowFinder() {}

  /**
   * Finds the elbow.
   *
   * @param liveliness variance of the speed in each cell of a grid in the coordinates of the first
   *     frame
   * @param width of the grid
   * @param pxPerCell pixels of the upright full-size picture along a cell
   * @param bgr blue, green and red of each cell in the first frame
   * @param hand where the moving hand is
   * @param about the search area; null searches everywhere
   * @return null where the elbow can't be found
   */
  public static @Nullable Point find(
      float[] liveliness,
      int width,
      double pxPerCell,
      byte[] bgr,
      Blob hand,
      @Nullable SearchArea about) {
    double[] speed = new double[liveliness.length];
    for (int i = 0; i < speed.length; i++) {
      speed[i] = Math.sqrt(liveliness[i]);
    }
    int top = hand.cells()[0];
    for (int cell : hand.cells()) {
      top = speed[cell] > speed[top] ? cell : top;
    }
    double rest = Math.max(REST * speed[top], NOISE * Robust.median(speed));
    if (rest >= HAND * speed[top]) {
      return null;
    }
    boolean[] passable = skin(bgr, hand);
    if (about != null) {
      boolean[] there = about.cells(passable.length, width, pxPerCell, top);
      for (int i = 0; i < passable.length; i++) {
        passable[i] &= there[i];
      }
    }
    int[] steps = reach(speed, passable, width, top, HAND * speed[top], rest);
    int far = top;
    int area = 0;
    for (int i = 0; i < steps.length; i++) {
      area += steps[i] == 0 ? 1 : 0;
      far = steps[i] > steps[far] ? i : far;
    }
    double length = steps[far];
    if (length < LEAST_LENGTH * Math.sqrt(area)) {
      return null;
    }
    double[] middle = middle(speed, steps, width);
    double farX = far % width - middle[0];
    double farY = far / width - middle[1];
    double x = 0;
    double y = 0;
    int n = 0;
    double elsewhere = 0;
    for (int i = 0; i < steps.length; i++) {
      double dx = i % width - middle[0];
      double dy = i / width - middle[1];
      double cos =
          (dx * farX + dy * farY) / Math.max(1e-9, Math.hypot(dx, dy) * Math.hypot(farX, farY));
      if (cos > OPPOSITE_COS) {
        if (steps[i] >= END * length) {
          x += i % width + 0.5;
          y += i / width + 0.5;
          n++;
        }
      } else {
        elsewhere = Math.max(elsewhere, steps[i]);
      }
    }
    int height = speed.length / width;
    boolean atEdge =
        far % width <= 1
            || far % width >= width - 2
            || far / width <= 1
            || far / width >= height - 2;
    if (n == 0 || atEdge || elsewhere >= length) {
      return null;
    }
    Point found = new Point(x / n * pxPerCell, y / n * pxPerCell);
    return about == null || about.holds(found) ? found : null;
  }

  /**
   * Returns the length that the forearm, elbow to wrist, would have across the line of sight, in
   * pixels of the upright full-size picture, from the distance of the elbow to the centroid of the
   * moving region. It holds roughly for the test's posture seen from the front.
   */
  static double forearmPx(Point elbow, Blob hand, double pxPerCell) {
    double x = 0;
    double y = 0;
    double all = 0;
    for (int i = 0; i < hand.area(); i++) {
      x += hand.weights()[i] * (hand.x(i) + 0.5);
      y += hand.weights()[i] * (hand.y(i) + 0.5);
      all += hand.weights()[i];
    }
    return FOREARM
        / SEEN
        * Math.hypot(x / all * pxPerCell - elbow.x(), y / all * pxPerCell - elbow.y());
  }

  /**
   * Returns a mask of the skin-coloured cells: more red than green whatever the light, and not much
   * darker than the hand.
   */
  private static boolean[] skin(byte[] bgr, Blob hand) {
    int cells = bgr.length / 3;
    double[] light = new double[cells];
    boolean[] skin = new boolean[cells];
    for (int i = 0; i < cells; i++) {
      double blue = bgr[3 * i] & 255;
      double green = bgr[3 * i + 1] & 255;
      double red = bgr[3 * i + 2] & 255;
      light[i] = blue + green + red + 1;
      skin[i] = red / light[i] > RED && (red - green) / light[i] > REDDER && green > blue * 0.9;
    }
    double[] hands =
        Arrays.stream(hand.cells()).filter(i -> skin[i]).mapToDouble(i -> light[i]).toArray();
    double least = hands.length == 0 ? 0 : DARK * Robust.median(hands);
    for (int i = 0; i < cells; i++) {
      skin[i] &= light[i] >= least;
    }
    return skin;
  }

  /** Returns the hand's centroid, weighted by speed, cells. */
  private static double[] middle(double[] speed, int[] steps, int width) {
    double x = 0;
    double y = 0;
    double sum = 0;
    for (int i = 0; i < steps.length; i++) {
      if (steps[i] == 0) {
        x += speed[i] * (i % width);
        y += speed[i] * (i / width);
        sum += speed[i];
      }
    }
    return new double[] {x / sum, y / sum};
  }

  /**
   * Returns each cell's distance from the hand by breadth-first search, 0 in the hand and −1 where
   * no connected motion reaches. Every other step uses eight neighbours, so that distances are
   * nearly isotropic.
   */
  private static int[] reach(
      double[] speed, boolean[] passable, int width, int top, double hand, double rest) {
    int[] steps = new int[speed.length];
    Arrays.fill(steps, -1);
    Deque<Integer> open = new ArrayDeque<>();
    steps[top] = 0;
    open.add(top);
    Deque<Integer> ring = new ArrayDeque<>();
    while (!open.isEmpty()) {
      int cell = open.remove();
      boolean onward = false;
      for (int next : neighbours(cell, width, speed.length, false)) {
        if (steps[next] < 0 && speed[next] >= hand) {
          steps[next] = 0;
          open.add(next);
        }
        onward |= speed[next] < hand;
      }
      if (onward) {
        ring.add(cell);
      }
    }
    while (!ring.isEmpty()) {
      int cell = ring.remove();
      for (int next : neighbours(cell, width, speed.length, steps[cell] % 2 == 1)) {
        if (steps[next] < 0 && speed[next] >= rest && passable[next]) {
          steps[next] = steps[cell] + 1;
          ring.add(next);
        }
      }
    }
    return steps;
  }

  private static int[] neighbours(int cell, int width, int cells, boolean corners) {
    int x = cell % width;
    int[] found = new int[8];
    int n = 0;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        int next = cell + dy * width + dx;
        boolean straight = dx == 0 || dy == 0;
        boolean itself = dx == 0 && dy == 0;
        if (!itself
            && (corners || straight)
            && x + dx >= 0
            && x + dx < width
            && next >= 0
            && next < cells) {
          found[n++] = next;
        }
      }
    }
    return Arrays.copyOf(found, n);
  }
}
