package palmturn.settle;

import palmturn.trial.UserError;

/** Two readings can't be compared; the message is one line that says why and what to do. */
public final class SettleException extends UserError {
  private static final long serialVersionUID = 1L;

  SettleException(String message) {
    super(message);
  }
}
