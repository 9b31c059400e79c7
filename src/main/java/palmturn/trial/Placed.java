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
    @Nullable Point elbow,
    @Nullable Point trunk,
    @Nullable KnownLength scale,
    @Nullable Point target,
    Extra extra) {
  /** Nothing pointed at. */
  public static final Placed NONE = new Placed(null, null, null, null, null, Extra.NONE);

  /** Returns these with another moving hand's region. */
  public Placed withHandRegion(Estimate.@Nullable Region region) {
    return new Placed(region, elbow, trunk, scale, target, extra);
  }

  /** Returns these with another elbow. */
  public Placed withElbow(@Nullable Point spot) {
    return new Placed(handRegion, spot, trunk, scale, target, extra);
  }

  /** Returns these with another place on the trunk. */
  public Placed withTrunk(@Nullable Point spot) {
    return new Placed(handRegion, elbow, spot, scale, target, extra);
  }

  /** Returns these with another scale. */
  public Placed withScale(@Nullable KnownLength line) {
    return new Placed(handRegion, elbow, trunk, line, target, extra);
  }

  /** Returns these with another target palm. */
  public Placed withTarget(@Nullable Point spot) {
    return new Placed(handRegion, elbow, trunk, scale, spot, extra);
  }
}
