package palmturn.app.desk;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/** The question or sheet that is over the window, one at a time. */
public final class Questions {
  private final ReadOnlyObjectWrapper<@Nullable Question> current = new ReadOnlyObjectWrapper<>();

  /** Starts with nothing asked. */
  public Questions() {
    current.addListener(
        (question, before, now) -> {
          if (before != null) {
            before.closed();
          }
        });
  }

  /** The question that is asked; null where there is none. */
  public ReadOnlyObjectProperty<@Nullable Question> currentProperty() {
    return current.getReadOnlyProperty();
  }

  /** Returns the question that is asked; null where there is none. */
  public @Nullable Question current() {
    return current.get();
  }

  /** Asks a question, in place of one that is asked. */
  public void ask(Question question) {
    current.set(question);
  }

  /** Returns whether a question is the one that is asked. */
  public boolean asks(Question question) {
    return question.equals(current.get());
  }

  /** Closes the question that is asked, unanswered. */
  public void close() {
    current.set(null);
  }
}
