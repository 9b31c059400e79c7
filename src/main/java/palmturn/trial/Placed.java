package palmturn.trial;

import org.jspecify.annotations.Nullable;

/**
 * What a person has pointed at in the picture of a trial, in pixels of the upright picture; null
 * where nothing was pointed at.
 *
 * @param handRegion where the moving hand is
 * @param elbow the moving arm's elbow before the first slap
 * @param trunk a place on the trunk before the first slap
 * @param scale two places a known length apart
 * @param target the centre of the target palm
 * @param extra unknown keys
 */
public record Placed(
    Estimate.@Nullable Region handRegion,
    @Nullable Spot elbow,
    @Nullable Spot trunk,
    @Nullable Length scale,
    @Nullable Spot target,
    Extra extra) {
  /** Nothing pointed at. */
  public static final Placed NONE = new Placed(null, null, null, null, null, Extra.NONE);

  /**
   * A place.
   *
   * @param x from the left edge, pixels
   * @param y from the upper edge, pixels
   */
  public record Spot(double x, double y) {
    /** Returns the place some pixels to the right and down. */
    public Spot moved(double right, double down) {
      return new Spot(x + right, y + down);
    }
  }

  /**
   * A line of known length, at the distance of the moving elbow.
   *
   * @param from one end
   * @param to the other end
   * @param cm between them, above 0
   */
  public record Length(Spot from, Spot to, double cm) {
    public Length {
      if (!(cm > 0) || from.equals(to)) {
        throw new IllegalArgumentException(
            "a scale needs two places apart and a length above 0 cm, not %s cm".formatted(cm));
      }
    }
  }

  /** Returns these with another moving hand's region. */
  public Placed withHandRegion(Estimate.@Nullable Region region) {
    return new Placed(region, elbow, trunk, scale, target, extra);
  }

  /** Returns these with another elbow. */
  public Placed withElbow(@Nullable Spot spot) {
    return new Placed(handRegion, spot, trunk, scale, target, extra);
  }

  /** Returns these with another place on the trunk. */
  public Placed withTrunk(@Nullable Spot spot) {
    return new Placed(handRegion, elbow, spot, scale, target, extra);
  }

  /** Returns these with another scale. */
  public Placed withScale(@Nullable Length line) {
    return new Placed(handRegion, elbow, trunk, line, target, extra);
  }

  /** Returns these with another target palm. */
  public Placed withTarget(@Nullable Spot spot) {
    return new Placed(handRegion, elbow, trunk, scale, spot, extra);
  }
}
