package palmturn.estimate.image;

import palmturn.trial.Point;

/**
 * Turn, size and shift of a picture against another: (x, y) to (a·x − b·y + dx, b·x + a·y + dy).
 *
 * @param a size × cosine of the turn
 * @param b size × sine of the turn
 * @param dx shift to the right, pixels
 * @param dy shift down, pixels
 */
public record Similarity(double a, double b, double dx, double dy) {
  public static final Similarity IDENTITY = new Similarity(1, 0, 0, 0);

  /** Returns a place transformed. */
  public Point apply(Point p) {
    return new Point(a * p.x() - b * p.y() + dx, b * p.x() + a * p.y() + dy);
  }

  /** Returns a place transformed by the inverse. */
  public Point applyInverse(Point p) {
    double square = a * a + b * b;
    double x = p.x() - dx;
    double y = p.y() - dy;
    return new Point((a * x + b * y) / square, (a * y - b * x) / square);
  }

  /** Returns this one carried out after another. */
  public Similarity after(Similarity first) {
    return new Similarity(
        a * first.a - b * first.b,
        b * first.a + a * first.b,
        a * first.dx - b * first.dy + dx,
        b * first.dx + a * first.dy + dy);
  }

  /** Returns the same for pictures with {@code factor} times as many pixels along a side. */
  public Similarity scaled(double factor) {
    return new Similarity(a, b, dx * factor, dy * factor);
  }

  /** Returns the inverse transform. */
  public Similarity inverse() {
    double square = a * a + b * b;
    double back = a / square;
    double turn = -b / square;
    return new Similarity(back, turn, -(back * dx - turn * dy), -(turn * dx + back * dy));
  }

  /** Returns the same as seen from another origin, in another unit. */
  public Similarity from(Point origin, double unitsPerPixel) {
    Point there = apply(origin);
    return new Similarity(
        a, b, (there.x() - origin.x()) * unitsPerPixel, (there.y() - origin.y()) * unitsPerPixel);
  }
}
