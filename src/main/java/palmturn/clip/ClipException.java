package palmturn.clip;

import palmturn.trial.UserError;

/** A clip can't be read: one line that says what, which file, and what to do. */
public final class ClipException extends UserError {
  private static final long serialVersionUID = 1L;

  public ClipException(String message) {
    super(message);
  }

  public ClipException(String message, Throwable cause) {
    super(message, cause);
  }
}
