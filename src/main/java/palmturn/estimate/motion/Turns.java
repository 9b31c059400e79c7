package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import palmturn.numbers.Robust;
import palmturn.numbers.Signals;
import palmturn.numbers.SymmetricEigen;

/**
 * The directions of the hand's turns between neighbouring contacts, without a model of the hand.
 * The turn takes two values only, and mostly alternates: of all linear mixtures of the changes, it
 * is the one whose kurtosis is near 1 and whose neighbours differ.
 *
 * @param values for each gap about +1 or −1, about 0 without a turn; the overall sign is arbitrary
 * @param poses for each contact +1 or −1, the same for one side of the hand
 * @param noTurn for each gap, whether the hand did not turn in it
 * @param confidences for each contact 0 to 1, that its pose is right beside the others'
 * @param kurtosis of the values of gaps with a turn
 * @param autocorrelation of neighbouring ones
 * @param weights for each cell's motion, right then down: together they make the turn
 */
@SuppressWarnings("ArrayRecordComponent")
public // Made once and only read.
record Turns(
    double[] values,
    int[] poses,
    boolean[] noTurn,
    double[] confidences,
    double kurtosis,
    double autocorrelation,
    double[] weights) {
  /** Weight of the look beside the motion; chosen on drawn clips. */
  private static final double LOOK_WEIGHT = 0.7;

  /** Largest norm of a row, in medians: a contact off the centre would outweigh the others. */
  private static final double CLIP = 1.5;

  /** Principal components that the turn is mixed from; later ones are noise. */
  private static final int MOST_COMPONENTS = 4;

  /** Random mixtures tried: they cover four dimensions closely. */
  private static final int DIRECTIONS = 6000;

  /** Standard deviation assumed of a turn's value around +1 or −1; chosen on drawn clips. */
  private static final double SPREAD = 0.3;

  /** Largest cost of one odd turn, so that it doesn't flip all after it. */
  private static final double MOST_COST = 6;

  /** Cost of a contact without a turn, which is rarer than one with. */
  private static final double NO_TURN_COST = 1.5;

  /**
   * A contact without a turn is a double tap if it is this soon, in median intervals, or this
   * small, in median sizes: true ones were at 0.65 to 0.75 and at a half at most.
   */
  private static final double SHORT = 0.85;

  private static final double SMALL = 0.5;

  static Turns of(Blob blob, Poses contacts) {
    List<float[]> fields = new ArrayList<>();
    for (float[] turn : contacts.turns()) {
      fields.add(withoutShift(turn, blob));
    }
    List<float[]> changes = lookChanges(contacts.looks());
    double[][] gram = gram(fields, changes);
    double[] values = twoValued(gram);
    double scale = medianSize(values);
    for (int j = 0; j < values.length; j++) {
      values[j] /= scale;
    }
    Path path = Path.best(values);
    boolean[] noTurn = new boolean[values.length];
    double[] intervals = contacts.intervals();
    double typicalS = Robust.median(intervals);
    double[] sizes = contacts.turns().stream().mapToDouble(Poses::length).toArray();
    double typicalSize = Robust.median(sizes);
    for (int j = 0; j < values.length; j++) {
      noTurn[j] =
          path.poses[j] == path.poses[j + 1]
              && (intervals[j] < SHORT * typicalS || sizes[j] < SMALL * typicalSize);
    }
    double[] turned =
        IntStream.range(0, values.length)
            .filter(j -> !noTurn[j])
            .mapToDouble(j -> values[j])
            .toArray();
    return new Turns(
        values,
        path.poses,
        noTurn,
        path.confidences,
        Signals.kurtosis(turned),
        Signals.autocorrelation(turned, 1),
        weights(fields, values));
  }

  /** Subtracts the blob's mean motion: a contact off the centre only shifts the hand. */
  private static float[] withoutShift(float[] turn, Blob blob) {
    int n = blob.area();
    double all = 0;
    double u = 0;
    double v = 0;
    for (int i = 0; i < n; i++) {
      all += blob.weights()[i];
      u += blob.weights()[i] * turn[i];
      v += blob.weights()[i] * turn[n + i];
    }
    float[] out = new float[2 * n];
    for (int i = 0; i < n; i++) {
      float root = (float) Math.sqrt(blob.weights()[i] / all);
      out[i] = (float) ((turn[i] - u / all) * root);
      out[n + i] = (float) ((turn[n + i] - v / all) * root);
    }
    return out;
  }

  private static List<float[]> lookChanges(List<float[]> looks) {
    List<float[]> changes = new ArrayList<>();
    for (int j = 1; j < looks.size(); j++) {
      float[] change = looks.get(j).clone();
      for (int i = 0; i < change.length; i++) {
        change[i] -= looks.get(j - 1)[i];
      }
      changes.add(change);
    }
    return changes;
  }

  /** Returns the Gram matrix of the gaps, of motion and look together. */
  private static double[][] gram(List<float[]> fields, List<float[]> changes) {
    int n = fields.size();
    double[] fieldFactors = factors(fields, 1);
    double[] changeFactors = factors(changes, LOOK_WEIGHT);
    double[][] gram = new double[n][n];
    for (int a = 0; a < n; a++) {
      for (int b = a; b < n; b++) {
        gram[a][b] =
            fieldFactors[a] * fieldFactors[b] * product(fields.get(a), fields.get(b))
                + changeFactors[a] * changeFactors[b] * product(changes.get(a), changes.get(b));
        gram[b][a] = gram[a][b];
      }
    }
    return gram;
  }

  /** Returns each row's factor, which limits its norm to 1.5 times the median. */
  private static double[] factors(List<float[]> rows, double weight) {
    double[] sizes = rows.stream().mapToDouble(Poses::length).toArray();
    double median = Math.max(Robust.median(sizes), 1e-9);
    double[] factors = new double[sizes.length];
    for (int j = 0; j < sizes.length; j++) {
      factors[j] = weight / median * Math.min(1, CLIP * median / Math.max(sizes[j], 1e-9));
    }
    return factors;
  }

  private static double product(float[] a, float[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /**
   * Returns the mixture of principal components that is most like an alternating two-valued one.
   */
  private static double[] twoValued(double[][] gram) {
    int n = gram.length;
    SymmetricEigen eigen = SymmetricEigen.of(gram);
    int k = Math.max(2, Math.min(MOST_COMPONENTS, n / 4));
    double[] energy = new double[k];
    double total = 0;
    for (int c = 0; c < n; c++) {
      total += Math.max(0, eigen.values()[c]);
    }
    for (int c = 0; c < k; c++) {
      energy[c] = Math.max(0, eigen.values()[c]) / total;
    }
    Random random = new Random(1);
    double[] best = new double[n];
    double least = Double.POSITIVE_INFINITY;
    double[] direction = new double[k];
    double[] mix = new double[n];
    for (int r = 0; r < DIRECTIONS; r++) {
      double length = 0;
      for (int c = 0; c < k; c++) {
        direction[c] = random.nextGaussian() * Math.pow(energy[c] / energy[0], 0.25);
        length += direction[c] * direction[c];
      }
      double explained = 0;
      for (int c = 0; c < k; c++) {
        direction[c] /= Math.sqrt(length);
        explained += direction[c] * direction[c] * energy[c];
      }
      java.util.Arrays.fill(mix, 0);
      for (int c = 0; c < k; c++) {
        double[] vector = eigen.vectors()[c];
        for (int j = 0; j < n; j++) {
          mix[j] += direction[c] * vector[j];
        }
      }
      double cost =
          Signals.kurtosis(mix)
              + Signals.autocorrelation(mix, 1)
              - 0.5 * Math.log(Math.max(explained, 1e-12));
      if (cost < least) {
        least = cost;
        best = mix.clone();
      }
    }
    return best;
  }

  private static double medianSize(double[] values) {
    double[] size = new double[values.length];
    for (int j = 0; j < size.length; j++) {
      size[j] = Math.abs(values[j]);
    }
    return Math.max(Robust.median(size), 1e-12);
  }

  /** Returns the cells' weights whose sum over a gap's motion approximates that gap's value. */
  private static double[] weights(List<float[]> fields, double[] values) {
    double[] weights = new double[fields.get(0).length];
    double size = 0;
    for (int j = 0; j < values.length; j++) {
      for (int i = 0; i < weights.length; i++) {
        weights[i] += values[j] * fields.get(j)[i];
      }
    }
    for (double weight : weights) {
      size += weight * weight;
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= Math.sqrt(Math.max(size, 1e-12));
    }
    return weights;
  }

  /** The likeliest sequence of two poses, by dynamic programming (Viterbi 1967). */
  private record Path(int[] poses, double[] confidences) {

    static Path best(double[] values) {
      int n = values.length + 1;
      double[][] ahead = new double[n][2];
      double[][] behind = new double[n][2];
      int[][] from = new int[n][2];
      for (int j = 1; j < n; j++) {
        for (int to = 0; to < 2; to++) {
          double stay = ahead[j - 1][to] + cost(values[j - 1], to, to);
          double turn = ahead[j - 1][1 - to] + cost(values[j - 1], 1 - to, to);
          from[j][to] = turn <= stay ? 1 - to : to;
          ahead[j][to] = Math.min(stay, turn);
        }
      }
      for (int j = n - 2; j >= 0; j--) {
        for (int at = 0; at < 2; at++) {
          behind[j][at] =
              Math.min(
                  behind[j + 1][at] + cost(values[j], at, at),
                  behind[j + 1][1 - at] + cost(values[j], at, 1 - at));
        }
      }
      int[] poses = new int[n];
      double[] confidences = new double[n];
      int at = ahead[n - 1][0] <= ahead[n - 1][1] ? 0 : 1;
      for (int j = n - 1; j >= 0; j--) {
        poses[j] = at == 0 ? -1 : 1;
        double margin = ahead[j][1 - at] + behind[j][1 - at] - ahead[j][at] - behind[j][at];
        confidences[j] = 1 / (1 + Math.exp(-margin));
        at = from[j][at];
      }
      return new Path(poses, confidences);
    }

    private static double cost(double value, int from, int to) {
      double off = value - (to - from);
      double fit = Math.min(MOST_COST, off * off / (2 * SPREAD * SPREAD));
      return fit + (from == to ? NO_TURN_COST : 0);
    }
  }
}
