package palmturn.clip;

/** A sound that can be gone through from its beginning, as often as wanted. */
@FunctionalInterface
public interface SoundTrack {
  /**
   * Begins at the first sample.
   *
   * @throws ClipException if the file has become unreadable
   */
  Pass begin() throws ClipException;

  /** One way through a sound, on which only the stretch last asked for is held. */
  interface Pass extends AutoCloseable {
    /** Returns the time of the first sample, seconds. */
    double firstS();

    /** Returns how many samples there are a second. */
    int sampleRate();

    /**
     * Returns a stretch, as far as the sound has it, valid until the next call.
     *
     * @param from first sample; no later call may begin before it
     * @param to after the last
     */
    Held hold(int from, int to);

    /** Returns the time of a sample, seconds. */
    default double timeS(int sample) {
      return firstS() + sample / (double) sampleRate();
    }

    @Override
    void close();
  }

  /**
   * A stretch of a sound.
   *
   * @param samples mono, full scale ±1; zero after the last; not to be changed
   * @param base the sample that stands first in them
   * @param end after the last sample that has been read
   * @param ended whether the sound has no more
   */
  @SuppressWarnings("ArrayRecordComponent") // As with pictures: large, and only read.
  record Held(float[] samples, int base, int end, boolean ended) {}
}
