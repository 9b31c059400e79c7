package palmturn.film;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A choice of what is kept of a clip's sound. */
@FunctionalInterface
public interface SoundFilter {
  /** Keeps all. */
  SoundFilter WHOLE = (samples, rate) -> samples;

  /** Keeps no sound track. */
  SoundFilter NONE = (samples, rate) -> null;

  /** Length of what is kept around a moment, seconds: too short for a syllable. */
  double AROUND_S = 0.04;

  /** Length over which it swells and fades, so that it begins and ends without a click, seconds. */
  double FADE_S = 0.004;

  /**
   * Returns what is kept of samples, null for no track.
   *
   * @param samples of one channel, from 0 s on
   * @param rate samples a second
   */
  float @Nullable [] of(float[] samples, int rate);

  /** Returns a filter that keeps {@link #AROUND_S} around each of some moments, in seconds. */
  static SoundFilter around(List<Double> timesS) {
    return (samples, rate) -> {
      float[] kept = new float[samples.length];
      for (double timeS : timesS) {
        int middle = (int) Math.round(timeS * rate);
        int half = (int) Math.round(AROUND_S / 2 * rate);
        for (int i = Math.max(0, middle - half); i < Math.min(kept.length, middle + half); i++) {
          double inside = (half - Math.abs(i - middle)) / (FADE_S * rate);
          float faded = (float) (samples[i] * Math.min(1, inside));
          // Where two overlap, the louder is the one less faded.
          kept[i] = Math.abs(faded) > Math.abs(kept[i]) ? faded : kept[i];
        }
      }
      return kept;
    };
  }
}
