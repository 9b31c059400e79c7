package palmturn.app.differences;

import java.time.Instant;
import java.util.function.Consumer;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/** The review's access to the open session: saving, the reviewer and errors. */
public interface ReviewContext {
  /** Returns whether nothing may be written. */
  boolean readOnly();

  /** Reports that the session is read-only. */
  void reportReadOnly();

  /** Asks for the reviewer's initials and passes them on. */
  void askReviewer(Consumer<String> then);

  /** Returns the current time. */
  Instant now();

  /** Saves a settlement to disk. */
  void save(Trial trial, Settlement settlement);

  /** Reports in one line why something can't be done. */
  void report(String words);

  /** Reports an error. */
  void reportError(Exception problem);
}
