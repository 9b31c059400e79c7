package palmturn.app.desk;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import palmturn.clip.ClipException;
import palmturn.store.StoreException;
import palmturn.work.UserError;

/** What went wrong last, in one line. */
final class Notices {
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");

  /** The line; empty when nothing went wrong. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  void say(String line) {
    words.set(line);
  }

  void say(Exception problem) {
    words.set(line(problem));
  }

  void forget() {
    words.set("");
  }

  /** Returns what a problem says to a user, without what only its maker understands. */
  static String line(Exception problem) {
    String message = problem.getMessage();
    boolean forUsers =
        problem instanceof UserError
            || problem instanceof ClipException
            || problem instanceof StoreException;
    return forUsers && message != null
        ? message
        : "something in the program went wrong: " + problem.getClass().getSimpleName();
  }
}
