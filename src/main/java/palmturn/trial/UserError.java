package palmturn.trial;

import org.jspecify.annotations.Nullable;

/** Something is wrong with the data: one line that says what, where and what to do. */
public class UserError extends Exception {
  private static final long serialVersionUID = 1L;

  public UserError(String message) {
    super(message);
  }

  public UserError(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
