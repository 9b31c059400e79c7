package palmturn.estimate.hands;

import java.util.List;
import palmturn.numbers.Robust;

/**
 * A hand's 21 landmarks: 0 the wrist, then four each of thumb, index, middle, ring and little
 * finger, from the palm outwards.
 *
 * @param x to the right of the picture, pixels
 * @param y downwards, pixels
 * @param presence 0 to 1, that there is a hand that can be seen; falls with blur
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
public record HandMarks(double[] x, double[] y, double presence) {
  /** Number of landmarks of a hand. */
  static final int SIZE = 21;

  /** Numbers of the landmarks that are used, in the network's list. */
  static final int WRIST = 0;

  static final int INDEX = 5;
  static final int MIDDLE = 9;
  static final int RING = 13;
  static final int LITTLE = 17;

  /** Returns the x of the palm's middle, the midpoint of the wrist and the knuckles' mean. */
  double palmX() {
    return middle(x);
  }

  /** Returns the y of the palm's middle. */
  double palmY() {
    return middle(y);
  }

  private static double middle(double[] v) {
    return v[WRIST] / 2 + (v[INDEX] + v[MIDDLE] + v[RING] + v[LITTLE]) / 8;
  }

  /** Returns the length from the wrist to the middle finger's knuckle, pixels. */
  public double palmLength() {
    return Math.hypot(x[MIDDLE] - x[WRIST], y[MIDDLE] - y[WRIST]);
  }

  /** Returns the wrist's x, pixels. */
  public double wristX() {
    return x[WRIST];
  }

  /** Returns the direction the hand points in, radians clockwise from the right. */
  double direction() {
    return Math.atan2(y[MIDDLE] - y[WRIST], x[MIDDLE] - x[WRIST]);
  }

  /**
   * Returns a measure of how much of its palm or back a hand shows, the sine of the angle at the
   * wrist from the index finger's to the little finger's knuckle. Above 0 where a left hand shows
   * its palm and a right hand its back; near 0 edge on.
   */
  double face() {
    double ix = x[INDEX] - x[WRIST];
    double iy = y[INDEX] - y[WRIST];
    double lx = x[LITTLE] - x[WRIST];
    double ly = y[LITTLE] - y[WRIST];
    double size = Math.hypot(ix, iy) * Math.hypot(lx, ly);
    return size > 0 ? (ix * ly - iy * lx) / size : 0;
  }

  /**
   * Returns the palm's apparent width: from the index finger's to the little finger's knuckle,
   * perpendicular to the hand's direction, pixels. Its sign is that of {@link #face}.
   */
  double across() {
    double alongX = x[MIDDLE] - x[WRIST];
    double alongY = y[MIDDLE] - y[WRIST];
    double length = Math.hypot(alongX, alongY);
    double square = alongX * (y[LITTLE] - y[INDEX]) - alongY * (x[LITTLE] - x[INDEX]);
    return length > 0 ? square / length : 0;
  }

  /** Returns the distance of two palms' middles in palm lengths of this one. */
  double palmsTo(HandMarks other) {
    return Math.hypot(palmX() - other.palmX(), palmY() - other.palmY()) / Math.max(1, palmLength());
  }

  /** Returns the angle between two hands' directions, radians, 0 to π. */
  double angleTo(HandMarks other) {
    return angle(direction(), other.direction());
  }

  static double angle(double one, double other) {
    double d = one - other;
    return Math.abs(Math.atan2(Math.sin(d), Math.cos(d)));
  }

  /** Returns the median of every landmark's place, and of the presence. */
  static HandMarks median(List<HandMarks> all) {
    double[] x = new double[SIZE];
    double[] y = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      int at = i;
      x[i] = Robust.median(all.stream().mapToDouble(each -> each.x[at]).toArray());
      y[i] = Robust.median(all.stream().mapToDouble(each -> each.y[at]).toArray());
    }
    return new HandMarks(
        x, y, Robust.median(all.stream().mapToDouble(HandMarks::presence).toArray()));
  }
}
