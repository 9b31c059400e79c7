package palmturn.settings;

import palmturn.trial.UserError;

/** A file of settings that can't be read or written; the message is one line meant for the user. */
public final class SettingsException extends UserError {
  private static final long serialVersionUID = 1L;

  SettingsException(String message, Throwable cause) {
    super(message, cause);
  }

  SettingsException(String message) {
    super(message);
  }
}
