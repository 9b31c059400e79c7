package palmturn.app.desk;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.app.strip.Strip;
import palmturn.store.SessionFolder;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** Brings a trial of the open session onto the stage, with its estimate, places and marks. */
final class TrialOpener {
  private final OpenSession session;
  private final ClipLoader loader;
  private final Strip strip;
  private final Parts parts;
  private final Notices notices;

  /** The services that hold something of the trial on the stage. */
  record Parts(
      Estimation estimation,
      PlacesEditor places,
      OpenReading reading,
      Pairing pairing,
      SideEdits sideEdits,
      Review review) {}

  TrialOpener(OpenSession session, ClipLoader loader, Strip strip, Parts parts, Notices notices) {
    this.session = session;
    this.loader = loader;
    this.strip = strip;
    this.parts = parts;
    this.notices = notices;
  }

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
    parts.sideEdits().open(now.id());
    parts.estimation().show(now.estimate(), session.readers().readsBlind(now));
    parts.places().show(now);
    parts.reading().show(now);
    strip.open(now.timeScale(), from.session().windowS());
  }

  /** Lets go of the trial on the stage. */
  void close() {
    parts.pairing().close();
    loader.close();
    parts.reading().close();
    parts.estimation().show(null, false);
    parts.places().show(null);
    parts.sideEdits().open(null);
    parts.review().offer(null);
  }

  /** Forgets all steps that could be taken back, for another session. */
  void forgetSteps() {
    parts.reading().forgetSteps();
    parts.sideEdits().forget();
  }

  /** Stops an estimate that is being made. */
  void stopEstimate() {
    parts.estimation().run().stop();
  }
}
