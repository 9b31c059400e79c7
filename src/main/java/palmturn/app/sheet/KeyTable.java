package palmturn.app.sheet;

import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import palmturn.app.hints.Hint;
import palmturn.app.hints.Hints;
import palmturn.app.hints.KeyCaps;
import palmturn.app.look.Look;

/** Keys beside what they do, in columns. */
final class KeyTable {
  private KeyTable() {}

  static Node all(Look look, Consumer<String> press) {
    HBox columns = new HBox(look.px(48));
    for (Hints.Group group : Hints.GROUPS) {
      columns.getChildren().add(column(group, look, press));
    }
    return columns;
  }

  static Node more(Look look, Consumer<String> press) {
    return column(Hints.MORE, look, press);
  }

  private static VBox column(Hints.Group group, Look look, Consumer<String> press) {
    VBox column = new VBox(look.px(8));
    if (!group.name().isEmpty()) {
      Label name = new Label(group.name());
      name.getStyleClass().add("strong");
      column.getChildren().add(name);
    }
    for (Hint hint : group.hints()) {
      column.getChildren().add(KeyCaps.of(hint, look, press));
    }
    return column;
  }
}
