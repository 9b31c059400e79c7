package palmturn.app.desk;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.differences.ReadingPair;
import palmturn.app.differences.ReviewContext;
import palmturn.app.differences.ReviewedTrial;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/** Opens the differences of the open trial, and keeps what is decided on them. */
public final class Review implements ReviewContext {
  private final Desk desk;
  private final TrialOpener opening;
  private final Readers readers;
  private final Saving saving;
  private final Clock clock;
  private final DifferenceReview differences;
  private final ReadOnlyBooleanWrapper offered = new ReadOnlyBooleanWrapper(false);

  Review(
      Desk desk,
      Tasks background,
      Executor screen,
      Clock clock,
      TrialOpener opening,
      Readers readers,
      Saving saving) {
    this.desk = desk;
    this.opening = opening;
    this.readers = readers;
    this.saving = saving;
    this.clock = clock;
    differences = new DifferenceReview(background, screen, this);
  }

  /** The differences themselves. */
  public DifferenceReview differences() {
    return differences;
  }

  /** Whether there are two readings, or one and the estimate, that may be seen. */
  public ReadOnlyBooleanProperty offeredProperty() {
    return offered.getReadOnlyProperty();
  }

  /** Opens the differences of the open trial, or goes back to it. */
  public void openOrClose() {
    Trial now = desk.openTrial();
    SessionFolder from = desk.folderProperty().get();
    OpenClip clip = opening.clip();
    if (differences.isOpen()) {
      differences.close();
    } else if (now != null && from != null && clip != null) {
      String refusal = ReadingPair.refusal(now, desk.reader());
      if (!refusal.isEmpty()) {
        desk.fail(refusal);
      } else if (ReadingPair.of(now).isEmpty()) {
        desk.fail("nothing to compare yet: a second reading is needed, or an estimate (L)");
      } else {
        desk.stage().stop();
        readers.recordSeen(now.id());
        desk.marking().setEstimateSeen();
        differences.open(
            new ReviewedTrial(
                now, clip.clip().frames(), clip.cache()::frame, from.session().windowS()),
            Objects.requireNonNullElse(desk.reader(), ""));
      }
    }
  }

  /** Offers the differences of a trial where there are any to be seen; null for no trial. */
  void offer(@Nullable Trial now) {
    if (now == null) {
      differences.close();
    }
    offered.set(
        now != null
            && !ReadingPair.of(now).isEmpty()
            && ReadingPair.refusal(now, desk.reader()).isEmpty());
  }

  @Override
  public boolean readOnly() {
    return desk.readOnlyProperty().get();
  }

  @Override
  public void reportReadOnly() {
    desk.lookOnly();
  }

  @Override
  public void askReviewer(Consumer<String> then) {
    desk.ask(
        new Question.Line(
            "Who decides?", "Your initials stand with each decision.", "", 8, "Decide", then));
  }

  /** Asks for words on why a difference is decided as it is. */
  public void askWhy() {
    if (differences.current() != null && !desk.lookOnly()) {
      desk.ask(
          new Question.Line(
              "Why?",
              "It stands with the decision, in the report too.",
              differences.reason(),
              28,
              "Say it",
              differences::setReason));
    }
  }

  @Override
  public Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.SECONDS);
  }

  @Override
  public void save(Trial trial, Settlement settlement) {
    SessionFolder to = desk.folderProperty().get();
    Trial now = desk.trials().get(trial.id());
    if (to != null && now != null) {
      Trial settled = now.withSettlement(settlement);
      desk.trials().put(settled);
      desk.board().update(desk.trials().cell(settled, readers.shown(settled)));
      saving.keep(to, trial.id(), settlement);
    }
  }

  @Override
  public void report(String words) {
    desk.fail(words);
  }

  @Override
  public void reportError(Exception problem) {
    desk.failed(problem);
  }
}
