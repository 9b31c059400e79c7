package palmturn.app.sheet;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** A sheet over the window: a heading, what it holds, and a row of choices. */
final class Sheet extends StackPane {
  private final HBox choices;

  Sheet(String heading, Look look, Node... content) {
    getStyleClass().setAll("sheet-ground");
    Label title = Nodes.label(heading, "sheet-title");
    VBox box = new VBox(look.px(16), title);
    box.getStyleClass().setAll("sheet");
    box.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    box.getChildren().addAll(content);
    choices = new HBox(look.px(12));
    choices.setAlignment(Pos.CENTER_RIGHT);
    box.getChildren().add(choices);
    getChildren().setAll(box);
  }

  Sheet addButton(String id, String words, boolean main, Runnable does) {
    Button button = new Button(words);
    button.setId(id);
    button.getStyleClass().setAll("button", main ? "main-choice" : "choice");
    button.setDefaultButton(main);
    button.setOnAction(event -> does.run());
    choices.getChildren().add(button);
    return this;
  }
}
