package palmturn.app.pair;

import java.util.List;
import java.util.function.Consumer;
import javafx.animation.AnimationTimer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;
import palmturn.app.hints.KeyCaps;
import palmturn.app.hints.KeyHints;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.measure.TrialAlignment;

/** Both hands at the same moment: two pictures side by side, and their slaps under one another. */
public final class PairView extends VBox {
  private final TrialPair pair;
  private final Look look;
  private final HBox pictures;
  private final PairMemberView one;
  private final PairMemberView other;
  private final VBox nobody;
  private final PairStripView strip;
  private final Label words = new Label();
  private final Label sides = new Label();
  private final Label speed = new Label();
  private final AnimationTimer clock =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          pair.tick(System.nanoTime());
        }
      };

  /**
   * Builds the pane.
   *
   * @param keys which key stands for what
   * @param press is told which key was clicked
   */
  public PairView(
      TrialPair pair, KeyMap keys, Look look, Consumer<String> press, Listeners listeners) {
    this.pair = pair;
    this.look = look;
    getStyleClass().setAll("pair");
    setId("pair");
    setFocusTraversable(true);
    setAccessibleText("The same moment, both hands");
    pictures = new HBox(look.px(16));
    pictures.getStyleClass().setAll("pair-pictures");
    VBox.setVgrow(pictures, Priority.ALWAYS);
    one = new PairMemberView(pair.one(), "pair-one", List.of(), look, listeners);
    other =
        new PairMemberView(
            pair.other(),
            "pair-other",
            List.of(KeyCaps.of(KeyHints.OTHER_TRIAL, keys, look, press)),
            look,
            listeners);
    nobody = nobody();
    for (Region part : List.of(one, other, nobody)) {
      HBox.setHgrow(part, Priority.ALWAYS);
      part.setMinWidth(0);
      part.setPrefWidth(0);
    }
    strip = new PairStripView(pair, look, listeners);
    strip.managedProperty().bind(strip.visibleProperty());
    heightProperty().addListener((height, before, now) -> strip.fitInto(now.doubleValue()));
    getChildren().setAll(head(), pictures, strip);
    listeners.onChange(pair.missingReasonProperty(), this::placePictures);
    listeners.onChange(pair.one().trialProperty(), this::placePictures);
    listeners.onChange(pair.other().trialProperty(), this::placePictures);
    listeners.onChange(pair.meetingProperty(), this::showWords);
    listeners.onChange(pair.speedProperty(), this::showWords);
    listeners.onValue(pair.playingProperty(), this::runClock);
    listeners.onEnd(clock::stop);
    placePictures();
  }

  private HBox head() {
    Label title = Nodes.label("The same moment, both hands", "title");
    title.setMinWidth(Region.USE_PREF_SIZE);
    words.setId("pair-words");
    words.getStyleClass().add("second");
    words.setMinWidth(0);
    sides.setId("pair-sides");
    sides.getStyleClass().add("over");
    sides.setMinWidth(Region.USE_PREF_SIZE);
    speed.setId("pair-speed");
    speed.getStyleClass().add("second");
    speed.setMinWidth(Region.USE_PREF_SIZE);
    HBox head = new HBox(look.px(16), title, words, sides, Nodes.space(), speed);
    head.setAlignment(Pos.CENTER_LEFT);
    head.setMinHeight(look.px(44));
    head.getStyleClass().setAll("pair-head");
    return head;
  }

  private VBox nobody() {
    Label title = Nodes.label("No trial to compare", "big");
    Label why = new Label();
    why.setId("pair-empty");
    why.getStyleClass().add("second");
    why.setWrapText(true);
    why.setTextAlignment(TextAlignment.CENTER);
    why.setMaxWidth(look.px(340));
    why.textProperty().bind(pair.missingReasonProperty());
    VBox box = new VBox(look.px(8), title, why);
    box.setAlignment(Pos.CENTER);
    box.getStyleClass().setAll("guide");
    return box;
  }

  private void placePictures() {
    boolean alone = pair.other().trialProperty().get() == null;
    Node beside = alone ? nobody : other;
    strip.setVisible(!alone);
    pictures
        .getChildren()
        .setAll(pair.left() == pair.one() ? List.of(one, beside) : List.of(beside, one));
    showWords();
  }

  private void runClock(boolean playing) {
    if (playing) {
      clock.start();
    } else {
      clock.stop();
    }
    showWords();
  }

  private void showWords() {
    TrialAlignment now = pair.meetingProperty().get();
    PairTrial here = pair.one().trialProperty().get();
    PairTrial there = pair.other().trialProperty().get();
    words.setText(
        now == null || here == null || there == null
            ? ""
            : PairWords.alignment(
                now, PairWords.nameBeside(here, there), PairWords.nameBeside(there, here)));
    sides.setText(now == null ? "" : PairWords.sidesWarning(now));
    speed.setText(
        (pair.playingProperty().get() ? "playing at " : "play speed ")
            + pair.speedProperty().get().words()
            + " of real time");
  }
}
