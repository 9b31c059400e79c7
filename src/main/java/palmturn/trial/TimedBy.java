package palmturn.trial;

/** The evidence that a mark's time comes from. */
public enum TimedBy implements Coded {
  /** The first frame that shows contact. */
  PICTURE("picture"),
  /** The onset of the slap in the sound. */
  SOUND("sound"),
  /** Motion between frames, refined below one frame. */
  MOTION("motion"),
  /** A key pressed while the clip played slowly; not yet settled onto evidence. */
  TYPED("typed");

  private final String code;

  TimedBy(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}
