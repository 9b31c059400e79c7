package palmturn.film;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * A click track: a few low clicks to count in, one for each cycle, then a high click for each slap.
 * Every click begins on the sample nearest its time, so that the pace does not drift.
 *
 * @param countIn first samples of the clicks that count in
 * @param slaps first samples of the clicks to slap to
 * @param samples all samples, −1 to 1
 */
public record ClickTrack(List<Long> countIn, List<Long> slaps, float[] samples) {
  /** Samples a second. */
  public static final int RATE_HZ = 48_000;

  /** The slowest pace, slaps a second. */
  public static final double LEAST_PACE = 0.5;

  /** The fastest pace: clicks stay apart. */
  public static final double MOST_PACE = 20;

  /** The longest track, seconds. */
  public static final double MOST_S = 600;

  /** The most clicks to count in. */
  public static final int MOST_COUNT_IN = 16;

  private static final double LEAD_S = 0.5;
  private static final double TAIL_S = 0.5;
  private static final double CLICK_S = 0.02;
  private static final double DECAY_S = 0.004;
  private static final double COUNT_HZ = 1000;
  private static final double SLAP_HZ = 2000;
  private static final double LOUDNESS = 0.8;
  private static final int FULL = Short.MAX_VALUE;

  public ClickTrack {
    countIn = List.copyOf(countIn);
    slaps = List.copyOf(slaps);
  }

  /**
   * Returns a track.
   *
   * @param paceSlapsPerS clicks a second
   * @param forS seconds from the first click to slap to until the last; a click that falls on the
   *     end is there
   * @param countInClicks clicks before, at half the pace: one for each turn there and back
   * @throws IllegalArgumentException if one of them lies outside its bounds, naming them
   */
  public static ClickTrack of(double paceSlapsPerS, double forS, int countInClicks) {
    refuseOutside("the pace", paceSlapsPerS, LEAST_PACE, MOST_PACE, "slaps a second");
    refuseOutside("the length", forS, 1 / paceSlapsPerS, MOST_S, "seconds");
    refuseOutside("the count-in", countInClicks, 0, MOST_COUNT_IN, "clicks");
    List<Long> countIn = new ArrayList<>();
    for (int k = 0; k < countInClicks; k++) {
      countIn.add(sample(LEAD_S + 2 * k / paceSlapsPerS));
    }
    double firstS = LEAD_S + 2 * countInClicks / paceSlapsPerS;
    long last = (long) Math.floor(forS * paceSlapsPerS + 1e-9);
    List<Long> slaps = new ArrayList<>();
    for (long k = 0; k <= last; k++) {
      slaps.add(sample(firstS + k / paceSlapsPerS));
    }
    float[] samples = new float[(int) sample(firstS + last / paceSlapsPerS + TAIL_S)];
    countIn.forEach(at -> click(samples, at, COUNT_HZ));
    slaps.forEach(at -> click(samples, at, SLAP_HZ));
    return new ClickTrack(countIn, slaps, samples);
  }

  private static void refuseOutside(
      String what, double value, double least, double most, String unit) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(
          "%s must be %s to %s %s, not %s"
              .formatted(what, plain(least), plain(most), unit, plain(value)));
    }
  }

  private static String plain(double value) {
    return value == Math.rint(value)
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%.2f", value);
  }

  private static long sample(double timeS) {
    return Math.round(timeS * RATE_HZ);
  }

  /** A click starts at its full height: a soft start would blur when it is. */
  private static void click(float[] samples, long from, double hz) {
    int length = (int) sample(CLICK_S);
    for (int i = 0; i < length && from + i < samples.length; i++) {
      double timeS = (double) i / RATE_HZ;
      double wave = Math.cos(2 * Math.PI * hz * timeS) * Math.exp(-timeS / DECAY_S);
      samples[(int) from + i] = (float) (LOUDNESS * wave);
    }
  }

  /** Returns the track as a WAV file: one channel of 16-bit PCM at 48 kHz. */
  public byte[] wav() {
    byte[] pcm = new byte[2 * samples.length];
    for (int i = 0; i < samples.length; i++) {
      int value = Math.round(samples[i] * FULL);
      pcm[2 * i] = (byte) value;
      pcm[2 * i + 1] = (byte) (value >> 8);
    }
    AudioFormat format = new AudioFormat(RATE_HZ, 16, 1, true, false);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      AudioSystem.write(
          new AudioInputStream(new ByteArrayInputStream(pcm), format, samples.length),
          AudioFileFormat.Type.WAVE,
          out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }
}
