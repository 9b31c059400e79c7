package palmturn.app.desk;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import org.jspecify.annotations.Nullable;

/**
 * A session between being opened and being shown. Where somebody or the program has read in it
 * already, the question who reads now comes first, so that a second reader sees nothing of the
 * first's.
 */
public final class PendingSession {
  private final ObjectProperty<@Nullable Question> question;
  private final Readers readers;
  private final Consumer<LoadedSession> show;
  private Function<Path, Optional<String>> guess = folder -> Optional.empty();
  private @Nullable LoadedSession waiting;

  /**
   * Waits for sessions.
   *
   * @param show gets a session once it may be shown
   * @param leave gets one that nobody wants any more
   */
  PendingSession(
      ObjectProperty<@Nullable Question> question,
      Readers readers,
      Consumer<LoadedSession> show,
      Consumer<LoadedSession> leave) {
    this.question = question;
    this.readers = readers;
    this.show = show;
    question.addListener(
        (asked, before, now) -> {
          LoadedSession left = waiting;
          if (left != null && before instanceof Question.WhoReads) {
            waiting = null;
            leave.accept(left);
          }
        });
  }

  /** Says who may be reading a session, to be suggested. */
  public void setReaderGuess(Function<Path, Optional<String>> who) {
    guess = who;
  }

  void receive(LoadedSession session) {
    if (session.whyReadOnly().isEmpty() && readers.mustAsk(session.folder().trials())) {
      question.set(null);
      waiting = session;
      question.set(new Question.WhoReads(guess.apply(session.folder().folder()).orElse("")));
    } else {
      show.accept(session);
    }
  }

  /**
   * Shows the session that waits.
   *
   * @param who initials; null for somebody who only looks
   */
  public void answer(@Nullable String who) {
    LoadedSession session = waiting;
    waiting = null;
    question.set(null);
    if (session != null) {
      if (who != null) {
        readers.setInitials(who.strip());
      }
      show.accept(session);
    }
  }

  /** Lets go of a session that waits. */
  void discard() {
    if (waiting != null) {
      question.set(null);
    }
  }
}
