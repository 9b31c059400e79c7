package palmturn.store;

/** A session folder that can't be read or written; the message is one line meant for a user. */
public sealed class StoreException extends Exception permits ForeignChangeException {
  private static final long serialVersionUID = 1L;

  StoreException(String message) {
    super(message);
  }

  StoreException(String message, Throwable cause) {
    super(message, cause);
  }
}
