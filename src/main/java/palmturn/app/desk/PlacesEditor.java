package palmturn.app.desk;

import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.stage.OverlayItem;
import palmturn.app.stage.PlaceEditor;
import palmturn.app.stage.Stage;
import palmturn.clip.Picture;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The places that a person sets in the picture of the trial on the stage. */
public final class PlacesEditor {
  private final OpenSession session;
  private final Stage stage;
  private final ShownEstimate estimate;
  private final SideEdits sideEdits;
  private final Prompts prompts;
  private final PlaceEditor placing = new PlaceEditor();

  PlacesEditor(
      OpenSession session,
      Stage stage,
      ShownEstimate estimate,
      SideEdits sideEdits,
      Prompts prompts) {
    this.session = session;
    this.stage = stage;
    this.estimate = estimate;
    this.sideEdits = sideEdits;
    this.prompts = prompts;
  }

  /** The places themselves. */
  public PlaceEditor placing() {
    return placing;
  }

  /** Lets keys and mouse set places. */
  public void begin() {
    Picture picture = stage.pictureProperty().get();
    SessionFolder from = session.folder();
    if (picture != null && from != null && !session.refusesEdits()) {
      stage.stop();
      stage.viewing().overlayShownProperty().set(true);
      placing.begin(picture.width(), picture.height(), from.session().facts().forearmCm());
    }
  }

  /** Shows the hands as large as they fit, then the whole picture again. */
  public void zoomToHands() {
    Estimate.Region region = placing.places().handRegion();
    Estimate made = estimate.visibleProperty().getValue();
    if (region == null && made != null) {
      region = made.handRegion();
    }
    if (region == null) {
      prompts
          .notices()
          .warn(
              "where the hands are is not known: %s lets you draw a box around the moving one"
                  .formatted(prompts.keys().of(Action.SET_PLACES)));
    } else {
      stage.viewing().toggleZoomTo(region);
    }
  }

  private void travel(PlacedPoints from, PlacedPoints to, String prefix) {
    Trial now = session.trial();
    if (now != null) {
      store(now.id(), to);
      placing.open(to, places -> keep(now.id(), places));
      sideEdits.announce(prefix + "set " + OverlayItem.namesOfChanged(from, to));
    }
  }

  void show(@Nullable Trial open) {
    if (open == null) {
      placing.close();
    } else {
      placing.open(open.places(), places -> keep(open.id(), places));
    }
  }

  private void keep(TrialId id, PlacedPoints places) {
    Trial now = session.trials().get(id);
    if (now != null) {
      PlacedPoints before = now.places();
      sideEdits.record(
          () -> travel(places, before, "Undone: "), () -> travel(before, places, "Done again: "));
      sideEdits.announce("set " + OverlayItem.namesOfChanged(before, places));
      store(id, places);
    }
  }

  private void store(TrialId id, PlacedPoints places) {
    SessionFolder to = session.folder();
    Trial now = session.trials().get(id);
    if (to != null && now != null) {
      session.trials().put(now.withPlaces(places));
      session.saving().keep(to, id, places);
    }
  }
}
