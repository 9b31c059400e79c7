package palmturn.app.hints;

import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import palmturn.app.keys.Chord;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** Keys drawn as outlined caps, 22 high, followed by what they do. */
public final class KeyCaps {
  private KeyCaps() {}

  /**
   * Returns one hint's caps and words.
   *
   * @param press is told which key was clicked, as {@code F} or {@code Shift+→}
   */
  public static HBox of(KeyHint hint, KeyMap keys, Look look, Consumer<String> press) {
    HBox row = Nodes.row(look.px(4));
    List<String> chords =
        hint.actions().stream().flatMap(each -> keys.shown(each).stream()).toList();
    List<String> heldBefore = List.of();
    for (String chord : chords) {
      List<String> parts = Chord.parts(chord);
      List<String> held = parts.subList(0, parts.size() - 1);
      // What is held down for several keys in a row is shown once.
      for (String each :
          held.equals(heldBefore) ? parts.subList(held.size(), parts.size()) : parts) {
        Label cap = cap(each, look);
        cap.setOnMouseClicked(event -> press.accept(chord));
        row.getChildren().add(cap);
      }
      heldBefore = held;
    }
    Label words = words(hint.words());
    if (chords.size() == 1) {
      words.setOnMouseClicked(event -> press.accept(chords.get(0)));
    }
    row.getChildren().add(words);
    return row;
  }

  /** Returns the cap of one key. */
  public static Label cap(String key, Look look) {
    Label cap = Nodes.label(key, "key");
    cap.setMinWidth(look.px(22));
    Nodes.setHeight(cap, look.px(22));
    cap.setAlignment(Pos.CENTER);
    return cap;
  }

  /** Returns the words behind caps. */
  public static Label words(String text) {
    return Nodes.whole(text, "key-words");
  }
}
