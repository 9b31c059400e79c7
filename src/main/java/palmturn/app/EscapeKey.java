package palmturn.app;

import palmturn.app.desk.Prompts;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.marking.Marking;
import palmturn.app.tasks.LongTask;

/** The Escape key: it ends the first thing that is going on. */
final class EscapeKey {
  private final Prompts prompts;
  private final Marking marking;
  private final LongTask export;
  private final EstimateRun estimate;

  EscapeKey(Prompts prompts, Marking marking, LongTask export, EstimateRun estimate) {
    this.prompts = prompts;
    this.marking = marking;
    this.export = export;
    this.estimate = estimate;
  }

  void press() {
    if (prompts.questions().current() != null) {
      prompts.questions().close();
    } else if (!marking.openSpansProperty().get().isEmpty()) {
      marking.cancelSpans();
    } else if (export.runningProperty().get()) {
      export.stop();
    } else if (estimate.trialProperty().get() != null) {
      estimate.stop();
    } else {
      prompts.notices().clear();
    }
  }
}
