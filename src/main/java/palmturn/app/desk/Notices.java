package palmturn.app.desk;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import palmturn.clip.ClipException;
import palmturn.store.StoreException;
import palmturn.trial.UserError;

/** The notice at the top of the window; each one replaces the one before. */
public final class Notices {
  private final ReadOnlyObjectWrapper<Notice> current = new ReadOnlyObjectWrapper<>(Notice.NONE);

  /** The notice that is shown; {@link Notice#NONE} where there is none. */
  public ReadOnlyObjectProperty<Notice> currentProperty() {
    return current.getReadOnlyProperty();
  }

  /** Returns the text of the notice that is shown; empty where there is none. */
  public String text() {
    return current.get().text();
  }

  /** Reports something that was done. */
  public void confirm(String text) {
    show(Notice.Kind.DONE, text);
  }

  /** Says why something can't be done, or what needs attention; an empty text clears the line. */
  public void warn(String text) {
    show(Notice.Kind.WARNING, text);
  }

  /** Reports something that went wrong. */
  public void fail(String text) {
    show(Notice.Kind.FAILURE, text);
  }

  /** Reports something that went wrong. */
  public void fail(Exception problem) {
    fail(message(problem));
  }

  /** Clears the line. */
  public void clear() {
    current.set(Notice.NONE);
  }

  private void show(Notice.Kind kind, String text) {
    current.set(text.isEmpty() ? Notice.NONE : new Notice(kind, text));
  }

  /** Returns a problem's message, without details that only the program's makers understand. */
  static String message(Exception problem) {
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
