package palmturn.app.sheet;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** A sheet over the window: a heading, what it holds, and a row of choices. */
final class Sheet extends StackPane {
  private final HBox choices;
  private @Nullable Node first;

  Sheet(String heading, Look look, List<? extends Node> content) {
    getStyleClass().setAll("sheet-ground");
    choices = new HBox(look.px(12));
    choices.setAlignment(Pos.CENTER_RIGHT);
    VBox box = new VBox(look.px(16), Nodes.label(heading, "sheet-title"));
    box.getStyleClass().setAll("sheet");
    box.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    box.getChildren().addAll(content);
    box.getChildren().add(choices);
    getChildren().setAll(box);
  }

  Sheet addButton(String id, String words, boolean main, Runnable press) {
    Button button = Nodes.button(id, words, press, main ? "main-choice" : "choice");
    button.setDefaultButton(main);
    choices.getChildren().add(button);
    return this;
  }

  /** Gives a part the focus when the sheet comes into sight; null leaves it to the sheet. */
  Sheet focusOn(@Nullable Node part) {
    first = part;
    return this;
  }

  /** Returns the part that gets the focus; null for the sheet itself. */
  @Nullable Node first() {
    return first;
  }
}
