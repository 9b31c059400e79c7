package palmturn.app;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Prompts;
import palmturn.app.desk.Question;
import palmturn.app.desk.Questions;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.keys.Where;

/** The way from a key press to the command of its action. */
final class Keyboard {
  private static final Set<Action> ON_KEY_SHEET =
      EnumSet.of(
          Action.PRINT_KEYS,
          Action.THEME,
          Action.REDUCE_MOTION,
          Action.TEXT_LARGER,
          Action.TEXT_SMALLER);

  private final KeyBindings keys;
  private final Questions questions;
  private final KeyboardFocus focus;
  private final PendingMarks pendingMarks;
  private final Commands commands;
  private final BooleanSupplier buttonFocused;

  /**
   * Listens to nothing yet.
   *
   * @param commands those of all actions
   * @param buttonFocused returns whether a button has the focus
   */
  Keyboard(
      Prompts prompts,
      KeyboardFocus focus,
      PendingMarks pendingMarks,
      Commands commands,
      BooleanSupplier buttonFocused) {
    keys = prompts.keys();
    questions = prompts.questions();
    this.focus = focus;
    this.pendingMarks = pendingMarks;
    this.commands = commands;
    this.buttonFocused = buttonFocused;
    commands.checkComplete();
  }

  /** Runs a key's command; returns whether the key stands for anything here. */
  boolean press(String chord) {
    Question asked = questions.current();
    if (asked != null) {
      return switch (asked.keyUse()) {
        case KEY_SHEET -> pressOnKeySheet(chord);
        case SHEET -> closeIf(chord.equals("Esc"));
        case WINDOW -> closeIf(!chord.equals("Enter")) && (chord.equals("Esc") || run(chord));
      };
    }
    if (pendingMarks.isWaiting()) {
      if (chord.equals("Esc")) {
        pendingMarks.clear();
      } else {
        pendingMarks.runAfter(() -> press(chord));
      }
      return true;
    }
    return run(chord);
  }

  private boolean closeIf(boolean closes) {
    if (closes) {
      questions.close();
    }
    return closes;
  }

  private boolean run(String chord) {
    Runnable command = command(chord);
    if (command != null) {
      command.run();
    }
    return command != null;
  }

  /** Returns whether the next key is to become one of an action, whatever it is. */
  boolean waitsForKey() {
    Question asked = questions.current();
    return asked != null
        && asked.keyUse() == Question.KeyUse.KEY_SHEET
        && keys.change().askingProperty().get();
  }

  private boolean pressOnKeySheet(String chord) {
    boolean ofButton =
        buttonFocused.getAsBoolean() && (chord.equals("Enter") || chord.equals("Space"));
    if (ofButton && !waitsForKey()) {
      return false;
    }
    if (keys.change().press(chord)) {
      return true;
    }
    Action action = keys.map().actionFor(Where.WINDOW, chord).orElse(null);
    if (action == Action.ESCAPE || action == Action.ALL_KEYS) {
      questions.close();
    } else if (action != null && ON_KEY_SHEET.contains(action)) {
      commands.command(Where.WINDOW, action, chord).run();
    }
    return action != null;
  }

  private @Nullable Runnable command(String chord) {
    for (Where here : focus.places()) {
      Optional<Action> action = keys.map().actionFor(here, chord);
      if (action.isPresent()) {
        return isBlocked(here, action.get()) ? null : commands.command(here, action.get(), chord);
      }
    }
    return null;
  }

  /** The inbox covers the session, so that only actions of the whole program work there. */
  private boolean isBlocked(Where here, Action action) {
    return here == Where.WINDOW
        && focus.inInbox()
        && action != Action.ALL_KEYS
        && !ON_KEY_SHEET.contains(action);
  }
}
