package palmturn.app.keys;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class KeyChangeTest {
  private final KeyBindings keys = new KeyBindings();
  private final KeyChange change = keys.change();

  @Test
  void nextKeyBecomesTheActionsOwn() {
    change.ask(Action.GO_THROUGH);
    assertEquals(
        "Press the new key for “check every slap, one by one”, now C. Esc cancels.",
        change.wordsProperty().get());
    press("F8");
    assertEquals("F8", keys.of(Action.GO_THROUGH));
    assertFalse(change.askingProperty().get());
  }

  @Test
  void clashIsSaidAndTheSameKeyAgainMakesThemChangePlaces() {
    change.ask(Action.PALM);
    press("G");
    assertTrue(change.askingProperty().get());
    assertEquals(
        "G is “start or end: target moved”. Press G again to give that one F, or another key; Esc"
            + " cancels.",
        change.wordsProperty().get());
    assertEquals(KeyMap.DEFAULT, keys.map());
    press("G");
    assertEquals("G", keys.of(Action.PALM));
    assertEquals("F", keys.of(Action.TARGET_MOVED));
  }

  @Test
  void fixedKeysAreNeitherChangedNorGivenAway() {
    change.ask(Action.FRAME_BACK);
    assertFalse(change.askingProperty().get());
    change.ask(Action.PLAY);
    press("→", "→");
    assertTrue(change.askingProperty().get());
    press("Esc");
    assertEquals(KeyMap.DEFAULT, keys.map());
    assertFalse(change.press("Esc"));
  }

  @Test
  void oneOrAllGoBackToHowTheyCame() {
    change.ask(Action.PLAY);
    press("F8");
    change.ask(Action.FINISH);
    press("F9");
    press("Del");
    assertEquals("Enter", keys.of(Action.FINISH));
    assertEquals("F8", keys.of(Action.PLAY));
    change.resetAll();
    assertEquals(KeyMap.DEFAULT, keys.map());
  }

  @Test
  void arrowsReachEveryListedAction() {
    Set<Action> reached = new HashSet<>();
    Set<Action> before = Set.of();
    reached.add(change.chosenProperty().get());
    while (!reached.equals(before)) {
      before = Set.copyOf(reached);
      for (Action from : before) {
        for (String arrow : new String[] {"←", "→", "↑", "↓"}) {
          change.ask(from);
          press("Esc");
          change.press(arrow);
          reached.add(change.chosenProperty().get());
        }
      }
    }
    for (Action action : Action.values()) {
      assertEquals(action.group() != Action.Group.UNLISTED, reached.contains(action), action::name);
    }
  }

  private void press(String... chords) {
    for (String chord : chords) {
      change.press(chord);
    }
  }
}
