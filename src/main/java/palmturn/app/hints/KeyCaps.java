package palmturn.app.hints;

import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import palmturn.app.look.Look;

/** Draws keys as outlined caps, 22 high, with what they do behind them. */
public final class KeyCaps {
  private static final List<String> HELD = List.of("Ctrl", "Shift", "Alt");

  private KeyCaps() {}

  /**
   * Returns one hint's caps and words.
   *
   * @param press is told which key was clicked, as {@code F} or {@code Shift+→}
   */
  public static HBox of(Hint hint, Look look, Consumer<String> press) {
    HBox row = new HBox(look.px(4));
    row.setAlignment(Pos.CENTER_LEFT);
    String held = "";
    String last = "";
    for (String key : hint.keys()) {
      if (HELD.contains(key)) {
        held = key + "+";
      } else {
        last = held + key;
      }
      String chord = HELD.contains(key) ? held + hint.keys().get(1) : last;
      Label cap = new Label(key);
      cap.getStyleClass().add("key");
      cap.setMinSize(look.px(22), look.px(22));
      cap.setMaxHeight(look.px(22));
      cap.setOnMouseClicked(event -> press.accept(chord));
      row.getChildren().add(cap);
    }
    String chord = last;
    Label words = new Label(hint.words());
    words.getStyleClass().add("key-words");
    words.setMinWidth(Region.USE_PREF_SIZE);
    if (hint.keys().size() == 1 || hint.keys().size() == 2 && !held.isEmpty()) {
      words.setOnMouseClicked(event -> press.accept(chord));
    }
    row.getChildren().add(words);
    return row;
  }
}
