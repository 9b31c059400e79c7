package palmturn.estimate.elbow;

import java.util.Arrays;
import java.util.List;
import palmturn.estimate.image.Similarity;
import palmturn.numbers.Robust;
import palmturn.trial.Point;

/**
 * The joint inside the arm: the centre of rotation of the forearm's fast motion, in the frame of
 * the skin around the elbow. A person points at skin a centimetre or two beside it, which moves
 * whenever the forearm turns though the joint does not.
 */
final class Hinge {
  /** Low-pass width, seconds: faster motion is the hand's oscillation, slower the elbow's own. */
  private static final double FAST_S = 0.15;

  /** Regularisation, radians of turning: with weaker motion the joint stays at the given place. */
  private static final double WEAK = 0.005;

  /**
   * Huber threshold, as a share of the median displacement: the whole arm moves where the hand
   * lands off the centre.
   */
  private static final double SMALL = 0.5;

  /** Rounds of reweighting: Palmturn's choice. */
  private static final int ROUNDS = 8;

  private Hinge() {}

  /**
   * Returns the joint's place.
   *
   * @param arm transform of the skin at each time, with the elbow's given place as origin
   * @param farthest largest distance from the given place
   */
  static Point of(double[] timesS, List<Similarity> arm, double farthest) {
    Fast motion =
        new Fast(
            fast(timesS, arm.stream().mapToDouble(Similarity::dx).toArray()),
            fast(timesS, arm.stream().mapToDouble(Similarity::dy).toArray()),
            fast(timesS, arm.stream().mapToDouble(Similarity::a).toArray()),
            fast(timesS, arm.stream().mapToDouble(Similarity::b).toArray()));
    double[] weights = new double[timesS.length];
    Arrays.fill(weights, 1);
    Point joint = motion.atRest(weights, farthest);
    for (int round = 0; round < ROUNDS; round++) {
      double[] lengths = motion.displacements(joint);
      double small = SMALL * Robust.median(lengths);
      for (int i = 0; i < lengths.length; i++) {
        weights[i] = lengths[i] > small ? small / lengths[i] : 1;
      }
      joint = motion.atRest(weights, farthest);
    }
    return joint;
  }

  /** The fast part of the arm's motion: shift, size and turn, as of a {@link Similarity}. */
  @SuppressWarnings("ArrayRecordComponent") // Made once and only read.
  private record Fast(double[] right, double[] down, double[] size, double[] turn) {
    /** Returns the place that stays at rest, by weighted least squares. */
    Point atRest(double[] weights, double farthest) {
      // At rest: right + size·x − turn·y = 0 and down + turn·x + size·y = 0.
      double square = WEAK * WEAK * weights.length;
      double x = 0;
      double y = 0;
      for (int i = 0; i < weights.length; i++) {
        square += weights[i] * (size[i] * size[i] + turn[i] * turn[i]);
        x -= weights[i] * (size[i] * right[i] + turn[i] * down[i]);
        y -= weights[i] * (size[i] * down[i] - turn[i] * right[i]);
      }
      double shrink = Math.min(1, farthest / Math.max(1e-9, Math.hypot(x, y) / square));
      return new Point(shrink * x / square, shrink * y / square);
    }

    /** Returns a place's displacement at each time. */
    double[] displacements(Point at) {
      double[] lengths = new double[right.length];
      for (int i = 0; i < lengths.length; i++) {
        lengths[i] =
            Math.hypot(
                right[i] + size[i] * at.x() - turn[i] * at.y(),
                down[i] + turn[i] * at.x() + size[i] * at.y());
      }
      return lengths;
    }
  }

  private static double[] fast(double[] timesS, double[] values) {
    double[] slow = TimedSmoothing.gaussian(timesS, values, FAST_S);
    double[] fast = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      fast[i] = values[i] - slow[i];
    }
    return fast;
  }
}
