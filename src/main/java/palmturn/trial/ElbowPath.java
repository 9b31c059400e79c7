package palmturn.trial;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The path of an elbow in the plane of the picture, relative to the trunk.
 *
 * @param maxCm largest displacement, null without a scale
 * @param maxForearms the same in forearm lengths, null where their length is not known
 * @param pictureScale how long a pixel is at the elbow
 * @param start place of the elbow in the upright picture before the first slap, pixels
 * @param samples displacements in the order of time, one for each frame in which it was seen
 * @param gaps stretches in which it was lost
 * @param gapEstimates displacements estimated in the gaps, as far as they can be
 */
public record ElbowPath(
    @Nullable Double maxCm,
    @Nullable Double maxForearms,
    PictureScale pictureScale,
    Point start,
    List<Sample> samples,
    List<Estimate.Stretch> gaps,
    List<GapEstimate> gapEstimates) {
  public ElbowPath {
    samples = List.copyOf(samples);
    gaps = List.copyOf(gaps);
    gapEstimates = List.copyOf(gapEstimates);
  }

  /**
   * The length of a pixel of the upright picture at the elbow.
   *
   * @param source in words: {@code given}, {@code forearm}, {@code hand length, by landmarks},
   *     {@code stature, estimated}, {@code none}
   * @param cmPerPixel null without a scale
   * @param forearmPx length of the forearm, pixels; null where it was not measured
   */
  public record PictureScale(
      String source, @Nullable Double cmPerPixel, @Nullable Double forearmPx) {}

  /**
   * The displacement of the elbow from its place at a moment.
   *
   * @param timeS media seconds
   * @param rightPx to the right of the picture, pixels
   * @param downPx down the picture, pixels
   * @param distancePx its length, pixels
   */
  public record Sample(double timeS, double rightPx, double downPx, double distancePx) {
    /** Returns the sample of a displacement. */
    public static Sample of(double timeS, double rightPx, double downPx) {
      return new Sample(timeS, rightPx, downPx, Math.hypot(rightPx, downPx));
    }
  }

  /** Returns how many centimetres a pixel is, null without a scale. */
  public @Nullable Double cmPerPixel() {
    return pictureScale.cmPerPixel();
  }

  /** Returns the length of the forearm in pixels, null where it was not measured. */
  public @Nullable Double forearmPx() {
    return pictureScale.forearmPx();
  }

  /**
   * Returns the sample nearest to a moment, the earlier of two; null without any.
   *
   * @param timeS media seconds
   */
  public @Nullable Sample nearest(double timeS) {
    return samples.stream()
        .min(Comparator.comparingDouble(sample -> Math.abs(sample.timeS() - timeS)))
        .orElse(null);
  }

  /** Returns this path with displacements estimated in its gaps. */
  public ElbowPath withGapEstimates(List<GapEstimate> estimates) {
    return new ElbowPath(maxCm, maxForearms, pictureScale, start, samples, gaps, estimates);
  }

  /**
   * A unit of length in the picture.
   *
   * @param name in words, in the plural
   * @param perPixel how many one pixel of the picture is
   * @param decimals worth showing
   */
  public record Unit(String name, double perPixel, int decimals) {
    /** Returns a number of pixels in it, without its name. */
    public String of(double px) {
      return String.format(Locale.ROOT, "%." + decimals + "f", px * perPixel);
    }
  }

  /** Returns the best unit that there is a scale for, null without any. */
  public @Nullable Unit unit() {
    if (cmPerPixel() != null) {
      return new Unit("cm", cmPerPixel(), 1);
    }
    return forearmPx() == null ? null : new Unit("forearm lengths", 1 / forearmPx(), 2);
  }

  /**
   * Returns the estimate in a gap that may lie farthest from the elbow's place: largest by one
   * standard deviation more than itself; null without any.
   */
  public @Nullable GapEstimate farthestGapEstimate() {
    return gapEstimates.stream()
        .max(Comparator.comparingDouble(each -> each.distancePx() + each.sdPx()))
        .orElse(null);
  }

  /**
   * The estimated displacement of an elbow at a moment at which it was lost.
   *
   * @param timeS media seconds
   * @param rightPx to the right of the picture, pixels
   * @param downPx down the picture, pixels
   * @param sdPx standard deviation of each of the two, pixels
   */
  public record GapEstimate(double timeS, double rightPx, double downPx, double sdPx) {
    /** Returns the length of the displacement, pixels. */
    public double distancePx() {
      return Math.hypot(rightPx, downPx);
    }
  }
}
