package palmturn.clip;

/**
 * Sound on the picture's time line, with the codec's delay removed.
 *
 * @param firstS time of the first sample, seconds
 * @param sampleRate samples a second
 * @param samples mono, full scale ±1; not to be changed
 */
@SuppressWarnings("ArrayRecordComponent") // As with pictures: large, and only read.
public record Sound(double firstS, int sampleRate, float[] samples) {
  /** Under this peak a track holds no sound that could be used, about −80 dBFS. */
  static final float SILENCE = 1e-4f;

  /** Returns the time of a sample, seconds. */
  public double timeS(int sample) {
    return firstS + sample / (double) sampleRate;
  }

  /** Returns whether nothing in it is louder than about −80 dBFS. */
  public boolean silent() {
    for (float sample : samples) {
      if (Math.abs(sample) > SILENCE) {
        return false;
      }
    }
    return true;
  }
}
