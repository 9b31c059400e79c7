package palmturn.estimate.request;

/**
 * Two places in the upright full-size picture that are a known length apart, at the distance of the
 * moving elbow.
 *
 * @param x1 first place from the left edge, pixels
 * @param y1 first place from the upper edge, pixels
 * @param x2 second place from the left edge, pixels
 * @param y2 second place from the upper edge, pixels
 * @param cm between them
 */
public record Scale(double x1, double y1, double x2, double y2, double cm) {
  public Scale {
    if (!(cm > 0) || !(Math.hypot(x2 - x1, y2 - y1) > 0)) {
      throw new IllegalArgumentException(
          "a scale needs two places apart and a length above 0 cm, not %s cm".formatted(cm));
    }
  }

  /** Returns centimetres in one pixel of the upright full-size picture. */
  public double cmPerPixel() {
    return cm / Math.hypot(x2 - x1, y2 - y1);
  }
}
