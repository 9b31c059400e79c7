package palmturn.lab.draw;

/** What a drawn clip shows: the test, or something that must not be taken for it. */
public enum Shown {
  SLAPS,
  /** Both hands held still, one over the other. */
  STILL,
  /** The hand turned in the air at the asked rate, without touching. */
  TURNING,
  /** An empty room. */
  NOBODY
}
