package palmturn.clip;

/**
 * Sound on the picture's time line, with the codec's delay removed.
 *
 * @param firstS time of the first sample, seconds
 * @param sampleRate samples a second
 * @param samples mono, full scale ±1; not to be changed
 */
@SuppressWarnings("ArrayRecordComponent") // As with pictures: large, and only read.
public record Sound(double firstS, int sampleRate, float[] samples) implements SoundTrack {
  /** Peak under which a track is silent, about −80 dBFS. */
  static final float SILENCE = 1e-4f;

  /** Returns the time of a sample, seconds. */
  public double timeS(int sample) {
    return firstS + sample / (double) sampleRate;
  }

  /** Returns whether no sample exceeds about −80 dBFS. */
  public boolean isSilent() {
    for (float sample : samples) {
      if (Math.abs(sample) > SILENCE) {
        return false;
      }
    }
    return true;
  }

  @Override
  public Pass begin() {
    return new InMemory(this);
  }

  private record InMemory(Sound sound) implements Pass {
    @Override
    public double firstS() {
      return sound.firstS;
    }

    @Override
    public int sampleRate() {
      return sound.sampleRate;
    }

    @Override
    public Held hold(int from, int to) {
      return new Held(sound.samples, 0, sound.samples.length, true);
    }

    @Override
    public void close() {
      // Nothing is open.
    }
  }
}
