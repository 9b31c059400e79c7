package palmturn.app.desk;

import java.util.List;
import java.util.Objects;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.differences.ReadingPair;
import palmturn.app.differences.ReviewedTrial;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.store.SessionFolder;
import palmturn.trial.Trial;

/** The review of the differences between two readings of the trial on the stage. */
public final class Review {
  private final OpenSession session;
  private final ClipLoader loader;
  private final Marking marking;
  private final Stage stage;
  private final DifferenceReview differences;
  private final Prompts prompts;
  private final ReadOnlyBooleanWrapper offered = new ReadOnlyBooleanWrapper(false);

  Review(
      OpenSession session,
      ClipLoader loader,
      Marking marking,
      Stage stage,
      DifferenceReview differences,
      Prompts prompts) {
    this.session = session;
    this.loader = loader;
    this.marking = marking;
    this.stage = stage;
    this.differences = differences;
    this.prompts = prompts;
    session
        .readers()
        .initialsProperty()
        .addListener(
            changed -> {
              Trial now = session.trial();
              if (now != null) {
                offer(now);
              }
            });
  }

  /** The differences themselves. */
  public DifferenceReview differences() {
    return differences;
  }

  /** Whether there are two readings, or one and the estimate, that may be seen. */
  public ReadOnlyBooleanProperty offeredProperty() {
    return offered.getReadOnlyProperty();
  }

  /** Opens the differences of the trial on the stage, or goes back to it. */
  public void openOrClose() {
    Trial now = session.trial();
    SessionFolder from = session.folder();
    OpenClip clip = loader.clip();
    if (differences.isOpen()) {
      differences.close();
    } else if (now != null && from != null && clip != null) {
      String refusal = ReadingPair.refusal(now, session.reader());
      if (!refusal.isEmpty()) {
        prompts.notices().warn(refusal);
      } else if (ReadingPair.of(now).isEmpty()) {
        prompts
            .notices()
            .warn("nothing to compare yet: a second reading is needed, or an estimate (L)");
      } else {
        stage.stop();
        session.readers().recordSeen(now.id());
        marking.setEstimateSeen();
        differences.open(
            new ReviewedTrial(
                now, clip.clip().frames(), clip.cache()::frame, from.session().windowS()),
            Objects.requireNonNullElse(session.reader(), ""));
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
            && ReadingPair.refusal(now, session.reader()).isEmpty());
  }

  /** Asks for the reason of a decision. */
  public void askWhy() {
    if (differences.current() != null && !session.refusesEdits()) {
      prompts
          .questions()
          .ask(
              new Question.Line(
                  "line",
                  "Why?",
                  List.of("It stands with the decision, in the report too."),
                  differences.reason(),
                  28,
                  "Say it",
                  differences::setReason));
    }
  }
}
