package palmturn.lab.onsets;

import java.util.Random;
import palmturn.clip.Sound;

/** Draws sounds of which every onset is known. The same seed gives the same sound. */
public final class DrawnSound {
  private final int rate;
  private final double[] out;
  private final Random random;

  public DrawnSound(int rate, double lengthS, long seed) {
    this.rate = rate;
    out = new double[(int) Math.round(lengthS * rate)];
    random = new Random(seed);
  }

  /** Begins with a sound that is there. */
  DrawnSound(Sound sound, long seed) {
    this(sound.sampleRate(), sound.samples().length / (double) sound.sampleRate(), seed);
    for (int i = 0; i < out.length; i++) {
      out[i] = sound.samples()[i];
    }
  }

  /** Adds another sound, so many decibels over this one, both root mean square. */
  DrawnSound add(DrawnSound other, double decibels) {
    double scale = rms() / other.rms() * Math.pow(10, decibels / 20);
    for (int i = 0; i < Math.min(out.length, other.out.length); i++) {
      out[i] += scale * other.out[i];
    }
    return this;
  }

  private double rms() {
    double squares = 0;
    for (double value : out) {
      squares += value * value;
    }
    return Math.sqrt(squares / out.length);
  }

  /** Returns onsets of a trial: the first and the mean interval given, its SD as a share. */
  public static double[] onsetTimes(
      double firstS, double intervalS, double spread, int count, long seed) {
    Random random = new Random(seed);
    double[] times = new double[count];
    double at = firstS;
    for (int i = 0; i < count; i++) {
      times[i] = at;
      at += intervalS * (1 + spread * Math.max(-2, Math.min(2, random.nextGaussian())));
    }
    return times;
  }

  /** Adds at each onset a burst of noise that is there within 0.2 ms, between −10 dB and full. */
  public DrawnSound addSlaps(double[] timesS, double level) {
    for (double timeS : timesS) {
      double loud = level * Math.pow(10, -0.5 * random.nextDouble());
      double decayS = 0.004 + 0.004 * random.nextDouble();
      int from = (int) Math.round(timeS * rate);
      for (int i = 0; i < 0.06 * rate && from + i < out.length; i++) {
        double t = i / (double) rate;
        double shape = (1 - Math.exp(-t / 0.0002)) * Math.exp(-t / decayS);
        out[from + i] += 0.4 * loud * random.nextGaussian() * shape;
      }
    }
    return this;
  }

  /** Adds steady noise, its SD as a share of full scale. */
  public DrawnSound addNoise(double level) {
    for (int i = 0; i < out.length; i++) {
      out[i] += level * random.nextGaussian();
    }
    return this;
  }

  /** Repeats all so far, later and weaker. */
  public DrawnSound addEchoes(double level, double... delaysS) {
    double[] dry = out.clone();
    for (double delayS : delaysS) {
      int delay = (int) Math.round(delayS * rate);
      for (int i = delay; i < out.length; i++) {
        out[i] += level * dry[i - delay];
      }
    }
    return this;
  }

  /** Adds 30 to 120 ms after each onset a swelling of dull noise, as of moved air. */
  public DrawnSound addPuffs(double[] timesS, double level) {
    for (double timeS : timesS) {
      int from = (int) Math.round((timeS + 0.03 + 0.09 * random.nextDouble()) * rate);
      int length = (int) (0.05 * rate);
      double dull = 0;
      for (int i = 0; i < length && from + i < out.length; i++) {
        dull += Math.min(1, 2 * Math.PI * 1_500 / rate) * (random.nextGaussian() - dull);
        out[from + i] += level * dull * Math.pow(Math.sin(Math.PI * i / length), 2);
      }
    }
    return this;
  }

  /** Adds something like talk: syllables of a buzzing voice with hissing consonants between. */
  public DrawnSound addTalk(double level) {
    double at = 0.1;
    while (at < out.length / (double) rate) {
      double voiceS = 0.08 + 0.15 * random.nextDouble();
      double hissS = random.nextDouble() < 0.5 ? 0.04 + 0.08 * random.nextDouble() : 0;
      double pitchHz = 100 + 60 * random.nextDouble();
      double formantHz = 400 + 1_600 * random.nextDouble();
      add(at, hissS, level, t -> 0.3 * random.nextGaussian());
      add(
          at + hissS,
          voiceS,
          level,
          t -> {
            double inPulse = t % (1 / pitchHz);
            return Math.sin(2 * Math.PI * formantHz * inPulse) * Math.exp(-inPulse / 0.003);
          });
      at += hissS + voiceS + 0.02 + 0.15 * random.nextDouble();
    }
    return this;
  }

  /** Adds a metronome of 132 beats a minute. */
  public DrawnSound addMetronome(double level) {
    for (double at = 0.21; at < out.length / (double) rate; at += 60 / 132.0) {
      int from = (int) Math.round(at * rate);
      for (int i = 0; i < 0.03 * rate && from + i < out.length; i++) {
        double t = i / (double) rate;
        out[from + i] += level * Math.sin(2 * Math.PI * 1_800 * t) * Math.exp(-t / 0.006);
      }
    }
    return this;
  }

  /** Scales what there is to a peak, which may be over full scale, and cuts it off there. */
  public DrawnSound scaleToPeak(double peak) {
    double largest = 0;
    for (double value : out) {
      largest = Math.max(largest, Math.abs(value));
    }
    for (int i = 0; i < out.length; i++) {
      out[i] = Math.max(-1, Math.min(1, out[i] * peak / largest));
    }
    return this;
  }

  public Sound sound() {
    float[] samples = new float[out.length];
    for (int i = 0; i < out.length; i++) {
      samples[i] = Math.round(out[i] * 32_767) / 32_767f;
    }
    return new Sound(0, rate, samples);
  }

  private interface Wave {
    double at(double t);
  }

  private void add(double fromS, double lengthS, double level, Wave wave) {
    int from = (int) Math.round(fromS * rate);
    int length = (int) (lengthS * rate);
    for (int i = 0; i < length && from + i < out.length; i++) {
      double share = i / (double) length;
      out[from + i] += level * Math.sin(Math.PI * share) * wave.at(i / (double) rate);
    }
  }
}
