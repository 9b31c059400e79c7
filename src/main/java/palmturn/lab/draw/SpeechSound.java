package palmturn.lab.draw;

import java.util.Random;

/**
 * Talk without words: syllables of a buzzing voice through three moving resonances, some begun with
 * a hiss or a small burst, with pauses between phrases.
 */
final class SpeechSound {
  /** Resonances of five vowels, Hz, as textbooks of phonetics give them for a man (from memory). */
  private static final double[][] VOWELS = {
    {730, 1090, 2440}, {530, 1840, 2480}, {270, 2290, 3010}, {570, 840, 2410}, {300, 870, 2240}
  };

  /** Bandwidths of the three resonances, Hz, and their shares of the voice. */
  private static final double[] BANDWIDTH = {80, 110, 160};

  private static final double[] SHARE = {1, 0.6, 0.35};

  private SpeechSound() {}

  /**
   * Returns a voice about as loud as full scale at its loudest.
   *
   * @param samples how long
   * @param pitchHz of the voice
   */
  static double[] of(int samples, double pitchHz, Random random) {
    double[] out = new double[samples];
    int at = (int) (0.2 * random.nextDouble() * RoomSound.HZ);
    while (at < samples) {
      int syllables = 3 + random.nextInt(6);
      for (int i = 0; i < syllables && at < samples; i++) {
        at = syllable(out, at, pitchHz * (1.12 - 0.04 * i), random);
      }
      at += (int) ((0.1 + 0.35 * random.nextDouble()) * RoomSound.HZ);
    }
    return out;
  }

  /** Adds a syllable and returns where the next one begins. */
  private static int syllable(double[] out, int from, double pitchHz, Random random) {
    int begin = from;
    double onset = random.nextDouble();
    if (onset < 0.3) {
      begin = noise(out, from, 0.06 + 0.05 * random.nextDouble(), 0.25, 0.02, random);
    } else if (onset < 0.6) {
      begin = noise(out, from, 0.012, 0.5, 0.001, random) + (int) (0.015 * RoomSound.HZ);
    }
    int length = (int) ((0.1 + 0.12 * random.nextDouble()) * RoomSound.HZ);
    double[] a = VOWELS[random.nextInt(VOWELS.length)];
    double[] b = VOWELS[random.nextInt(VOWELS.length)];
    double loud = 0.6 + 0.4 * random.nextDouble();
    double[][] past = new double[3][2];
    double phase = 0;
    for (int i = 0; i < length && begin + i < out.length; i++) {
      double share = (double) i / length;
      phase += pitchHz * (1.05 - 0.1 * share) / RoomSound.HZ;
      double pulse = 0;
      if (phase >= 1) {
        phase -= 1;
        pulse = 1;
      }
      double source = pulse + 0.01 * random.nextGaussian();
      double sum = 0;
      for (int k = 0; k < 3; k++) {
        double hz = a[k] + (b[k] - a[k]) * share;
        sum += SHARE[k] * resonate(past[k], source, hz, BANDWIDTH[k]);
      }
      double swell = Math.min(1, Math.min(share / 0.15, (1 - share) / 0.3));
      out[begin + i] += loud * swell * sum;
    }
    return begin + length;
  }

  /** A resonance of two poles, its ringing after one pulse about 1 high. */
  private static double resonate(double[] past, double in, double hz, double bandwidthHz) {
    double r = Math.exp(-Math.PI * bandwidthHz / RoomSound.HZ);
    double turn = 2 * Math.PI * hz / RoomSound.HZ;
    double out = Math.sin(turn) * in + 2 * r * Math.cos(turn) * past[0] - r * r * past[1];
    past[1] = past[0];
    past[0] = out;
    return out;
  }

  private static int noise(
      double[] out, int from, double lengthS, double level, double riseS, Random random) {
    int length = (int) (lengthS * RoomSound.HZ);
    double before = 0;
    for (int i = 0; i < length && from + i < out.length; i++) {
      double white = random.nextGaussian();
      double t = (double) i / RoomSound.HZ;
      double swell = Math.min(1, t / riseS) * Math.min(1, (lengthS - t) / (0.5 * lengthS));
      out[from + i] += level * swell * 0.5 * (white - before);
      before = white;
    }
    return from + length;
  }
}
