package palmturn.app.keys;

import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** The dialog on the sheet of all keys: choose an action, then press its new key. */
public final class KeyChange {
  private static final String HELP = "Arrow keys choose, Enter changes a key, Del resets it.";

  private final KeyBindings keys;
  private final ReadOnlyObjectWrapper<Action> chosen = new ReadOnlyObjectWrapper<>(Action.PALM);
  private final ReadOnlyBooleanWrapper asking = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper(HELP);
  private String conflicting = "";

  KeyChange(KeyBindings keys) {
    this.keys = keys;
  }

  /** The chosen action. */
  public ReadOnlyObjectProperty<Action> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** True while the next key pressed becomes the action's new key. */
  public ReadOnlyBooleanProperty askingProperty() {
    return asking.getReadOnlyProperty();
  }

  /** The help line, or the result of the last change. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Begins at the action chosen last. */
  public void begin() {
    stopAsking(HELP);
  }

  /** Shows a message in place of the help line. */
  public void showMessage(String what) {
    stopAsking(what);
  }

  /** Takes a key; returns whether it was for the sheet. */
  public boolean press(String chord) {
    if (asking.get()) {
      answer(chord);
      return true;
    }
    switch (chord) {
      case "←" -> moveAcross(-1);
      case "→" -> moveAcross(1);
      case "↑" -> moveDown(-1);
      case "↓" -> moveDown(1);
      case "Enter" -> ask(chosen.get());
      case "Del" -> reset();
      default -> {
        return false;
      }
    }
    return true;
  }

  /** Waits for the new key of an action. */
  public void ask(Action action) {
    chosen.set(action);
    if (action.fixed()) {
      stopAsking("The keys of “%s” are fixed.".formatted(action.words()));
      return;
    }
    conflicting = "";
    asking.set(true);
    words.set(
        "Press the new key for “%s”, now %s. Esc cancels."
            .formatted(action.words(), keys.of(action)));
  }

  /** Resets all keys to their defaults. */
  public void resetAll() {
    keys.set(KeyMap.DEFAULT);
    stopAsking("All keys are reset.");
  }

  private void reset() {
    Action action = chosen.get();
    if (action.fixed()) {
      ask(action);
    } else {
      assign(action, action.chords().get(0));
    }
  }

  private void answer(String chord) {
    if (chord.equals("Esc")) {
      stopAsking(HELP);
    } else if (chord.isEmpty()) {
      words.set("That key can't be used. Press another, or Esc to cancel.");
    } else {
      assign(chosen.get(), chord);
    }
  }

  private void assign(Action action, String chord) {
    List<Action> others = keys.map().conflicts(action, chord);
    String old = keys.of(action);
    if (others.isEmpty() || chord.equals(old)) {
      keys.change(map -> map.with(action, chord));
      stopAsking("“%s” is %s now.".formatted(action.words(), chord));
      return;
    }
    Action other = others.get(0);
    boolean canSwap =
        others.size() == 1
            && !other.fixed()
            && keys.map().with(action, chord).conflicts(other, old).isEmpty();
    if (canSwap && chord.equals(conflicting)) {
      keys.change(map -> map.with(action, chord).with(other, old));
      stopAsking(
          "“%s” is %s now, and “%s” is %s.".formatted(action.words(), chord, other.words(), old));
      return;
    }
    conflicting = chord;
    asking.set(true);
    words.set(
        "%s is “%s”. ".formatted(chord, other.words())
            + (canSwap
                ? "Press %s again to give that one %s, or another key; Esc cancels."
                    .formatted(chord, old)
                : other.fixed()
                    ? "It is fixed. Press another key, or Esc to cancel."
                    : "Press another key, or Esc and change that one first."));
  }

  private void stopAsking(String what) {
    conflicting = "";
    asking.set(false);
    words.set(what);
  }

  private void moveAcross(int by) {
    List<List<KeyLines.KeyLine>> columns = columns();
    for (int column = 0; column < columns.size(); column++) {
      List<KeyLines.KeyLine> lines = columns.get(column);
      for (int row = 0; row < lines.size(); row++) {
        List<Action> line = lines.get(row).actions();
        int at = line.indexOf(chosen.get());
        if (at >= 0) {
          int next = at + by;
          int beside = column + by;
          if (next >= 0 && next < line.size()) {
            choose(line.get(next));
          } else if (beside >= 0 && beside < columns.size()) {
            List<Action> there =
                columns.get(beside).get(Math.min(row, columns.get(beside).size() - 1)).actions();
            choose(there.get(by > 0 ? 0 : there.size() - 1));
          }
          return;
        }
      }
    }
  }

  private void moveDown(int by) {
    for (List<KeyLines.KeyLine> lines : columns()) {
      for (int row = 0; row < lines.size(); row++) {
        int at = lines.get(row).actions().indexOf(chosen.get());
        int next = row + by;
        if (at >= 0) {
          if (next >= 0 && next < lines.size()) {
            List<Action> there = lines.get(next).actions();
            choose(there.get(Math.min(at, there.size() - 1)));
          }
          return;
        }
      }
    }
  }

  private void choose(Action next) {
    chosen.set(next);
    stopAsking(HELP);
  }

  /** The sheet's columns, each from top to bottom. */
  private static List<List<KeyLines.KeyLine>> columns() {
    return KeyLines.columns().stream()
        .map(groups -> groups.stream().flatMap(each -> KeyLines.of(each).stream()).toList())
        .toList();
  }
}
