package palmturn.store;

import palmturn.trial.UserError;

/** A session folder that can't be read or written; the message is one line meant for a user. */
public sealed class StoreException extends UserError permits ForeignChangeException {
  private static final long serialVersionUID = 1L;

  StoreException(String message) {
    super(message);
  }

  StoreException(String message, Throwable cause) {
    super(message, cause);
  }
}
