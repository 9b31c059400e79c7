package palmturn.lab.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One clip, measured.
 *
 * @param name the file's name
 * @param width of the upright picture, pixels
 * @param height of the upright picture, pixels
 * @param fps frames a second, from the median distance of frames
 * @param durationS how long it lasts
 * @param hasSound whether it has sound that is not silence
 * @param trueRateSlapsPerS null where there are no slaps
 * @param allSources by every source, one labelled slap given
 * @param pictureOnly by motion alone, the same slap given
 * @param elbow where both have one
 * @param estimateS time that the estimate by every source took
 * @param decodeS time that decoding every frame alone took
 * @param warnings what the estimate said
 */
public record ClipMeasurement(
    String name,
    int width,
    int height,
    double fps,
    double durationS,
    boolean hasSound,
    @Nullable Double trueRateSlapsPerS,
    EstimateComparison allSources,
    EstimateComparison pictureOnly,
    @Nullable ElbowComparison elbow,
    double estimateS,
    double decodeS,
    List<String> warnings) {

  boolean hasTrial() {
    return allSources.truth() > 0;
  }

  /** Fifty and more, so that a clip at 59.94 or with dropped frames belongs to the sixties. */
  boolean isFast() {
    return fps >= 50;
  }

  /** A clip of 25 or 30 frames a second. */
  boolean isSlow() {
    return fps >= 24 && fps < 50;
  }

  double timeOverLength() {
    return estimateS / durationS;
  }
}
