package palmturn.estimate;

import java.util.Arrays;
import palmturn.clip.Sound;
import palmturn.numbers.Butterworth;
import palmturn.numbers.Stats;

/** Times the onset of a short sound on its waveform, from a place that is right to some 10 ms. */
final class Waveform {
  private static final double CUT_HZ = 1_000;
  private static final int ORDER = 2;
  private static final double RMS_S = 0.00025;

  /** Where the loudest moment is looked for, around the place given. */
  private static final double BEFORE_S = 0.015;

  private static final double AFTER_S = 0.020;

  /** Stretch before that, which tells how loud it was already. */
  private static final double QUIET_S = 0.020;

  private static final double QUIET_PERCENT = 20;
  private static final double OVER_QUIET = 3;
  private static final double LEAST_SHARE = 0.1;
  private static final double MOST_SHARE = 0.7;

  /** So long it must have been under the level before it counts as begun. */
  private static final double UNDER_S = 0.0005;

  /** More around what is read, for the filter to settle. */
  private static final double SETTLE_S = 0.005;

  private final Sound sound;
  private final Butterworth highPass;

  Waveform(Sound sound) {
    this.sound = sound;
    highPass = Butterworth.highPass(ORDER, CUT_HZ, sound.sampleRate());
  }

  /** Returns when the sound around a moment begins, seconds on the sound's clock. */
  double onsetS(double aboutS) {
    int rate = sound.sampleRate();
    int about = (int) Math.round((aboutS - sound.firstS()) * rate);
    int first = about - (int) Math.round((BEFORE_S + QUIET_S + SETTLE_S) * rate);
    double[] level = level(first, about + (int) Math.round((AFTER_S + SETTLE_S) * rate));

    int settle = (int) Math.round(SETTLE_S * rate);
    int searchFrom = settle + (int) Math.round(QUIET_S * rate);
    int searchTo = level.length - settle;
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
    return sound.timeS(first + begins);
  }

  /** Root mean square over a quarter of a millisecond of what is faster than the cut. */
  private double[] level(int from, int to) {
    double[] x = new double[to - from];
    float[] samples = sound.samples();
    for (int i = Math.max(from, 0); i < Math.min(to, samples.length); i++) {
      x[i - from] = samples[i];
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
