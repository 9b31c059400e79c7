package palmturn.trial;

import org.jspecify.annotations.Nullable;

/**
 * The points and lengths that a person has placed in a trial's picture, in pixels of the upright
 * picture; null where none was placed.
 *
 * @param handRegion where the moving hand is
 * @param elbow the moving arm's elbow before the first slap
 * @param trunk a place on the trunk before the first slap
 * @param scale two places a known length apart
 * @param target the centre of the target palm
 * @param extra unknown keys
 */
public record PlacedPoints(
    Estimate.@Nullable Region handRegion,
    @Nullable Point elbow,
    @Nullable Point trunk,
    @Nullable KnownLength scale,
    @Nullable Point target,
    Extra extra) {
  /** Nothing placed. */
  public static final PlacedPoints NONE =
      new PlacedPoints(null, null, null, null, null, Extra.NONE);

  /** Returns these with another moving hand's region. */
  public PlacedPoints withHandRegion(Estimate.@Nullable Region region) {
    return new PlacedPoints(region, elbow, trunk, scale, target, extra);
  }

  /** Returns these with another elbow. */
  public PlacedPoints withElbow(@Nullable Point spot) {
    return new PlacedPoints(handRegion, spot, trunk, scale, target, extra);
  }

  /** Returns these with another place on the trunk. */
  public PlacedPoints withTrunk(@Nullable Point spot) {
    return new PlacedPoints(handRegion, elbow, spot, scale, target, extra);
  }

  /** Returns these with another scale. */
  public PlacedPoints withScale(@Nullable KnownLength line) {
    return new PlacedPoints(handRegion, elbow, trunk, line, target, extra);
  }

  /** Returns these with another target palm. */
  public PlacedPoints withTarget(@Nullable Point spot) {
    return new PlacedPoints(handRegion, elbow, trunk, scale, spot, extra);
  }
}
