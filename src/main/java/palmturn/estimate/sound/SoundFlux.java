package palmturn.estimate.sound;

import java.util.Arrays;
import palmturn.clip.SoundTrack;
import palmturn.numbers.Spectrogram;
import palmturn.numbers.Stats;

/**
 * Spectral flux of a sound, its increase within the last 10 ms over 1 to 12 kHz, of ln(1 +
 * |X|/(3n)) with n the noise floor around that moment. A slap is short and broad and lifts every
 * bin; a tone or a vowel lifts few; what is as loud as ever lifts none.
 *
 * @param startS time of the first value
 * @param hopS distance of two values, seconds
 * @param values mean rise over the bins, 0 or more, in nepers
 * @param bins over how many
 */
@SuppressWarnings("ArrayRecordComponent") // Inside this room only.
record SoundFlux(double startS, double hopS, double[] values, int bins) {
  /** The flux of steady noise strays from its median by less, over {@link #NOISE_BINS}. */
  private static final double NOISE_HEIGHT = 0.08;

  /** Bins from 1 to 12 kHz at 48 kHz. */
  private static final int NOISE_BINS = 118;

  /** Length of the window, of Hann, and its hop. */
  private static final double WINDOW_S = 512 / 48_000.0;

  private static final double HOP_S = 0.0025;

  /** Lag of the difference in values: 10 ms. */
  private static final int BACK = 4;

  /** Slaps are broad; under this lie voices and rumble, over it little of any phone's sound. */
  private static final double LOW_HZ = 1_000;

  private static final double HIGH_HZ = 12_000;

  /** The floor is taken over this much before and after, each anew after {@link #FLOOR_STEP_S}. */
  private static final double FLOOR_HALF_S = 1.5;

  /** Step at which the floor is taken anew. */
  private static final double FLOOR_STEP_S = 0.5;

  /** Percentile of the magnitudes that stands for the floor: slaps fill less than the rest. */
  private static final double FLOOR_PERCENT = 30;

  /**
   * White noise under this level, full scale 1, is as good as none: half of the last of 16 bits.
   */
  private static final double LEAST_NOISE = 0.5 / 32_768;

  /** Returns the flux of a stretch of a sound; what lies outside the sound counts as its floor. */
  static SoundFlux of(SoundTrack.Pass sound, double fromS, double toS) {
    int rate = sound.sampleRate();
    Spectrogram spectrogram = new Spectrogram((int) Math.max(16, Math.round(WINDOW_S * rate)));
    double binHz = rate / (double) spectrogram.size();
    int low = (int) Math.ceil(LOW_HZ / binHz);
    int high = (int) Math.floor(Math.min(HIGH_HZ, 0.45 * rate) / binHz) + 1;
    int hop = (int) Math.max(1, Math.round(HOP_S * rate));
    int first = (int) Math.round((Math.max(fromS, sound.firstS()) - sound.firstS()) * rate);
    int around = (int) (FLOOR_HALF_S * rate) + spectrogram.size();

    double[] values = new double[1 << 12];
    double[][] ring = new double[BACK + 1][];
    int floorEvery = (int) Math.max(1, Math.round(FLOOR_STEP_S / HOP_S));
    double floor = 0;
    int k = -BACK;
    for (; ; k++) {
      int at = first + k * hop;
      SoundTrack.Held held = sound.hold(at - around, at + around);
      double endS = held.ended() ? Math.min(toS, sound.timeS(held.end() - 1)) : toS;
      if (k >= Math.max(0, Math.floor((endS - sound.timeS(first)) * rate / hop) + 1)) {
        break;
      }
      if (k == -BACK || k % floorEvery == 0) {
        floor = floor(held, spectrogram, at, rate, low, high);
      }
      double[] now =
          at < 0
              ? new double[0]
              : spectrogram.magnitudes(held.samples(), at - held.base(), low, high);
      ring[(k + BACK) % ring.length] = now;
      if (k >= 0) {
        values = k < values.length ? values : Arrays.copyOf(values, 2 * values.length);
        values[k] = rise(ring[k % ring.length], now, floor);
      }
    }
    return new SoundFlux(
        sound.timeS(first), hop / (double) rate, Arrays.copyOf(values, Math.max(0, k)), high - low);
  }

  private static double rise(double[] before, double[] now, double floor) {
    double sum = 0;
    for (int bin = 0; bin < now.length; bin++) {
      double was = before.length == 0 ? floor : before[bin];
      sum += Math.max(0, Math.log1p(now[bin] / (3 * floor)) - Math.log1p(was / (3 * floor)));
    }
    return sum / now.length;
  }

  private static double floor(
      SoundTrack.Held held, Spectrogram spectrogram, int at, int rate, int low, int high) {
    int half = (int) (FLOOR_HALF_S * rate);
    int step = Math.max(1, rate / 50);
    int from = Math.max(0, at - half);
    int to = Math.min(held.end(), at + half);
    double least = LEAST_NOISE * spectrogram.noiseGain();
    double[] all = new double[Math.max(0, (to - from + step - 1) / step) * (high - low)];
    int used = 0;
    for (int centre = from; centre < to; centre += step) {
      double[] magnitudes = spectrogram.magnitudes(held.samples(), centre - held.base(), low, high);
      System.arraycopy(magnitudes, 0, all, used, magnitudes.length);
      used += magnitudes.length;
    }
    Double floor = Stats.percentile(all, FLOOR_PERCENT);
    return floor == null ? least : Math.max(floor, least);
  }

  /** Returns a height over the median that steady noise doesn't reach. */
  double leastHeight() {
    return NOISE_HEIGHT * Math.sqrt(NOISE_BINS / (double) bins);
  }

  double timeS(int index) {
    return startS + index * hopS;
  }
}
