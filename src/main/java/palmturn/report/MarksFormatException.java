package palmturn.report;

/** A marks CSV can't be read; the message is one line for a user that names the line. */
public final class MarksFormatException extends Exception {
  private static final long serialVersionUID = 1L;

  private final int line;
  private final String what;

  MarksFormatException(int line, String what) {
    super("line " + line + ": " + what);
    this.line = line;
    this.what = what;
  }

  /** Returns the line of the text, from 1. */
  public int line() {
    return line;
  }

  /** Returns what is wrong, without the line. */
  public String what() {
    return what;
  }
}
