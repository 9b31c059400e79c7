package palmturn.app.desk;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.app.strip.Strip;
import palmturn.store.SessionFolder;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** Brings a trial of the open session onto the stage, with its estimate, places and marks. */
record TrialOpener(
    OpenSession session,
    ClipLoader loader,
    Strip strip,
    Estimation estimation,
    PlacesEditor places,
    OpenReading reading,
    Pairing pairing,
    SideEdits sideEdits,
    Review review,
    Notices notices) {
  /** Opens a trial in place of the one before; null only closes that. */
  void open(@Nullable TrialId id) {
    close();
    Trial now = session.trials().get(id);
    SessionFolder from = session.folder();
    if (now == null || from == null) {
      return;
    }
    loader.open(now, from, came -> show(came, from), notices::fail);
  }

  private void show(OpenClip came, SessionFolder from) {
    Trial now = Objects.requireNonNull(session.trials().get(came.id()));
    sideEdits.open(now.id());
    estimation.show(now.estimate(), session.readers().readsBlind(now));
    places.show(now);
    reading.show(now);
    strip.open(now.timeScale(), from.session().windowS());
  }

  /** Lets go of the trial on the stage. */
  void close() {
    pairing.close();
    loader.close();
    reading.close();
    estimation.show(null, false);
    places.show(null);
    sideEdits.open(null);
    review.offer(null);
  }

  /** Forgets all steps that could be taken back, for another session. */
  void forgetSteps() {
    reading.forgetSteps();
    sideEdits.forget();
  }

  /** Stops an estimate that is being made. */
  void stopEstimate() {
    estimation.run().stop();
  }
}
