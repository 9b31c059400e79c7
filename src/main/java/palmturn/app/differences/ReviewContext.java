package palmturn.app.differences;

import java.time.Instant;
import java.util.function.Consumer;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/** Where decisions go, and who makes them. */
public interface ReviewContext {
  /** Returns whether nothing may be written. */
  boolean readOnly();

  /** Says that nothing can be decided here, and why. */
  void reportReadOnly();

  /** Asks who decides, and goes on once that is known. */
  void askReviewer(Consumer<String> then);

  /** Returns the moment it is. */
  Instant now();

  /** Brings a settlement to the disk. */
  void save(Trial trial, Settlement settlement);

  /** Says in one line what can't be done. */
  void report(String words);

  /** Says what went wrong. */
  void reportError(Exception problem);
}
