package palmturn.trial;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The path of the elbow of the moving arm in the plane of the picture, relative to the trunk.
 *
 * @param maxCm largest distance from its place, null without a scale
 * @param maxForearms the same in forearm lengths, null where their length is not known
 * @param scale where the scale comes from, in words: {@code given}, {@code forearm}, {@code hand
 *     length, by landmarks}, {@code stature, estimated}, {@code none}
 * @param cmPerPixel of the upright picture, null without a scale
 * @param startXPx place of the elbow in the upright picture before the first slap, pixels
 * @param startYPx the same, downwards
 * @param timesS when it was seen; a gap is a stretch without times
 * @param rightPx way from its place, to the right of the picture, pixels
 * @param downPx way from its place, down the picture, pixels
 * @param distancePx length of that way, pixels
 * @param gaps stretches in which it was lost
 */
public record ElbowPath(
    @Nullable Double maxCm,
    @Nullable Double maxForearms,
    String scale,
    @Nullable Double cmPerPixel,
    @Nullable Double forearmPx,
    double startXPx,
    double startYPx,
    List<Double> timesS,
    List<Double> rightPx,
    List<Double> downPx,
    List<Double> distancePx,
    List<Estimate.Burst> gaps) {
  public ElbowPath {
    timesS = List.copyOf(timesS);
    rightPx = List.copyOf(rightPx);
    downPx = List.copyOf(downPx);
    distancePx = List.copyOf(distancePx);
    gaps = List.copyOf(gaps);
  }
}
