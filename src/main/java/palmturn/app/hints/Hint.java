package palmturn.app.hints;

import java.util.List;
import palmturn.app.keys.Action;

/**
 * What can be done, told beside its keys.
 *
 * @param actions whose keys are shown
 * @param words what they do, in few words
 */
public record Hint(List<Action> actions, String words) {
  public Hint {
    actions = List.copyOf(actions);
  }

  static Hint of(String words, Action... actions) {
    return new Hint(List.of(actions), words);
  }
}
