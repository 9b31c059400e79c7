package palmturn.app.desk;

import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.stage.OverlayItem;
import palmturn.app.stage.PlaceEditor;
import palmturn.clip.Picture;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** What a person points at in the picture of the open trial, and where it is kept. */
public final class PlacesEditor {
  private final Desk desk;
  private final ScoredTrials trials;
  private final Saving saving;
  private final PlaceEditor placing = new PlaceEditor();

  PlacesEditor(Desk desk, ScoredTrials trials, Saving saving) {
    this.desk = desk;
    this.trials = trials;
    this.saving = saving;
  }

  /** The places themselves. */
  public PlaceEditor placing() {
    return placing;
  }

  /** Lets keys and mouse set places. */
  public void begin() {
    Picture picture = desk.stage().pictureProperty().get();
    SessionFolder from = desk.folderProperty().get();
    if (picture != null && from != null && !desk.lookOnly()) {
      desk.stage().stop();
      desk.stage().viewing().overlayShownProperty().set(true);
      placing.begin(picture.width(), picture.height(), from.session().facts().forearmCm());
    }
  }

  /** Shows the hands as large as they fit, then the whole picture again. */
  public void zoomToHands() {
    Estimate.Region region = placing.places().handRegion();
    ShownEstimate found = desk.estimation().found();
    Estimate made = found.visibleProperty().getValue();
    if (region == null && made != null) {
      region = made.handRegion();
    }
    if (region == null) {
      desk.fail(
          "where the hands are is not known: %s lets you draw a box around the moving one"
              .formatted(desk.keys().of(Action.SET_PLACES)));
    } else {
      desk.stage().viewing().toggleZoomTo(region);
    }
  }

  private void travel(PlacedPoints from, PlacedPoints to, String prefix) {
    Trial now = desk.openTrial();
    if (now != null) {
      store(now.id(), to);
      placing.open(to, places -> keep(now.id(), places));
      desk.marking().setStep(prefix + "set " + OverlayItem.namesOfChanged(from, to));
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
    Trial now = trials.get(id);
    if (now != null) {
      PlacedPoints before = now.places();
      desk.steps()
          .record(
              () -> travel(places, before, "Undone: "),
              () -> travel(before, places, "Done again: "));
      desk.marking().setStep("set " + OverlayItem.namesOfChanged(before, places));
      store(id, places);
    }
  }

  private void store(TrialId id, PlacedPoints places) {
    SessionFolder to = desk.folderProperty().get();
    Trial now = trials.get(id);
    if (to != null && now != null) {
      trials.put(now.withPlaces(places));
      saving.keep(to, id, places);
    }
  }
}
