package palmturn.app.pair;

import java.util.List;
import java.util.function.Consumer;
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
  private final Label words = Nodes.named("pair-words", "second");
  private final Label sides = Nodes.named("pair-sides", "over");
  private final Label speed = Nodes.named("pair-speed", "second");

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
    listeners.onChange(pair.playingProperty(), this::showWords);
    listeners.onEachFrame(pair.playingProperty(), () -> pair.tick(System.nanoTime()));
    placePictures();
  }

  private HBox head() {
    words.setMinWidth(0);
    sides.setMinWidth(Region.USE_PREF_SIZE);
    speed.setMinWidth(Region.USE_PREF_SIZE);
    Label title = Nodes.whole("The same moment, both hands", "title");
    HBox head = Nodes.row(look.px(16), title, words, sides, Nodes.space(), speed);
    head.setMinHeight(look.px(44));
    head.getStyleClass().setAll("pair-head");
    return head;
  }

  private VBox nobody() {
    Label title = Nodes.label("No trial to compare", "big");
    Label why = Nodes.named("pair-empty", "second");
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
