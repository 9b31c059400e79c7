package palmturn.app;

import org.jspecify.annotations.Nullable;
import palmturn.app.desk.PlacesEditor;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.marking.Marking;
import palmturn.app.stage.OverlayItem;
import palmturn.app.stage.PlaceEditor;
import palmturn.app.stage.Stage;
import palmturn.app.stage.Viewport;
import palmturn.clip.FrameTable;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Slap;

/** The keys of the picture: zoom, loops, and places in it. */
final class StageKeys {
  private static final int TEN = 10;

  /** The stretch before a slap that is looped with it, seconds. */
  private static final double BEFORE_S = 0.25;

  /** The stretch after it, seconds. */
  private static final double AFTER_S = 0.15;

  private final Marking marking;
  private final ShownEstimate estimate;
  private final Stage stage;
  private final PlaceEditor placing;

  StageKeys(
      Stage stage,
      PlacesEditor places,
      Marking marking,
      ShownEstimate estimate,
      Commands commands) {
    this.stage = stage;
    this.marking = marking;
    this.estimate = estimate;
    placing = places.placing();
    Viewport viewing = stage.viewing();
    commands.bind(
        Where.PLACES, Action.TOGGLE_OVERLAY, () -> viewing.toggle(placing.chosenProperty().get()));
    commands.bind(Where.PLACES, Action.SET_PLACES, placing::cancel);
    commands.bind(Where.PLACES, Action.DELETE, placing::delete);
    commands.bind(Where.PLACES, Action.UNDO, placing::undo);
    commands.bind(Where.PLACES, Action.REDO, placing::redo);
    commands.bind(Action.ZOOM_TO_HANDS, places::zoomToHands);
    commands.bind(Action.WHOLE_PICTURE, viewing::showWhole);
    commands.bind(
        Action.PREVIOUS_FRAME,
        () -> viewing.previousFrameProperty().set(!viewing.previousFrameProperty().get()));
    commands.bind(
        Action.TOGGLE_OVERLAY,
        () -> viewing.overlayShownProperty().set(!viewing.overlayShownProperty().get()));
    commands.bind(Action.SET_PLACES, places::begin);
    commands.bind(Action.LOOP_SLAP, this::loopSlap);
    commands.bind(Action.LOOP_TRIAL, () -> stopOr(stage::loopTrial));
    commands.bind(Action.LARGER, viewing::zoomIn);
    commands.bind(Action.SMALLER, viewing::zoomOut);
    commands.bind(Action.PAN, chord -> along(chord, 1, viewing::pan));
    for (OverlayItem what : OverlayItem.values()) {
      commands.bind(what.action(), () -> placing.choose(what));
    }
    commands.bind(Action.PLACE_MOVE, chord -> along(chord, 1, placing::move));
    commands.bind(Action.PLACE_FAR, chord -> along(chord, TEN, placing::move));
    commands.bind(Action.PLACE_SIZE, chord -> along(chord, 1, placing::resize));
    commands.bind(Action.PLACE_SIZE_FAR, chord -> along(chord, TEN, placing::resize));
    commands.bind(Action.PLACE_LENGTH, placing::type);
    commands.bind(Action.PLACE_FRAME, chord -> stage.step(chord.equals("PgUp") ? -1 : 1));
    commands.bind(Action.PLACE_KEEP, placing::save);
    commands.bind(Action.PLACE_LEAVE, placing::cancel);
  }

  private interface Movement {
    void go(int right, int down);
  }

  /** Goes where an arrow points, whatever is held down with it. */
  private static void along(String chord, int far, Movement way) {
    switch (chord.charAt(chord.length() - 1)) {
      case '←' -> way.go(-far, 0);
      case '→' -> way.go(far, 0);
      case '↑' -> way.go(0, -far);
      default -> way.go(0, far);
    }
  }

  /** Returns whether all keys set places just now. */
  boolean placing() {
    return placing.activeProperty().get();
  }

  private void loopSlap() {
    stopOr(
        () -> {
          Double at = lastSlapS();
          if (at == null) {
            stage.loopTrial();
          } else {
            stage.loop(at - BEFORE_S, at + AFTER_S);
          }
        });
  }

  private void stopOr(Runnable loop) {
    if (stage.loopingProperty().get()) {
      stage.stop();
    } else {
      loop.run();
    }
  }

  /** The slap at the frame that is shown, or the last before it; null where there is none. */
  private @Nullable Double lastSlapS() {
    FrameTable frames = stage.framesProperty().get();
    Reading reading = marking.readingProperty().get();
    Estimate made = estimate.visibleProperty().getValue();
    if (frames == null) {
      return null;
    }
    double untilS = stage.timeS() + frames.medianS() / 2;
    var times =
        reading != null && !reading.slaps().isEmpty()
            ? reading.slaps().stream().map(Slap::timeS)
            : made == null
                ? java.util.stream.Stream.<Double>empty()
                : made.slaps().stream().map(EstimatedSlap::timeS);
    return times.filter(time -> time <= untilS).max(Double::compare).orElse(null);
  }
}
