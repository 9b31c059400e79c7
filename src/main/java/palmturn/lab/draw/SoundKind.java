package palmturn.lab.draw;

/** The sound of a drawn clip. */
public enum SoundKind {
  /** The slaps in a quiet room. */
  SLAPS,
  /** No sound track. */
  NONE,
  /** The slaps, and two people talking about as loud. */
  TALK,
  /** The slaps, and a louder metronome at the rate that was asked for. */
  METRONOME;

  boolean hasTrack() {
    return this != NONE;
  }
}
