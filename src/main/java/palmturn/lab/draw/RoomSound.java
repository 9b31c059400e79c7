package palmturn.lab.draw;

import java.util.List;
import java.util.Random;
import palmturn.trial.Slap;

/**
 * The sound of a clip: the slaps, delayed by the air between, and any other sound, in a room that
 * answers and hums.
 */
final class RoomSound {
  /** The usual sample rate of a phone's video. */
  static final int HZ = 48_000;

  /** From the hands to the microphone. */
  static final double AIR_M = 1.2;

  /** Speed of sound in air at 20 °C. */
  private static final double SPEED_M_PER_S = 343;

  /**
   * First reflections of walls, floor and table a few metres away: delay, and share of the slap.
   */
  private static final double[] ECHO_S = {0.0073, 0.0118, 0.0191, 0.0274, 0.0413};

  private static final double[] ECHO_SHARE = {0.17, 0.13, 0.1, 0.07, 0.045};

  /** Two voices together are about as loud as the slaps. */
  private static final double TALK_LEVEL = 0.16;

  /** Louder than any slap, which is at most about 0.5. */
  private static final double TICK_LEVEL = 0.7;

  private RoomSound() {}

  /** Returns how much later the sound is than the picture, seconds. */
  static double delayS() {
    return AIR_M / SPEED_M_PER_S;
  }

  static float[] of(ClipParameters wanted, List<Contact> contacts) {
    Random random = new Random(wanted.seed() * 131 + 11);
    double[] out = new double[(int) Math.round(wanted.lengthS() * HZ)];
    for (Contact contact : contacts) {
      if (contact.kind() != Slap.Kind.MISSED) {
        double at = contact.timeS() + delayS();
        double[] slap = SlapSound.of(contact, random);
        add(out, slap, at, 0.5 * contact.level());
        for (int i = 0; i < ECHO_S.length; i++) {
          add(out, slap, at + ECHO_S[i], 0.5 * contact.level() * ECHO_SHARE[i]);
        }
      }
    }
    // Of its own seed, so that the slaps are the same with and without it.
    Random other = new Random(wanted.seed() * 137 + 5);
    switch (wanted.sound()) {
      case TALK -> {
        add(out, SpeechSound.of(out.length, 105, other), 0, TALK_LEVEL);
        add(out, SpeechSound.of(out.length, 190, other), 0, TALK_LEVEL);
      }
      case METRONOME -> {
        double everyS = 1 / wanted.tempo().rateSlapsPerS();
        for (double at = everyS * other.nextDouble(); at < wanted.lengthS(); at += everyS) {
          add(out, tick(), at, TICK_LEVEL);
        }
      }
      default -> {}
    }
    reverberate(out);
    room(out, random);
    float[] samples = new float[out.length];
    for (int i = 0; i < out.length; i++) {
      samples[i] = (float) Math.tanh(out[i]);
    }
    return samples;
  }

  /** One beat of a metronome: a dry knock of two high tones. */
  private static double[] tick() {
    double[] out = new double[(int) (0.05 * HZ)];
    for (int i = 0; i < out.length; i++) {
      double t = (double) i / HZ;
      double tones = Math.sin(2 * Math.PI * 1720 * t) + 0.5 * Math.sin(2 * Math.PI * 2890 * t);
      out[i] = tones * Math.exp(-t / 0.008) * (1 - Math.exp(-t / 0.0002));
    }
    return out;
  }

  /** Adds a sound at a moment that need not fall on a sample. */
  private static void add(double[] out, double[] sound, double atS, double level) {
    double at = atS * HZ;
    int whole = (int) Math.floor(at);
    double part = at - whole;
    double before = 0;
    for (int i = 0; i <= sound.length; i++) {
      double now = i < sound.length ? sound[i] : 0;
      int k = whole + i;
      if (k >= 0 && k < out.length) {
        out[k] += level * ((1 - part) * now + part * before);
      }
      before = now;
    }
  }

  /** A faint dense tail: four feedback combs whose lengths share no factor. */
  private static void reverberate(double[] out) {
    int[] lengths = {1423, 1777, 2039, 2503};
    double[] wet = new double[out.length];
    for (int length : lengths) {
      double[] line = new double[length];
      for (int i = 0; i < out.length; i++) {
        double heard = line[i % length];
        line[i % length] = out[i] + 0.72 * heard;
        wet[i] += heard;
      }
    }
    for (int i = 0; i < out.length; i++) {
      out[i] += 0.022 * wet[i];
    }
  }

  private static void room(double[] out, Random random) {
    double hiss = 0;
    double rumble = 0;
    for (int i = 0; i < out.length; i++) {
      double white = random.nextGaussian();
      hiss += 0.4 * (white - hiss);
      rumble += 0.004 * (white - rumble);
      double hum = 0.0012 * Math.sin(2 * Math.PI * 100 * i / HZ);
      out[i] += 0.0016 * hiss + 0.05 * rumble + hum;
    }
  }
}
