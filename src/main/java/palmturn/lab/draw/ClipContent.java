package palmturn.lab.draw;

/** The content of a drawn clip: the test, or something that must not be taken for it. */
public enum ClipContent {
  SLAPS,
  /** Both hands held still, one over the other. */
  STILL,
  /** The hand turned in the air at the asked rate, without touching. */
  TURNING,
  /** An empty room. */
  NOBODY
}
