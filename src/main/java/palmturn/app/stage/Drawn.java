package palmturn.app.stage;

import palmturn.app.keys.Action;

/** What can be drawn on the picture, set by hand and hidden. */
public enum Drawn {
  HAND(Action.PLACE_HAND, "moving hand"),
  ELBOW(Action.PLACE_ELBOW, "elbow"),
  TRUNK(Action.PLACE_TRUNK, "trunk"),
  SCALE(Action.PLACE_SCALE, "scale"),
  TARGET(Action.PLACE_TARGET, "target palm");

  private final Action action;
  private final String words;

  Drawn(Action action, String words) {
    this.action = action;
    this.words = words;
  }

  /** Returns what chooses it while places are set. */
  public Action action() {
    return action;
  }

  /** Returns its name on the picture. */
  public String words() {
    return words;
  }
}
