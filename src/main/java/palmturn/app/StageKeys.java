package palmturn.app;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.stage.Drawn;
import palmturn.app.stage.Placing;
import palmturn.app.stage.Stage;
import palmturn.app.stage.Viewing;
import palmturn.clip.FrameTable;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Slap;

/** The keys of the picture: how it is looked at, looped, and pointed at. */
final class StageKeys {
  private static final int TEN = 10;

  /** How much is seen before and after a slap that is looped, seconds. */
  private static final double BEFORE_S = 0.25;

  private static final double AFTER_S = 0.15;

  private final Desk desk;
  private final Stage stage;
  private final Placing placing;
  private final Map<String, Runnable> anywhere = new HashMap<>();
  private final Map<String, Runnable> onPicture = new HashMap<>();
  private final Map<String, Runnable> whilePlacing = new HashMap<>();

  StageKeys(Desk desk) {
    this.desk = desk;
    stage = desk.stage();
    placing = desk.places().placing();
    Viewing viewing = stage.viewing();
    anywhere.put("V", desk.places()::ontoHands);
    anywhere.put("0", viewing::whole);
    anywhere.put("B", () -> viewing.ghostProperty().set(!viewing.ghostProperty().get()));
    anywhere.put("U", () -> viewing.drawnProperty().set(!viewing.drawnProperty().get()));
    anywhere.put("Q", desk.places()::begin);
    anywhere.put("Y", this::loopSlap);
    anywhere.put("Shift+Y", () -> stopOr(stage::loopTrial));
    onPicture.put("+", viewing::larger);
    onPicture.put("−", viewing::smaller);
    onPicture.put("Alt+←", () -> viewing.look(-1, 0));
    onPicture.put("Alt+→", () -> viewing.look(1, 0));
    onPicture.put("Alt+↑", () -> viewing.look(0, -1));
    onPicture.put("Alt+↓", () -> viewing.look(0, 1));
    placing(viewing);
  }

  private void placing(Viewing viewing) {
    for (Drawn what : Drawn.values()) {
      whilePlacing.put(what.key(), () -> placing.choose(what));
    }
    arrow("←", -1, 0);
    arrow("→", 1, 0);
    arrow("↑", 0, -1);
    arrow("↓", 0, 1);
    for (int digit = 0; digit <= 9; digit++) {
      String typed = String.valueOf(digit);
      whilePlacing.put(typed, () -> placing.type(typed));
    }
    whilePlacing.put(".", () -> placing.type("."));
    whilePlacing.put("Del", placing::delete);
    whilePlacing.put("Z", placing::undo);
    whilePlacing.put("Ctrl+Z", placing::undo);
    whilePlacing.put("Shift+Z", placing::redo);
    whilePlacing.put("Ctrl+Y", placing::redo);
    whilePlacing.put("Enter", placing::keep);
    whilePlacing.put("Q", placing::leave);
    whilePlacing.put("Esc", placing::leave);
    whilePlacing.put("U", () -> viewing.hideOrShow(placing.chosenProperty().get()));
    whilePlacing.put("V", desk.places()::ontoHands);
    whilePlacing.put("+", viewing::larger);
    whilePlacing.put("−", viewing::smaller);
    whilePlacing.put("PgUp", () -> stage.step(-1));
    whilePlacing.put("PgDn", () -> stage.step(1));
  }

  private void arrow(String key, int right, int down) {
    whilePlacing.put(key, () -> placing.move(right, down));
    whilePlacing.put("Shift+" + key, () -> placing.move(TEN * right, TEN * down));
    whilePlacing.put("Alt+" + key, () -> placing.resize(right, down));
    whilePlacing.put("Alt+Shift+" + key, () -> placing.resize(TEN * right, TEN * down));
  }

  /** Returns whether all keys set places just now. */
  boolean placing() {
    return placing.activeProperty().get();
  }

  /** Returns what a key does; null for one that is not of the picture. */
  @Nullable Runnable action(String chord, boolean focused) {
    if (placing()) {
      return whilePlacing.get(chord);
    }
    Runnable here = focused ? onPicture.get(chord) : null;
    return here != null ? here : anywhere.get(chord);
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
