package palmturn.app;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;

/** The command of each action, in every place where the action can be done. */
final class Commands {
  private final Map<Where, Map<Action, Consumer<String>>> all = new EnumMap<>(Where.class);

  /** Binds an action to a command in all of its places that have none yet. */
  void bind(Action action, Runnable command) {
    bind(action, chord -> command.run());
  }

  /**
   * Binds an action to a command in all of its places that have none yet.
   *
   * @param command gets the action's key that was pressed
   */
  void bind(Action action, Consumer<String> command) {
    for (Where where : action.contexts()) {
      at(where).putIfAbsent(action, command);
    }
  }

  /** Binds an action to a command in one place. */
  void bind(Where where, Action action, Runnable command) {
    at(where).put(action, chord -> command.run());
  }

  /**
   * Checks that every action has a command in each of its places.
   *
   * @throws NullPointerException if one has none
   */
  void checkComplete() {
    for (Action action : Action.values()) {
      for (Where where : action.contexts()) {
        command(where, action, "");
      }
    }
  }

  /** Returns an action's command. */
  Runnable command(Where where, Action action, String chord) {
    Consumer<String> command =
        Objects.requireNonNull(at(where).get(action), () -> action + " has no command in " + where);
    return () -> command.accept(chord);
  }

  private Map<Action, Consumer<String>> at(Where where) {
    return all.computeIfAbsent(where, none -> new EnumMap<>(Action.class));
  }
}
