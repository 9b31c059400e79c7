package palmturn.report;

/** A marks CSV can't be read; the message is one line for a user that names the line. */
public final class MarksFormatException extends Exception {
  private static final long serialVersionUID = 1L;

  private final int line;

  MarksFormatException(int line, String what) {
    super("line " + line + ": " + what);
    this.line = line;
  }

  /** Returns the line of the text, from 1. */
  public int line() {
    return line;
  }
}
