package palmturn.app.keys;

import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** Chooses an action on the sheet of all keys and gives it the key that is pressed next. */
public final class KeyChange {
  private static final String HELP = "Arrow keys choose, Enter changes a key, Del takes it back.";

  private final KeyBindings keys;
  private final ReadOnlyObjectWrapper<Action> chosen = new ReadOnlyObjectWrapper<>(Action.PALM);
  private final ReadOnlyBooleanWrapper asking = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper(HELP);
  private String conflicting = "";

  KeyChange(KeyBindings keys) {
    this.keys = keys;
  }

  /** The action that keys are about. */
  public ReadOnlyObjectProperty<Action> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** Whether the key that is pressed next is the action's new one. */
  public ReadOnlyBooleanProperty askingProperty() {
    return asking.getReadOnlyProperty();
  }

  /** What can be done, or what came of it. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Begins with nothing asked, where it was left. */
  public void begin() {
    stopAsking(HELP);
  }

  /** Says something in place of what can be done. */
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
      stopAsking("“%s” keeps its keys.".formatted(action.words()));
      return;
    }
    conflicting = "";
    asking.set(true);
    words.set(
        "Press the new key for “%s”, now %s. Esc leaves it."
            .formatted(action.words(), keys.of(action)));
  }

  /** Makes all keys what they were when they came. */
  public void resetAll() {
    keys.set(KeyMap.DEFAULT);
    stopAsking("All keys are as they came.");
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
      words.set("That key can't be taken. Press another, or Esc to leave it.");
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
                ? "%s again: that gets %s. Or press another key; Esc leaves it."
                    .formatted(chord, old)
                : other.fixed()
                    ? "It stays that. Press another key, or Esc to leave it."
                    : "Press another key, or Esc and change that one first."));
  }

  private void stopAsking(String what) {
    conflicting = "";
    asking.set(false);
    words.set(what);
  }

  private void moveAcross(int by) {
    List<List<KeyLines.Entry>> columns = columns();
    for (int column = 0; column < columns.size(); column++) {
      List<KeyLines.Entry> lines = columns.get(column);
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
    for (List<KeyLines.Entry> lines : columns()) {
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
  private static List<List<KeyLines.Entry>> columns() {
    return KeyLines.columns().stream()
        .map(groups -> groups.stream().flatMap(each -> KeyLines.of(each).stream()).toList())
        .toList();
  }
}
