package palmturn.app;

import palmturn.app.desk.Prompts;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.marking.Marking;
import palmturn.app.tasks.LongTask;

/** The Escape key: it ends the first thing that is going on. */
record EscapeKey(Prompts prompts, Marking marking, LongTask export, EstimateRun estimate) {
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
