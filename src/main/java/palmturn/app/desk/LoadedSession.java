package palmturn.app.desk;

import java.nio.file.Path;
import palmturn.measure.Limits;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.UserError;
import palmturn.work.score.LimitsInForce;
import palmturn.work.session.Sessions;

/**
 * A session that was read from its folder.
 *
 * @param limits those in force for it
 * @param whyReadOnly empty, or the reason why nothing may be written
 */
record LoadedSession(SessionFolder folder, Limits limits, String whyReadOnly) {
  /** Returns what whoever opens it must know: why nothing may be written, or what was left out. */
  String notice() {
    return whyReadOnly.isEmpty() ? String.join("; ", folder.notices()) : whyReadOnly;
  }

  static LoadedSession load(Path settings, Path path) throws UserError {
    try {
      return with(settings, Sessions.open(path), "");
    } catch (UserError writing) {
      try {
        return with(
            settings, Sessions.openReadOnly(path), "Open read-only: " + writing.getMessage());
      } catch (UserError reading) {
        throw writing;
      }
    }
  }

  private static LoadedSession with(Path settings, SessionFolder folder, String whyReadOnly)
      throws UserError {
    try {
      return new LoadedSession(
          folder, LimitsInForce.of(settings, folder.folder()).limits(), whyReadOnly);
    } catch (UserError e) {
      try {
        folder.close();
      } catch (StoreException left) {
        e.addSuppressed(left);
      }
      throw e;
    }
  }
}
