package palmturn.app.desk;

/**
 * A line at the top of the window.
 *
 * @param text one line; empty for no notice
 */
public record Notice(Kind kind, String text) {
  /** Nothing to say. */
  public static final Notice NONE = new Notice(Kind.DONE, "");

  /** The sort of news that a notice brings. */
  public enum Kind {
    /** Something was done that was asked for. */
    DONE,
    /** Something can't be done here or now, or needs attention. */
    WARNING,
    /** Something went wrong. */
    FAILURE
  }

  /** Returns whether there is nothing to say. */
  public boolean isEmpty() {
    return text.isEmpty();
  }
}
