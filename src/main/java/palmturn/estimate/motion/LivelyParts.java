package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.List;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.clip.StoppedException;
import palmturn.estimate.image.FrameFeed;
import palmturn.numbers.Robust;

/**
 * The parts of a long clip in which something moves fast, by a quick pass over coarse pictures, so
 * that only they are measured in full.
 */
public final class LivelyParts {
  /** A clip up to this length is measured as a whole. */
  static final double SHORT_S = 15;

  /** A part is never longer than this, since the motion of all its frames is kept. */
  private static final double LONGEST_S = 25;

  /**
   * Longer side of the pictures, and the cells in them, that are looked through: enough to see a
   * hand move.
   */
  private static final int LOOK_PX = 80;

  private static final int CELL_PX = 8;

  /** Half width of the running mean that levels the change of single frames. */
  private static final double HALF_S = 0.25;

  /** Share of the liveliest moment's change that counts as moving: Palmturn's choice. */
  private static final double LIVELY = 0.3;

  /** A shorter part holds no trial. */
  private static final double LEAST_S = 0.8;

  /** A shorter rest is a pause within one part. */
  private static final double BRIDGE_S = 1.5;

  /** Added before and after, so that the first slap has its approach. */
  private static final double AROUND_S = 1.0;

  /**
   * A part of a clip.
   *
   * @param from first frame
   * @param to after the last frame
   */
  public record FrameRange(int from, int to) {}

  private LivelyParts() {}

  /**
   * Returns the parts to measure, in order; never none.
   *
   * @param realPerMediaS real seconds in one media second
   */
  public static List<FrameRange> of(
      ClipFile clip, int from, int to, double realPerMediaS, Progress watch) throws ClipException {
    double[] times = clip.frames().timesS();
    if (to - from < 2 || (times[to - 1] - times[from]) * realPerMediaS <= SHORT_S) {
      return List.of(new FrameRange(from, to));
    }
    double[] change = changes(clip, from, to, watch);
    double[] lively = new double[change.length];
    for (int k = 0; k < lively.length; k++) {
      double sum = 0;
      int n = 0;
      for (int i = k; i >= 0 && near(times, from, i, k, realPerMediaS); i--, n++) {
        sum += change[i];
      }
      for (int i = k + 1; i < change.length && near(times, from, i, k, realPerMediaS); i++, n++) {
        sum += change[i];
      }
      lively[k] = sum / n;
    }
    List<FrameRange> found =
        parts(lively, LIVELY * Robust.quantile(lively, 0.98), times, from, realPerMediaS);
    return found.isEmpty() ? List.of(new FrameRange(from, Math.min(to, from + 2))) : found;
  }

  private static boolean near(double[] times, int from, int i, int k, double real) {
    return Math.abs(times[from + i] - times[from + k]) * real <= HALF_S;
  }

  /** Returns for each frame how much the liveliest cell differs from the frame before. */
  private static double[] changes(ClipFile clip, int from, int to, Progress watch)
      throws ClipException {
    double[] change = new double[to - from];
    try (FrameFeed feed = new FrameFeed(clip, from, to, LOOK_PX)) {
      int[] before = null;
      for (Picture picture = feed.next(); picture != null; picture = feed.next()) {
        if (watch.stopped()) {
          throw new StoppedException();
        }
        watch.at((picture.index() - from) / (double) (to - from), "looking for attempts");
        int[] now = green(picture.argb());
        if (before != null) {
          change[picture.index() - from] = liveliest(before, now, picture.width());
        }
        before = now;
      }
    }
    return change;
  }

  private static int[] green(int[] argb) {
    int[] green = new int[argb.length];
    for (int i = 0; i < argb.length; i++) {
      green[i] = argb[i] >> 8 & 255;
    }
    return green;
  }

  private static double liveliest(int[] before, int[] now, int width) {
    int cols = Math.max(1, width / CELL_PX);
    int rows = Math.max(1, now.length / width / CELL_PX);
    long[] sums = new long[cols * rows];
    for (int i = 0; i < now.length; i++) {
      int col = Math.min(cols - 1, i % width / CELL_PX);
      int row = Math.min(rows - 1, i / width / CELL_PX);
      sums[row * cols + col] += Math.abs(now[i] - before[i]);
    }
    long most = 0;
    for (long sum : sums) {
      most = Math.max(most, sum);
    }
    return most / (double) (CELL_PX * CELL_PX);
  }

  private static List<FrameRange> parts(
      double[] lively, double least, double[] times, int from, double real) {
    List<FrameRange> parts = new ArrayList<>();
    int start = -1;
    int last = -1;
    for (int k = 0; k <= lively.length; k++) {
      boolean moves = k < lively.length && lively[k] >= least;
      boolean over =
          start >= 0
              && (k == lively.length
                  || (times[from + k] - times[from + last]) * real > BRIDGE_S
                  || (times[from + k] - times[from + start]) * real > LONGEST_S);
      if (over) {
        if ((times[from + last] - times[from + start]) * real >= LEAST_S) {
          parts.add(widened(times, from, from + lively.length, from + start, from + last, real));
        }
        start = -1;
      }
      if (moves) {
        start = start < 0 ? k : start;
        last = k;
      }
    }
    return parts;
  }

  private static FrameRange widened(
      double[] times, int lowest, int highest, int first, int last, double real) {
    int from = first;
    int to = last;
    while (from > lowest && (times[first] - times[from - 1]) * real <= AROUND_S) {
      from--;
    }
    while (to + 1 < highest && (times[to + 1] - times[last]) * real <= AROUND_S) {
      to++;
    }
    return new FrameRange(from, to + 1);
  }
}
