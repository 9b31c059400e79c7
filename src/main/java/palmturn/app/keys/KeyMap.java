package palmturn.app.keys;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The key of each action.
 *
 * @param changed the user's keys, for each action whose key is not the default
 */
public record KeyMap(Map<Action, String> changed) {
  /** The default keys. */
  public static final KeyMap DEFAULT = new KeyMap(Map.of());

  public KeyMap {
    changed = Map.copyOf(changed);
  }

  /** Returns an action's key, such as {@code F} or {@code Shift+→}; the first of fixed ones. */
  public String of(Action action) {
    return changed.getOrDefault(action, action.chords().get(0));
  }

  /** Returns the keys that are shown for an action: one, or all of fixed ones. */
  public List<String> shown(Action action) {
    return action.fixed() ? action.chords() : List.of(of(action));
  }

  /** Returns the action of a key in a context; a key given to another action comes first there. */
  public Optional<Action> actionFor(Where where, String chord) {
    List<Action> there =
        Stream.of(Action.values()).filter(each -> each.contexts().contains(where)).toList();
    return there.stream()
        .filter(each -> shown(each).contains(chord))
        .findFirst()
        .or(() -> there.stream().filter(each -> alternatives(each).contains(chord)).findFirst());
  }

  private static List<String> alternatives(Action action) {
    return action.fixed() ? List.of() : action.chords().subList(1, action.chords().size());
  }

  /** Returns the actions that an action would conflict with if it had a key. */
  public List<Action> conflicts(Action action, String chord) {
    boolean asItCame = chord.equals(action.chords().get(0));
    return Stream.of(Action.values())
        .filter(each -> each != action && each.overlaps(action) && shown(each).contains(chord))
        .filter(each -> !asItCame || changed.containsKey(each))
        .toList();
  }

  /** Returns these keys with another one for an action. */
  public KeyMap with(Action action, String chord) {
    Map<Action, String> next = new EnumMap<>(Action.class);
    next.putAll(changed);
    if (chord.equals(action.chords().get(0))) {
      next.remove(action);
    } else {
      next.put(action, chord);
    }
    return new KeyMap(next);
  }

  /** Returns the changed keys by the actions' names in the settings file. */
  public Map<String, String> toSettings() {
    Map<String, String> named = new TreeMap<>();
    changed.forEach((action, chord) -> named.put(action.code(), chord));
    return named;
  }

  /**
   * Returns the keys that a settings file holds.
   *
   * @throws IllegalArgumentException on an unknown action or key, or a key given twice
   */
  public static KeyMap fromSettings(Map<String, String> named) {
    KeyMap map = DEFAULT;
    List<Action> given = new ArrayList<>();
    for (Map.Entry<String, String> each : named.entrySet()) {
      Action action =
          Action.withCode(each.getKey())
              .orElseThrow(
                  () -> new IllegalArgumentException("no action is called " + each.getKey()));
      if (!Chord.isValid(each.getValue())) {
        throw new IllegalArgumentException(each.getValue() + " is not a key");
      }
      map = map.with(action, each.getValue());
      given.add(action);
    }
    for (Action action : given) {
      List<Action> others = map.conflicts(action, map.of(action));
      if (!others.isEmpty()) {
        throw new IllegalArgumentException(
            "%s is given to two actions, %s and %s"
                .formatted(map.of(action), action.words(), others.get(0).words()));
      }
    }
    return map;
  }
}
