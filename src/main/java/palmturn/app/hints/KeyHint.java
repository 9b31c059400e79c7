package palmturn.app.hints;

import java.util.List;
import palmturn.app.keys.Action;

/**
 * A few words about actions, shown beside their keys.
 *
 * @param actions whose keys are shown
 * @param words what the actions do, in few words
 */
public record KeyHint(List<Action> actions, String words) {
  public KeyHint {
    actions = List.copyOf(actions);
  }

  static KeyHint of(String words, Action... actions) {
    return new KeyHint(List.of(actions), words);
  }
}
