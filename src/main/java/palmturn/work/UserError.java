package palmturn.work;

import org.jspecify.annotations.Nullable;

/** Something is wrong with the data: one line that says what, where and what to do. */
public final class UserError extends Exception {
  private static final long serialVersionUID = 1L;

  public UserError(String message) {
    super(message);
  }

  public UserError(String message, @Nullable Throwable cause) {
    super(message, cause);
  }

  /** Returns the error of a lower room, whose message is already meant for a user. */
  public static UserError of(Exception cause) {
    String message = cause.getMessage();
    return new UserError(message == null ? cause.getClass().getSimpleName() : message, cause);
  }
}
