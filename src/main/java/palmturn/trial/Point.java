package palmturn.trial;

/**
 * A place in the upright full-size picture.
 *
 * @param x from the left edge, pixels
 * @param y from the upper edge, pixels
 */
public record Point(double x, double y) {
  /** Returns the place some pixels to the right and down. */
  public Point moved(double right, double down) {
    return new Point(x + right, y + down);
  }
}
