package palmturn.app.stage;

import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.hints.KeyCaps;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** The bar on the picture while places are set: the chosen one, and how to set it. */
final class PlaceBar extends VBox {
  PlaceBar(PlaceEditor placing, Look look, Listeners listeners) {
    super(look.px(4));
    getStyleClass().setAll("on-picture-box");
    setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    setTranslateY(look.px(12));
    setMouseTransparent(true);
    HBox choices = Nodes.row(look.px(12));
    for (OverlayItem what : OverlayItem.values()) {
      Label cap = KeyCaps.cap(KeyMap.DEFAULT.of(what.action()), look);
      Label name = new Label(what.words(), cap);
      name.setGraphicTextGap(look.px(4));
      name.setMinWidth(Region.USE_PREF_SIZE);
      listeners.onValue(
          placing.chosenProperty(), chosen -> Nodes.setStyle(name, "chosen-place", chosen == what));
      choices.getChildren().add(name);
    }
    Label words = new Label();
    words.setId("place-words");
    words.textProperty().bind(placing.wordsProperty());
    getChildren().setAll(choices, words);
    visibleProperty().bind(placing.activeProperty());
  }
}
