package palmturn.lab.draw;

/** What a drawn clip lets hear. */
public enum SoundKind {
  /** The slaps in a quiet room. */
  SLAPS,
  /** No sound track. */
  NONE,
  /** The slaps, and two people talking about as loud. */
  TALK,
  /** The slaps, and a louder metronome at the rate that was asked for. */
  METRONOME;

  boolean track() {
    return this != NONE;
  }
}
