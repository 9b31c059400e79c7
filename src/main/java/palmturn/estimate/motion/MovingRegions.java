package palmturn.estimate.motion;

import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import palmturn.estimate.image.Footage;
import palmturn.estimate.image.Mats;
import palmturn.trial.Estimate;

/** The regions of the picture in which something oscillates. */
public final class MovingRegions {
  /** Window whose mean velocity is subtracted: several slaps. */
  private static final double CHUNK_S = 1;

  /** Standard deviation as a share of the longer side: joins the cells of one hand. */
  private static final double BLUR = 0.012;

  /** A region ends at this share of its highest energy. */
  private static final double EDGE = 0.25;

  /** Regions under this share of the liveliest are noise. */
  private static final double NEXT = 0.15;

  /** Two hands, a head and one thing more. */
  private static final int MOST = 4;

  private MovingRegions() {}

  /**
   * Returns each cell's motion energy, cells²/s²: the variance of its velocity within a second,
   * over the liveliest two seconds, since a trial may fill little of a clip.
   */
  public static float[] motionEnergy(Footage footage) {
    int cells = footage.width() * footage.height();
    List<float[]> chunks = new ArrayList<>();
    int k = 1;
    while (k < footage.frames()) {
      int end = k;
      while (end < footage.frames() && footage.timesS()[end] - footage.timesS()[k] < CHUNK_S) {
        end++;
      }
      if (end - k >= 4) {
        chunks.add(variance(footage, k, end, cells));
      }
      k = end;
    }
    float[] most = new float[cells];
    for (int c = 0; c < chunks.size(); c++) {
      float[] now = chunks.get(c);
      float[] next = chunks.get(Math.min(c + 1, chunks.size() - 1));
      for (int i = 0; i < cells; i++) {
        most[i] = Math.max(most[i], (now[i] + next[i]) / 2);
      }
    }
    return blurred(most, footage.width(), footage.height());
  }

  private static float[] variance(Footage footage, int from, int to, int cells) {
    double[] sumU = new double[cells];
    double[] sumV = new double[cells];
    double[] squares = new double[cells];
    for (int k = from; k < to; k++) {
      double dt = footage.timesS()[k] - footage.timesS()[k - 1];
      float[] right = footage.right().get(k);
      float[] down = footage.down().get(k);
      for (int i = 0; i < cells; i++) {
        double u = right[i] / dt;
        double v = down[i] / dt;
        sumU[i] += u;
        sumV[i] += v;
        squares[i] += u * u + v * v;
      }
    }
    int n = to - from;
    float[] variance = new float[cells];
    for (int i = 0; i < cells; i++) {
      double mean = (sumU[i] * sumU[i] + sumV[i] * sumV[i]) / n;
      variance[i] = (float) Math.max(0, (squares[i] - mean) / n);
    }
    return variance;
  }

  private static float[] blurred(float[] map, int width, int height) {
    double sigma = BLUR * Math.max(width, height);
    try (Mat mat = Mats.field(map, width, height);
        Size automatic = new Size(0, 0)) {
      GaussianBlur(mat, mat, automatic, sigma);
      return Mats.floats(mat);
    }
  }

  /** Returns the liveliest parts of a map, each connected, the liveliest first. */
  public static List<Blob> blobs(float[] liveliness, int width) {
    float[] left = liveliness.clone();
    List<Blob> found = new ArrayList<>();
    float first = 0;
    while (found.size() < MOST) {
      int top = top(left);
      if (left[top] <= 0 || left[top] < NEXT * first) {
        break;
      }
      first = Math.max(first, left[top]);
      int[] cells = connected(left, width, top, (float) EDGE * left[top]);
      found.add(blob(liveliness, width, cells));
      for (int cell : cells) {
        left[cell] = 0;
      }
    }
    return found;
  }

  /** Returns the lively part of a rectangle, given in grid cells. */
  static Blob within(float[] liveliness, int width, Estimate.Region box) {
    float[] inside = new float[liveliness.length];
    float most = 0;
    for (int i = 0; i < inside.length; i++) {
      double x = i % width - box.x();
      double y = i / width - box.y();
      if (x >= 0 && y >= 0 && x < box.width() && y < box.height()) {
        inside[i] = liveliness[i];
        most = Math.max(most, inside[i]);
      }
    }
    float edge = (float) (EDGE * most);
    int[] cells = new int[inside.length];
    int n = 0;
    for (int i = 0; i < inside.length; i++) {
      if (inside[i] > 0 && inside[i] >= edge) {
        cells[n++] = i;
      }
    }
    return blob(liveliness, width, Arrays.copyOf(cells, n));
  }

  private static Blob blob(float[] liveliness, int width, int[] cells) {
    float[] weights = new float[cells.length];
    for (int i = 0; i < cells.length; i++) {
      weights[i] = liveliness[cells[i]];
    }
    return new Blob(width, cells, weights);
  }

  private static int top(float[] map) {
    int top = 0;
    for (int i = 1; i < map.length; i++) {
      if (map[i] > map[top]) {
        top = i;
      }
    }
    return top;
  }

  private static int[] connected(float[] map, int width, int start, float above) {
    boolean[] seen = new boolean[map.length];
    ArrayDeque<Integer> open = new ArrayDeque<>(List.of(start));
    seen[start] = true;
    int[] cells = new int[map.length];
    int n = 0;
    while (!open.isEmpty()) {
      int cell = open.removeFirst();
      cells[n++] = cell;
      int x = cell % width;
      int[] beside = {
        x > 0 ? cell - 1 : -1, x < width - 1 ? cell + 1 : -1, cell - width, cell + width
      };
      for (int next : beside) {
        if (next >= 0 && next < map.length && !seen[next] && map[next] > above) {
          seen[next] = true;
          open.add(next);
        }
      }
    }
    int[] sorted = Arrays.copyOf(cells, n);
    Arrays.sort(sorted);
    return sorted;
  }
}
