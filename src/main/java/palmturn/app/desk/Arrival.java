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
public final class Arrival {
  private final ObjectProperty<@Nullable Question> question;
  private final Readers readers;
  private final Consumer<Opened> show;
  private Function<Path, Optional<String>> guess = folder -> Optional.empty();
  private @Nullable Opened waiting;

  /**
   * Waits for sessions.
   *
   * @param show gets a session once it may be shown
   * @param leave gets one that nobody wants any more
   */
  Arrival(
      ObjectProperty<@Nullable Question> question,
      Readers readers,
      Consumer<Opened> show,
      Consumer<Opened> leave) {
    this.question = question;
    this.readers = readers;
    this.show = show;
    question.addListener(
        (asked, before, now) -> {
          Opened left = waiting;
          if (left != null && before instanceof Question.WhoReads) {
            waiting = null;
            leave.accept(left);
          }
        });
  }

  /** Says who may be reading a session, to be suggested. */
  public void setGuess(Function<Path, Optional<String>> who) {
    guess = who;
  }

  void came(Opened session) {
    if (session.whyReadOnly().isEmpty() && readers.unknownTo(session.folder().trials())) {
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
  public void answered(@Nullable String who) {
    Opened session = waiting;
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
  void giveUp() {
    if (waiting != null) {
      question.set(null);
    }
  }
}
