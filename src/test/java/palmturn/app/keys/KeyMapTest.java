package palmturn.app.keys;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class KeyMapTest {
  private static final KeyMap CAME = KeyMap.DEFAULT;

  @Test
  void asTheyComeNoKeyStandsForTwoThingsInOnePlaceAndNoNameIsUsedTwice() {
    Set<String> names = new HashSet<>();
    for (Where where : Where.values()) {
      Map<String, Action> there = new HashMap<>();
      for (Action action : Action.values()) {
        if (action.contexts().contains(where)) {
          for (String chord : action.chords()) {
            Action other = there.put(chord, action);
            assertEquals(null, other, () -> chord + " in " + where);
          }
        }
      }
    }
    for (Action action : Action.values()) {
      assertTrue(action.fixed() || names.add(action.code()), action::code);
      assertTrue(action.fixed() || action.chords().stream().allMatch(Chord::isValid), action::name);
    }
  }

  @Test
  void changedKeyHoldsWhereverTheActionIsDoneAndTheOldOneIsFree() {
    KeyMap map = CAME.with(Action.PALM, "Ctrl+I");
    for (Where where : Action.PALM.contexts()) {
      assertEquals(Optional.of(Action.PALM), map.actionFor(where, "Ctrl+I"));
      assertEquals(Optional.empty(), map.actionFor(where, "F"));
    }
  }

  @Test
  void keyThatStandsBesideGivesWayToOneThatTheUserGave() {
    assertEquals(Optional.of(Action.UNDO), CAME.actionFor(Where.WINDOW, "Ctrl+Z"));
    assertEquals(List.of(), CAME.conflicts(Action.PLAY, "Ctrl+Z"));
    KeyMap map = CAME.with(Action.PLAY, "Ctrl+Z");
    assertEquals(Optional.of(Action.PLAY), map.actionFor(Where.TRIAL, "Ctrl+Z"));
    assertEquals(Optional.of(Action.UNDO), map.actionFor(Where.WINDOW, "Z"));
  }

  @Test
  void oneKeyMayStandForTwoThingsOnlyWhereNeverBothAreMeant() {
    assertEquals(List.of(Action.ADD), CAME.conflicts(Action.PALM, "A"));
    assertEquals(List.of(), CAME.conflicts(Action.LARGER, "C"));
    assertEquals(List.of(), CAME.with(Action.FINISH, "F8").conflicts(Action.FINISH, "Enter"));
  }

  @Test
  void changesComeBackFromTheirNames() {
    KeyMap map = CAME.with(Action.PALM, "Q").with(Action.SET_PLACES, "Ctrl+Alt+Shift+F");
    assertEquals(map, KeyMap.fromSettings(map.toSettings()));
    assertEquals(CAME, map.with(Action.PALM, "F").with(Action.SET_PLACES, "Q"));
  }

  @Test
  void wrongNamesKeysAndClashesAreTold() {
    assertEquals("no action is called palms", wrong(Map.of("palms", "F")));
    assertEquals("Ctrl+ff is not a key", wrong(Map.of("palm", "Ctrl+ff")));
    assertTrue(wrong(Map.of("palm", "J")).startsWith("J is given to two actions"));
    assertTrue(wrong(Map.of("palm", "Esc")).startsWith("Esc is given to two actions"));
    assertEquals("J", KeyMap.fromSettings(Map.of("palm", "J", "back", "F")).of(Action.PALM));
  }

  @Test
  void heldKeysAreToldApartFromPlus() {
    assertEquals(List.of("Ctrl", "+"), Chord.parts("Ctrl++"));
    assertEquals(List.of("+"), Chord.parts("+"));
    assertEquals(List.of("Alt", "Shift", "←"), Chord.parts("Alt+Shift+←"));
  }

  private static String wrong(Map<String, String> named) {
    return String.valueOf(
        assertThrows(IllegalArgumentException.class, () -> KeyMap.fromSettings(named))
            .getMessage());
  }
}
