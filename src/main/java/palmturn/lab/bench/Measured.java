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
 * @param all by every source, one labelled slap given
 * @param picture by motion alone, the same slap given
 * @param elbow where both have one
 * @param estimateS time that the estimate by every source took
 * @param decodeS time that decoding every frame alone took
 * @param warnings what the estimate said
 */
public record Measured(
    String name,
    int width,
    int height,
    double fps,
    double durationS,
    boolean hasSound,
    @Nullable Double trueRateSlapsPerS,
    Comparison all,
    Comparison picture,
    @Nullable ElbowComparison elbow,
    double estimateS,
    double decodeS,
    List<String> warnings) {

  boolean hasTrial() {
    return all.truth() > 0;
  }

  /** Fifty and more, so that a clip at 59.94 or with dropped frames belongs to the sixties. */
  boolean fast() {
    return fps >= 50;
  }

  /** A clip of 25 or 30 frames a second. */
  boolean slow() {
    return fps >= 24 && fps < 50;
  }

  double ofLength() {
    return estimateS / durationS;
  }
}
