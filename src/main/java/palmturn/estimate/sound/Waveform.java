package palmturn.estimate.sound;

import java.util.Arrays;
import palmturn.clip.SoundTrack;
import palmturn.numbers.Butterworth;
import palmturn.numbers.Stats;

/**
 * Times the onset of a short sound on its waveform, from a place that is right to some 10 ms. From
 * the loudest moment it walks back to where the sound first stands out; the line through the
 * moments at which a tenth and a half of the energy of the next 4 ms has arrived then leads back to
 * the onset. The first alone would be early by the smear that a codec puts before a sharp sound.
 */
final class Waveform {
  /** Cutoff and order of the high-pass: takes out rumble and most of a voice. */
  private static final double CUT_HZ = 1_000;

  private static final int ORDER = 2;

  /** Width of the running level: a quarter of a millisecond. */
  private static final double RMS_S = 0.00025;

  /** Search window for the loudest moment, before the place given. */
  private static final double BEFORE_S = 0.015;

  /** The same after it. */
  private static final double AFTER_S = 0.020;

  /** Stretch before that, which tells how loud it was already. */
  private static final double QUIET_S = 0.020;

  /** Percentile of that stretch that stands for quiet. */
  private static final double QUIET_PERCENT = 20;

  /** A sound begins over this times the quiet, but not under or over these shares of its peak. */
  private static final double OVER_QUIET = 3;

  private static final double LEAST_SHARE = 0.1;
  private static final double MOST_SHARE = 0.7;

  /** So long it must have been under the level before it counts as begun. */
  private static final double UNDER_S = 0.0005;

  /** The energy from before to after the place found is what the time is read off. */
  private static final double RISE_BEFORE_S = 0.002;

  /** The same after it. */
  private static final double RISE_AFTER_S = 0.004;

  /** Shares of the energy at which the time is read; see above. */
  private static final double FIRST_ENERGY = 0.1;

  private static final double LAST_ENERGY = 0.5;

  /** A slap has spent much of its energy so soon; a puff of air or a voice swells. */
  private static final double SOON_S = 0.006;

  /** Time over which all of a slap's energy is taken. */
  private static final double LATE_S = 0.025;

  /** More around what is read, for the filter to settle. */
  private static final double SETTLE_S = 0.005;

  private final SoundTrack.Pass sound;
  private final Butterworth highPass;

  Waveform(SoundTrack.Pass sound) {
    this.sound = sound;
    highPass = Butterworth.highPass(ORDER, CUT_HZ, sound.sampleRate());
  }

  /**
   * The beginning of a short sound.
   *
   * @param timeS on the sound's clock, seconds
   * @param level its loudest quarter of a millisecond, root mean square over 1 kHz, full scale 1
   * @param sharpness share of the energy of 25 ms that came in the first 6 ms: of 447 slaps and
   *     strikes 99 in 100 were over 0.2, and one puff of air in 20
   */
  record Beginning(double timeS, double level, double sharpness) {}

  /**
   * Returns the beginning of the sound around a moment, seconds on the sound's clock; no later call
   * may ask for an earlier one.
   */
  Beginning at(double aboutS) {
    int rate = sound.sampleRate();
    int about = (int) Math.round((aboutS - sound.firstS()) * rate);
    int first = about - (int) Math.round((BEFORE_S + QUIET_S + SETTLE_S) * rate);
    double[] level = level(first, about + (int) Math.round((AFTER_S + LATE_S + SETTLE_S) * rate));

    int settle = (int) Math.round(SETTLE_S * rate);
    int searchFrom = settle + (int) Math.round(QUIET_S * rate);
    int searchTo = level.length - settle - (int) Math.round(LATE_S * rate);
    int peak = searchFrom;
    for (int i = searchFrom; i < searchTo; i++) {
      peak = level[i] > level[peak] ? i : peak;
    }
    Double quiet = Stats.percentile(Arrays.copyOfRange(level, settle, searchFrom), QUIET_PERCENT);
    double over = quiet == null ? 0 : OVER_QUIET * quiet;
    double threshold =
        Math.min(MOST_SHARE * level[peak], Math.max(LEAST_SHARE * level[peak], over));

    int under = (int) Math.max(1, Math.round(UNDER_S * rate));
    int begins = peak;
    for (int i = peak; i >= settle && begins - i <= under; i--) {
      if (level[i] >= threshold) {
        begins = i;
      }
    }
    double noise = quiet == null ? 0 : quiet * quiet;
    double timeS = sound.firstS() + (first + energyOnset(level, begins, noise)) / rate;
    return new Beginning(timeS, level[peak], sharp(level, begins, noise));
  }

  /** Returns where the energy around a place sets in; in samples. */
  private double energyOnset(double[] level, int about, double noise) {
    int from = Math.max(0, about - (int) Math.round(RISE_BEFORE_S * sound.sampleRate()));
    int to = Math.min(level.length, about + (int) Math.round(RISE_AFTER_S * sound.sampleRate()));
    double[] energy = new double[to - from + 1];
    for (int i = from; i < to; i++) {
      energy[i - from + 1] = energy[i - from] + Math.max(0, level[i] * level[i] - noise);
    }
    double all = energy[energy.length - 1];
    if (all <= 0) {
      return about;
    }
    double first = reaches(energy, FIRST_ENERGY * all);
    double last = reaches(energy, LAST_ENERGY * all);
    return from + first - (last - first) * FIRST_ENERGY / (LAST_ENERGY - FIRST_ENERGY);
  }

  private double sharp(double[] level, int from, double noise) {
    double first = 0;
    double all = 0;
    int soon = from + (int) Math.round(SOON_S * sound.sampleRate());
    int late = Math.min(level.length, from + (int) Math.round(LATE_S * sound.sampleRate()));
    for (int i = from; i < late; i++) {
      double energy = Math.max(0, level[i] * level[i] - noise);
      first += i < soon ? energy : 0;
      all += energy;
    }
    return all == 0 ? 0 : first / all;
  }

  private static double reaches(double[] rising, double value) {
    int i = 1;
    while (i < rising.length - 1 && rising[i] < value) {
      i++;
    }
    return i - 1 + (value - rising[i - 1]) / (rising[i] - rising[i - 1]);
  }

  /** Root mean square over a quarter of a millisecond of what is faster than the cut. */
  private double[] level(int from, int to) {
    double[] x = new double[to - from];
    SoundTrack.Held held = sound.hold(from, to);
    for (int i = Math.max(from, 0); i < Math.min(to, held.end()); i++) {
      x[i - from] = held.samples()[i - held.base()];
    }
    double[] fast = highPass.filtfilt(x);
    int width = (int) Math.max(1, Math.round(RMS_S * sound.sampleRate()));
    double[] level = new double[x.length];
    for (int i = 0; i < level.length; i++) {
      double sum = 0;
      int n = 0;
      for (int k = Math.max(0, i - width / 2);
          k < Math.min(fast.length, i - width / 2 + width);
          k++) {
        sum += fast[k] * fast[k];
        n++;
      }
      level[i] = Math.sqrt(sum / n);
    }
    return level;
  }
}
