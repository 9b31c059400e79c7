package palmturn.estimate;

/**
 * A place in the upright full-size picture.
 *
 * @param x from the left edge, pixels
 * @param y from the upper edge, pixels
 */
public record Point(double x, double y) {}
