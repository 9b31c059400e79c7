package palmturn.app.desk;

import java.nio.file.Path;
import palmturn.store.SessionFolder;
import palmturn.work.Sessions;
import palmturn.work.UserError;

/**
 * A session that was opened.
 *
 * @param whyReadOnly empty, or why marks can't be written
 */
record Opened(SessionFolder folder, String whyReadOnly) {
  static Opened of(Path path) throws UserError {
    try {
      return new Opened(Sessions.open(path), "");
    } catch (UserError writing) {
      try {
        return new Opened(
            Sessions.openReadOnly(path), "Open to look only: " + writing.getMessage());
      } catch (UserError reading) {
        throw writing;
      }
    }
  }
}
