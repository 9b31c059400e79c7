package palmturn.estimate;

import java.util.List;

/**
 * The joint inside the arm: the place, carried along by the skin around the elbow, that the fast
 * turning of the forearm leaves at rest. A person points at skin, a centimetre or two beside it,
 * and that skin moves whenever the forearm turns though the joint does not.
 */
final class Hinge {
  /** Turning faster than this is the hand's up and down; slower motion is the elbow's own. */
  private static final double FAST_S = 0.15;

  /**
   * Turning, in radians, too weak to tell the joint from: then it stays where it was pointed at.
   */
  private static final double WEAK = 0.005;

  private Hinge() {}

  /**
   * Returns the joint's place.
   *
   * @param arm how the skin lies at each time, from the elbow's given place as origin
   * @param farthest longest way from the given place
   */
  static Point of(double[] timesS, List<Similarity> arm, double farthest) {
    double[] right = fast(timesS, arm.stream().mapToDouble(Similarity::dx).toArray());
    double[] down = fast(timesS, arm.stream().mapToDouble(Similarity::dy).toArray());
    double[] size = fast(timesS, arm.stream().mapToDouble(Similarity::a).toArray());
    double[] turn = fast(timesS, arm.stream().mapToDouble(Similarity::b).toArray());
    // At rest: right + size·x − turn·y = 0 and down + turn·x + size·y = 0, by least squares.
    double square = WEAK * WEAK * timesS.length;
    double x = 0;
    double y = 0;
    for (int i = 0; i < timesS.length; i++) {
      square += size[i] * size[i] + turn[i] * turn[i];
      x -= size[i] * right[i] + turn[i] * down[i];
      y -= size[i] * down[i] - turn[i] * right[i];
    }
    double shrink = Math.min(1, farthest / Math.max(1e-9, Math.hypot(x, y) / square));
    return new Point(shrink * x / square, shrink * y / square);
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
