package palmturn.app.desk;

import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.marking.MarkPass;
import palmturn.app.marking.Marking;
import palmturn.app.strip.Strip;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The making, hiding and use of the estimate of the trial on the stage. */
public final class Estimation {
  private final OpenSession session;
  private final OpenReading reading;
  private final ReadingFigures figures;
  private final EstimateRun run;
  private final ShownEstimate shown;
  private final Marking marking;
  private final Strip strip;
  private final MarkPass pass;
  private final Prompts prompts;

  Estimation(
      OpenSession session,
      OpenReading reading,
      ReadingFigures figures,
      EstimateRun run,
      ShownEstimate shown,
      Marking marking,
      Strip strip,
      MarkPass pass,
      Prompts prompts) {
    this.session = session;
    this.reading = reading;
    this.figures = figures;
    this.run = run;
    this.shown = shown;
    this.marking = marking;
    this.strip = strip;
    this.pass = pass;
    this.prompts = prompts;
    shown
        .visibleProperty()
        .addListener(
            (visible, before, now) -> {
              if (now != null) {
                marking.setEstimateSeen();
              }
            });
    session
        .readers()
        .initialsProperty()
        .addListener(
            changed -> {
              Trial now = session.trial();
              if (now != null) {
                shown.setHidden(session.readers().readsBlind(now));
              }
            });
  }

  /** The estimate of the trial on the stage. */
  public ShownEstimate shown() {
    return shown;
  }

  /** The estimate that is being made. */
  public EstimateRun run() {
    return run;
  }

  /** Estimates the trial on the stage in the background; stops the one that is being made. */
  public void estimate() {
    TrialId id = session.trialId();
    SessionFolder from = session.folder();
    if (run.trialProperty().get() != null) {
      run.stop();
    } else if (id != null && from != null && !session.refusesEdits()) {
      run.start(from, id, (which, made) -> receive(from, which, made), prompts.notices()::fail);
    }
  }

  /** Takes an estimate that was made and stored. */
  private void receive(SessionFolder in, TrialId id, Estimate made) {
    Trial now = session.trials().get(id);
    if (now == null || session.folder() != in) {
      return;
    }
    session.trials().put(now.withEstimate(made));
    if (id.equals(session.trialId())) {
      show(made, false);
      marking.setEstimate(made);
      figures.update();
      strip.scrollToFirstSlap();
      if (!made.warnings().isEmpty() && made.slaps().isEmpty()) {
        prompts.notices().warn("nothing was found: " + made.warnings().get(0));
      }
    }
  }

  /** Hides the estimate, or shows it. */
  public void hideOrShow() {
    shown.setHidden(!shown.hiddenProperty().get());
  }

  /** Copies the estimate into the reader's own reading, after a question if that has marks. */
  public void startFrom() {
    withVisible(
        made -> {
          if (made.slaps().isEmpty()) {
            prompts.notices().warn("the estimate found no slaps to start from");
          } else {
            reading.edit(() -> startFrom(made));
          }
        });
  }

  /** Shows a summary of the estimate, with its warnings. */
  public void showSummary() {
    withVisible(made -> prompts.questions().ask(new Question.EstimateDetails(made)));
  }

  private void withVisible(Consumer<Estimate> then) {
    Estimate made = shown.visibleProperty().getValue();
    if (made != null) {
      then.accept(made);
      return;
    }
    prompts
        .notices()
        .warn(
            shown.estimateProperty().get() == null
                ? "this trial is not estimated yet: %s has the program look for slaps"
                    .formatted(prompts.keys().of(Action.ESTIMATE))
                : "the estimate is hidden: %s shows it"
                    .formatted(prompts.keys().of(Action.TOGGLE_ESTIMATE)));
  }

  private void startFrom(Estimate made) {
    Reading now = marking.readingProperty().get();
    int marks = now == null ? 0 : now.slaps().size() + now.spans().size();
    if (marks == 0) {
      copy(made);
    } else {
      prompts
          .questions()
          .ask(
              new Question.Consent(
                  "Start from the estimate?",
                  String.format(
                      Locale.ROOT,
                      "The estimate’s marks will replace your %d %s. %s undoes it.",
                      marks,
                      marks == 1 ? "mark" : "marks",
                      prompts.keys().of(Action.UNDO)),
                  "Cancel",
                  "Start from the estimate",
                  () -> copy(made)));
    }
  }

  private void copy(Estimate made) {
    marking.startFrom(made);
    pass.begin(made);
  }

  void show(@Nullable Estimate made, boolean hidden) {
    // In this order no estimate that is to stay hidden is in sight in between.
    shown.setHidden(true);
    shown.set(made);
    shown.setHidden(hidden);
  }
}
