package palmturn.app.stage;

/** What can be drawn on the picture, set by hand and hidden. */
public enum Drawn {
  HAND("H", "moving hand"),
  ELBOW("E", "elbow"),
  TRUNK("T", "trunk"),
  SCALE("S", "scale"),
  TARGET("P", "target palm");

  private final String key;
  private final String words;

  Drawn(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** Returns the key that chooses it while places are set. */
  public String key() {
    return key;
  }

  /** Returns its name on the picture. */
  public String words() {
    return words;
  }
}
