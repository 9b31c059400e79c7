package palmturn.app.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import palmturn.app.hints.KeyCaps;
import palmturn.app.hints.KeyHints;
import palmturn.app.keys.Action;
import palmturn.app.keys.Chord;
import palmturn.app.keys.KeyBindings;
import palmturn.app.keys.KeyChange;
import palmturn.app.keys.KeyLines;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** The table of all keys; each can be changed in place. */
final class KeyTable {
  private final KeyBindings keys;
  private final Look look;
  private final Listeners listeners;
  private final ScrollPane scroll = new ScrollPane();

  KeyTable(KeyBindings keys, Look look, Listeners listeners) {
    this.keys = keys;
    this.look = look;
    this.listeners = listeners;
  }

  /** Returns all keys, and the help line on changing one. */
  List<Node> allKeys() {
    HBox columns = new HBox(look.px(14));
    scroll.setContent(columns);
    for (List<Action.Group> groups : KeyLines.columns()) {
      VBox column = new VBox();
      groups.forEach(group -> add(group, column));
      columns.getChildren().add(column);
    }
    scroll.setFocusTraversable(false);
    scroll.setMinHeight(look.px(120));
    // The last column stands clear of the bar.
    columns.setPadding(new Insets(0, look.px(12), 0, 0));
    Label words = Nodes.named("keys-words", "second");
    words.textProperty().bind(keys.change().wordsProperty());
    words.setWrapText(true);
    words.setMaxWidth(look.px(1000));
    listeners.onValue(
        keys.change().askingProperty(),
        asking -> words.getStyleClass().setAll("label", asking ? "strong" : "second"));
    return List.of(scroll, words);
  }

  /** Returns the rarer marks. */
  static Node moreMarks(KeyMap keys, Look look, Consumer<String> press) {
    VBox column = new VBox(look.px(8));
    KeyHints.MORE_MARKS.forEach(
        hint -> column.getChildren().add(KeyCaps.of(hint, keys, look, press)));
    return column;
  }

  private void add(Action.Group group, VBox column) {
    Label name = Nodes.label(group.words(), "strong");
    if (!column.getChildren().isEmpty()) {
      column.getChildren().add(new Label());
    }
    column.getChildren().add(name);
    for (KeyLines.KeyLine line : KeyLines.of(group)) {
      HBox row = Nodes.row(look.px(4));
      List<String> held = List.of();
      for (Action action : line.actions()) {
        row.getChildren().add(caps(action, held));
        held = modifiers(action);
      }
      row.getChildren().add(KeyCaps.words(line.words()));
      column.getChildren().add(row);
    }
  }

  private Node caps(Action action, List<String> heldBefore) {
    HBox caps = Nodes.row(look.px(2));
    caps.setId("key-of-" + action.name());
    boolean changed = keys.map().changed().containsKey(action);
    List<String> texts = texts(action);
    List<String> held = modifiers(action);
    // What is held down for neighbours too is shown once.
    for (String each : held.equals(heldBefore) ? texts.subList(held.size(), texts.size()) : texts) {
      Label cap = KeyCaps.cap(each, look);
      if (changed) {
        cap.getStyleClass().add("key-changed");
      }
      caps.getChildren().add(cap);
    }
    caps.getStyleClass().add("key-place");
    KeyChange change = keys.change();
    caps.setOnMouseClicked(event -> change.ask(action));
    listeners.onValue(
        change.chosenProperty(),
        chosen -> {
          Nodes.setStyle(caps, "key-chosen", chosen == action);
          if (chosen == action) {
            scrollTo(caps);
          }
        });
    return caps;
  }

  private void scrollTo(Node caps) {
    Node content = scroll.getContent();
    double spare = content.getLayoutBounds().getHeight() - scroll.getViewportBounds().getHeight();
    if (spare > 0) {
      double y = content.sceneToLocal(caps.localToScene(caps.getLayoutBounds())).getCenterY();
      scroll.setVvalue((y - scroll.getViewportBounds().getHeight() / 2) / spare);
    }
  }

  private List<String> modifiers(Action action) {
    List<String> parts = Chord.parts(keys.map().shown(action).get(0));
    return parts.subList(0, parts.size() - 1);
  }

  /** Several fixed keys under the same held ones need those only once. */
  private List<String> texts(Action action) {
    List<String> shown = keys.map().shown(action);
    List<String> first = Chord.parts(shown.get(0));
    if (shown.size() == 1) {
      return first;
    }
    if (shown.size() > 4) {
      return List.of(shown.get(0), "…", shown.get(shown.size() - 1));
    }
    List<String> texts = new ArrayList<>(modifiers(action));
    shown.forEach(chord -> texts.add(Chord.parts(chord).get(first.size() - 1)));
    return texts;
  }
}
