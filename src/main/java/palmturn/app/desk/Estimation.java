package palmturn.app.desk;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.clip.Picture;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** What a person does with the estimate: has it made, hides it, starts from it, looks at it. */
public final class Estimation {
  private final Desk desk;
  private final EstimateRun run;
  private final ShownEstimate found = new ShownEstimate();
  private final Marking marking;
  private final Stage stage;

  Estimation(Desk desk, EstimateRun run, Marking marking, Stage stage) {
    this.desk = desk;
    this.run = run;
    this.marking = marking;
    this.stage = stage;
    found
        .visibleProperty()
        .addListener(
            (visible, before, now) -> {
              if (now != null) {
                marking.setEstimateSeen();
              }
            });
    stage.pictureProperty().addListener((picture, before, now) -> see());
    stage.playingProperty().addListener((playing, before, now) -> see());
  }

  /** The estimate of the open trial. */
  public ShownEstimate found() {
    return found;
  }

  /** The estimate that is being made. */
  public EstimateRun run() {
    return run;
  }

  /** Estimates the open trial beside everything else; stops the one that is being made. */
  public void estimate() {
    TrialId id = desk.trialProperty().get();
    SessionFolder from = desk.folderProperty().get();
    if (run.trialProperty().get() != null) {
      run.stop();
    } else if (id != null && from != null && !desk.lookOnly()) {
      run.start(from, id, (which, made) -> estimated(from, which, made), desk::failed);
    }
  }

  /** Takes an estimate that was made and stored. */
  private void estimated(SessionFolder in, TrialId id, Estimate made) {
    Trial now = desk.trials().get(id);
    if (now == null || desk.folderProperty().get() != in) {
      return;
    }
    desk.trials().put(now.withEstimate(made));
    if (id.equals(desk.trialProperty().get())) {
      show(made, false);
      marking.setEstimate(made);
      desk.marked(marking.readingProperty().get());
      desk.strip().scrollToFirstSlap();
      if (!made.warnings().isEmpty() && made.slaps().isEmpty()) {
        desk.fail("nothing was found: " + made.warnings().get(0));
      }
    }
  }

  /** Hides the estimate, or shows it. */
  public void hideOrShow() {
    found.setHidden(!found.hiddenProperty().get());
  }

  /** Copies the estimate into the reader's own reading, after a question if that has marks. */
  public void startFrom() {
    withVisible(
        made -> {
          if (made.slaps().isEmpty()) {
            desk.fail("the estimate found no slaps to start from");
          } else {
            desk.mark(() -> startFrom(made));
          }
        });
  }

  /** Lists what the estimate says, with its warnings. */
  public void showSummary() {
    withVisible(made -> desk.ask(new Question.EstimateSays(made)));
  }

  private void withVisible(Consumer<Estimate> then) {
    Estimate made = found.visibleProperty().getValue();
    if (made != null) {
      then.accept(made);
      return;
    }
    desk.fail(
        found.estimateProperty().get() == null
            ? "this trial is not estimated yet: %s has the program look for slaps"
                .formatted(desk.keys().of(Action.ESTIMATE))
            : "the estimate is hidden: %s shows it"
                .formatted(desk.keys().of(Action.TOGGLE_ESTIMATE)));
  }

  private void startFrom(Estimate made) {
    Reading now = marking.readingProperty().get();
    int marks = now == null ? 0 : now.slaps().size() + now.spans().size();
    if (marks == 0) {
      copy(made);
    } else {
      desk.ask(new Question.Replace(marks, () -> copy(made)));
    }
  }

  private void copy(Estimate made) {
    marking.startFrom(made);
    desk.fast().pass().begin(made);
  }

  /** Marks are seen when their own picture is on the stage and stands still. */
  void see() {
    Picture picture = stage.pictureProperty().get();
    if (picture != null
        && !stage.playingProperty().get()
        && picture.index() == stage.frameProperty().get()
        && desk.fast().pass().positionProperty().get() == null
        && desk.ownMarks()) {
      marking.markSeen(picture.index());
    }
  }

  void show(@Nullable Estimate made, boolean hidden) {
    // In this order no estimate that is to stay hidden is in sight in between.
    found.setHidden(true);
    found.set(made);
    found.setHidden(hidden);
  }
}
