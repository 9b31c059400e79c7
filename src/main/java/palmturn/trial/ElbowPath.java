package palmturn.trial;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
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
 * @param unseen where it is taken to have been in them, as far as that can be told
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
    List<Estimate.Burst> gaps,
    List<Unseen> unseen) {
  public ElbowPath {
    timesS = List.copyOf(timesS);
    rightPx = List.copyOf(rightPx);
    downPx = List.copyOf(downPx);
    distancePx = List.copyOf(distancePx);
    gaps = List.copyOf(gaps);
    unseen = List.copyOf(unseen);
  }

  /** Returns this path with where the elbow is taken to have been while it was lost. */
  public ElbowPath withUnseen(List<Unseen> taken) {
    return new ElbowPath(
        maxCm,
        maxForearms,
        scale,
        cmPerPixel,
        forearmPx,
        startXPx,
        startYPx,
        timesS,
        rightPx,
        downPx,
        distancePx,
        gaps,
        taken);
  }

  /**
   * What distances are told in.
   *
   * @param name in words, of more than one
   * @param perPixel how many one pixel of the picture is
   * @param decimals that are worth telling
   */
  public record Unit(String name, double perPixel, int decimals) {
    /** Returns a number of pixels in it, without its name. */
    public String of(double px) {
      return String.format(Locale.ROOT, "%." + decimals + "f", px * perPixel);
    }
  }

  /** Returns the best unit that there is a scale for, null without any. */
  public @Nullable Unit unit() {
    if (cmPerPixel != null) {
      return new Unit("cm", cmPerPixel, 1);
    }
    return forearmPx == null ? null : new Unit("forearm lengths", 1 / forearmPx, 2);
  }

  /**
   * Returns where it may have been farthest from its place while it was lost, by one standard
   * deviation more than it is taken to; null where nothing is told of that.
   */
  public @Nullable Unseen farthestUnseen() {
    return unseen.stream()
        .max(Comparator.comparingDouble(each -> each.distancePx() + each.sdPx()))
        .orElse(null);
  }

  /**
   * Where an elbow is taken to have been at a moment at which it was lost.
   *
   * @param timeS the moment
   * @param rightPx way from its place, to the right of the picture, pixels
   * @param downPx way from its place, down the picture, pixels
   * @param sdPx standard deviation of each of the two, pixels
   */
  public record Unseen(double timeS, double rightPx, double downPx, double sdPx) {
    /** Returns the length of the way, pixels. */
    public double distancePx() {
      return Math.hypot(rightPx, downPx);
    }
  }
}
