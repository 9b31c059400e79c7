package palmturn.app;

import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.stage.OverlayItem;
import palmturn.app.stage.PlaceEditor;
import palmturn.app.stage.Stage;
import palmturn.app.stage.Viewport;
import palmturn.clip.FrameTable;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Slap;

/** What keys do with the picture: how it is looked at, looped, and pointed at. */
final class StageKeys {
  private static final int TEN = 10;

  /** How much is seen before and after a slap that is looped, seconds. */
  private static final double BEFORE_S = 0.25;

  private static final double AFTER_S = 0.15;

  private final Desk desk;
  private final Stage stage;
  private final PlaceEditor placing;

  StageKeys(Desk desk, Commands does) {
    this.desk = desk;
    stage = desk.stage();
    placing = desk.places().placing();
    Viewport viewing = stage.viewing();
    does.bind(
        Where.PLACES, Action.TOGGLE_OVERLAY, () -> viewing.toggle(placing.chosenProperty().get()));
    does.bind(Where.PLACES, Action.SET_PLACES, placing::cancel);
    does.bind(Where.PLACES, Action.DELETE, placing::delete);
    does.bind(Where.PLACES, Action.UNDO, placing::undo);
    does.bind(Where.PLACES, Action.REDO, placing::redo);
    does.bind(Action.ZOOM_TO_HANDS, desk.places()::zoomToHands);
    does.bind(Action.WHOLE_PICTURE, viewing::showWhole);
    does.bind(
        Action.PREVIOUS_FRAME,
        () -> viewing.previousFrameProperty().set(!viewing.previousFrameProperty().get()));
    does.bind(
        Action.TOGGLE_OVERLAY,
        () -> viewing.overlayShownProperty().set(!viewing.overlayShownProperty().get()));
    does.bind(Action.SET_PLACES, desk.places()::begin);
    does.bind(Action.LOOP_SLAP, this::loopSlap);
    does.bind(Action.LOOP_TRIAL, () -> stopOr(stage::loopTrial));
    does.bind(Action.LARGER, viewing::zoomIn);
    does.bind(Action.SMALLER, viewing::zoomOut);
    does.bind(Action.PAN, chord -> along(chord, 1, viewing::pan));
    for (OverlayItem what : OverlayItem.values()) {
      does.bind(what.action(), () -> placing.choose(what));
    }
    does.bind(Action.PLACE_MOVE, chord -> along(chord, 1, placing::move));
    does.bind(Action.PLACE_FAR, chord -> along(chord, TEN, placing::move));
    does.bind(Action.PLACE_SIZE, chord -> along(chord, 1, placing::resize));
    does.bind(Action.PLACE_SIZE_FAR, chord -> along(chord, TEN, placing::resize));
    does.bind(Action.PLACE_LENGTH, placing::type);
    does.bind(Action.PLACE_FRAME, chord -> stage.step(chord.equals("PgUp") ? -1 : 1));
    does.bind(Action.PLACE_KEEP, placing::save);
    does.bind(Action.PLACE_LEAVE, placing::cancel);
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
    Reading reading = desk.marking().readingProperty().get();
    Estimate made = desk.estimation().found().visibleProperty().getValue();
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
