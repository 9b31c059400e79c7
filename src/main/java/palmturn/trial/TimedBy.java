package palmturn.trial;

/** The evidence that a mark's time comes from. */
public enum TimedBy implements Coded {
  /** The first frame that shows contact. */
  PICTURE,
  /** The onset of the slap in the sound. */
  SOUND,
  /** Motion between frames, refined below one frame. */
  MOTION,
  /** A key pressed while the clip played slowly; not yet settled onto evidence. */
  TYPED
}
