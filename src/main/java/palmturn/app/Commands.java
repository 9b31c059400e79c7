package palmturn.app;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;

/** What each action does, wherever it can be done. */
final class Commands {
  private final Map<Where, Map<Action, Consumer<String>>> all = new EnumMap<>(Where.class);

  /** Says what an action does wherever nothing else was said. */
  void bind(Action action, Runnable what) {
    bind(action, chord -> what.run());
  }

  /**
   * Says what an action does wherever nothing else was said.
   *
   * @param what is told which of the action's keys was pressed
   */
  void bind(Action action, Consumer<String> what) {
    for (Where where : action.contexts()) {
      at(where).putIfAbsent(action, what);
    }
  }

  /** Says what an action does in one place. */
  void bind(Where where, Action action, Runnable what) {
    at(where).put(action, chord -> what.run());
  }

  /** Makes sure that every action does something wherever it can be done. */
  void checkComplete() {
    for (Action action : Action.values()) {
      for (Where where : action.contexts()) {
        command(where, action, "");
      }
    }
  }

  /** Returns what an action does. */
  Runnable command(Where where, Action action, String chord) {
    Consumer<String> what =
        Objects.requireNonNull(at(where).get(action), () -> action + " has no does in " + where);
    return () -> what.accept(chord);
  }

  private Map<Action, Consumer<String>> at(Where where) {
    return all.computeIfAbsent(where, none -> new EnumMap<>(Action.class));
  }
}
