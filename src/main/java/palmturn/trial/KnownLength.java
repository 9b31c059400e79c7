package palmturn.trial;

/**
 * A line of known length in the upright full-size picture, at the distance of the moving elbow; it
 * gives the picture its scale.
 *
 * @param from one end
 * @param to the other end, elsewhere
 * @param cm between them, above 0
 */
public record KnownLength(Point from, Point to, double cm) {
  public KnownLength {
    if (!(cm > 0) || from.equals(to)) {
      throw new IllegalArgumentException(
          "a scale needs two places apart and a length above 0 cm, not %s cm".formatted(cm));
    }
  }

  /** Returns centimetres in one pixel. */
  public double cmPerPixel() {
    return cm / Math.hypot(to.x() - from.x(), to.y() - from.y());
  }
}
