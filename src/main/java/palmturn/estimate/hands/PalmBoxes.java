package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Turns the palm detector's raw numbers into palms: anchors of two grids over the picture, and
 * overlapping boxes merged, weighted by score.
 */
final class PalmBoxes {
  /** Pixels along a side of what the detector looks at. */
  static final int INPUT_PX = 192;

  /** Numbers a box: centre, size, seven points. */
  private static final int PER_BOX = 18;

  /** Points that the detector gives with each box. */
  private static final int POINTS = 7;

  /** Boxes that overlap by more are one palm: the detector's published value. */
  private static final double SAME_IOU = 0.3;

  /** Centres of the detector's cells, by its published layout. */
  private static final double[] ANCHORS = anchors();

  private PalmBoxes() {}

  private static double[] anchors() {
    List<Double> all = new ArrayList<>();
    int[][] grids = {{INPUT_PX / 8, 2}, {INPUT_PX / 16, 6}};
    for (int[] grid : grids) {
      for (int cell = 0; cell < grid[0] * grid[0]; cell++) {
        for (int k = 0; k < grid[1]; k++) {
          all.add((cell % grid[0] + 0.5) / grid[0]);
          all.add((cell / grid[0] + 0.5) / grid[0]);
        }
      }
    }
    return all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Returns the palms, best first.
   *
   * @param boxes the detector's boxes, in its own pixels from each anchor
   * @param scores before the logistic curve
   * @param least smallest score
   * @param side longer side of the picture, pixels
   * @param left pixels that were added at the left to make it square
   * @param top pixels that were added at the top
   */
  static List<PalmDetection> palms(
      float[] boxes, float[] scores, double least, double side, double left, double top) {
    List<Integer> order =
        IntStream.range(0, scores.length)
            .filter(i -> logistic(scores[i]) >= least)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> -scores[i]))
            .toList();
    List<Integer> open = new ArrayList<>(order);
    List<PalmDetection> palms = new ArrayList<>();
    while (!open.isEmpty()) {
      int first = open.get(0);
      double[] best = box(boxes, first);
      // The best is one of them even where its box has no size.
      List<Integer> same =
          open.stream().filter(i -> i == first || overlap(best, box(boxes, i)) > SAME_IOU).toList();
      double[] mean = new double[PER_BOX];
      double sum = 0;
      for (int i : same) {
        double weight = logistic(scores[i]);
        double[] each = box(boxes, i);
        for (int k = 0; k < PER_BOX; k++) {
          mean[k] += weight * each[k];
        }
        sum += weight;
      }
      for (int k = 0; k < PER_BOX; k++) {
        mean[k] /= sum;
      }
      palms.add(palm(logistic(scores[first]), mean, side, left, top));
      open.removeAll(same);
    }
    return palms;
  }

  private static PalmDetection palm(
      double score, double[] box, double side, double left, double top) {
    double[] x = new double[POINTS];
    double[] y = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      x[i] = box[4 + 2 * i] * side - left;
      y[i] = box[5 + 2 * i] * side - top;
    }
    return new PalmDetection(
        score, box[0] * side - left, box[1] * side - top, box[2] * side, box[3] * side, x, y);
  }

  /** Returns a box and its points as shares of the square. */
  private static double[] box(float[] boxes, int i) {
    double[] box = new double[PER_BOX];
    for (int k = 0; k < PER_BOX; k++) {
      box[k] = boxes[PER_BOX * i + k] / INPUT_PX;
      if (k != 2 && k != 3) {
        box[k] += ANCHORS[2 * i + k % 2];
      }
    }
    return box;
  }

  private static double overlap(double[] a, double[] b) {
    double across = along(a, b, 0);
    double down = along(a, b, 1);
    double both = Math.max(0, across) * Math.max(0, down);
    double either = a[2] * a[3] + b[2] * b[3] - both;
    return either > 0 ? both / either : 0;
  }

  private static double along(double[] a, double[] b, int axis) {
    return Math.min(a[axis] + a[axis + 2] / 2, b[axis] + b[axis + 2] / 2)
        - Math.max(a[axis] - a[axis + 2] / 2, b[axis] - b[axis + 2] / 2);
  }

  static double logistic(double v) {
    return 1 / (1 + Math.exp(-v));
  }
}
