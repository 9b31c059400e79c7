package palmturn.app.desk;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A session between being loaded and being shown. Where somebody or the program has read in it
 * already, the question who reads now comes first, so that a second reader sees nothing of the
 * first's.
 */
public final class PendingSession {
  private final Questions questions;
  private final OpenSession session;
  private Function<Path, Optional<String>> guess = folder -> Optional.empty();
  private @Nullable LoadedSession waiting;

  PendingSession(Questions questions, OpenSession session) {
    this.questions = questions;
    this.session = session;
  }

  /** Sets the source of suggested initials for a session's folder. */
  public void setReaderGuess(Function<Path, Optional<String>> who) {
    guess = who;
  }

  /**
   * Shows a session at once, or after its reader is known.
   *
   * @param show gets the session once it may be shown
   */
  void receive(LoadedSession loaded, Consumer<LoadedSession> show) {
    if (loaded.whyReadOnly().isEmpty() && session.readers().mustAsk(loaded.folder().trials())) {
      questions.close();
      waiting = loaded;
      questions.ask(
          new Question.Reader(
              guess.apply(loaded.folder().folder()).orElse(""),
              who -> answer(who, show),
              this::leave));
    } else {
      show.accept(loaded);
    }
  }

  private void answer(@Nullable String who, Consumer<LoadedSession> show) {
    LoadedSession loaded = waiting;
    waiting = null;
    questions.close();
    if (loaded != null) {
      if (who != null) {
        session.readers().setInitials(who.strip());
      }
      show.accept(loaded);
    }
  }

  /** Lets go of a session that nobody wants any more. */
  private void leave() {
    LoadedSession left = waiting;
    waiting = null;
    if (left != null) {
      session.saving().close(left.folder());
    }
  }

  /** Lets go of a session that waits. */
  void discard() {
    if (waiting != null) {
      questions.close();
    }
  }
}
