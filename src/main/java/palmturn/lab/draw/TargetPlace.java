package palmturn.lab.draw;

/**
 * A place in the plane of the target palm, from the palm's middle.
 *
 * @param alongCm along the target arm, from its wrist to its fingertips
 * @param acrossCm across it, to the side of its little finger
 */
public record TargetPlace(double alongCm, double acrossCm) {
  static final TargetPlace MIDDLE = new TargetPlace(0, 0);

  private static final Vec ALONG = along();
  private static final Vec ACROSS = ALONG.cross(Pose.UP);

  private static Vec along() {
    Vec moving = Body.TARGET.minus(Body.ELBOW);
    return new Vec(-moving.x(), moving.y(), moving.z()).unit();
  }

  /** Returns the place straight under a point. */
  static TargetPlace under(Vec point) {
    Vec offset = point.minus(Body.TARGET);
    return new TargetPlace(offset.dot(ALONG), offset.dot(ACROSS));
  }

  /** Returns the offset from the middle of the target palm. */
  Vec offset() {
    return ALONG.times(alongCm).plus(ACROSS.times(acrossCm));
  }

  /** Returns the place at a share of the straight line to another. */
  TargetPlace interpolate(TargetPlace other, double share) {
    return new TargetPlace(
        alongCm + (other.alongCm - alongCm) * share,
        acrossCm + (other.acrossCm - acrossCm) * share);
  }
}
