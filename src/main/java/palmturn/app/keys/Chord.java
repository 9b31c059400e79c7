package palmturn.app.keys;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** Key names as shown, such as {@code F}, {@code Shift+→} or {@code Ctrl++}. */
public final class Chord {
  private static final List<String> MODIFIERS = List.of("Ctrl", "Alt", "Shift");
  private static final Set<String> NAMED_KEYS =
      Set.of("PgUp", "PgDn", "Home", "End", "Space", "Enter", "Esc", "Del", "Ins");

  private Chord() {}

  /** Returns the name of what was pressed; empty for keys that have none here. */
  public static String of(KeyEvent event) {
    String written = typedSign(event);
    boolean letter = event.getCode().isLetterKey();
    String key = letter || written.isEmpty() ? nameOf(event.getCode()) : written;
    if (key.isEmpty()) {
      return "";
    }
    boolean shift = event.isShiftDown() && (letter || written.isEmpty());
    return (event.isShortcutDown() || event.isControlDown() ? "Ctrl+" : "")
        + (event.isAltDown() ? "Alt+" : "")
        + (shift ? "Shift+" : "")
        + key;
  }

  /** Returns what is held down, then the key itself: {@code Ctrl++} is {@code Ctrl} and +. */
  public static List<String> parts(String chord) {
    List<String> parts = new ArrayList<>();
    String rest = chord;
    for (String held : MODIFIERS) {
      if (rest.startsWith(held + "+")) {
        parts.add(held);
        rest = rest.substring(held.length() + 1);
      }
    }
    parts.add(rest);
    return parts;
  }

  /** Returns whether this can be the name of a key. */
  static boolean isValid(String chord) {
    List<String> parts = parts(chord);
    String key = parts.get(parts.size() - 1);
    return NAMED_KEYS.contains(key)
        || key.matches("F([2-9]|1[0-2])")
        || key.codePointCount(0, key.length()) == 1
            && key.equals(key.toUpperCase(Locale.ROOT))
            && !Character.isWhitespace(key.codePointAt(0))
            && !Character.isISOControl(key.codePointAt(0));
  }

  /** Signs lie on other keys on other keyboards, so they go by what they write. */
  private static String typedSign(KeyEvent event) {
    String text = event.getText();
    return switch (text) {
      case "+", "=" -> "+";
      case "-" -> "−";
      case "[", "<" -> "[";
      case "]", ">" -> "]";
      case ".", "," -> ".";
      default ->
          text.codePointCount(0, text.length()) == 1 && isValid(text.toUpperCase(Locale.ROOT))
              ? sign(event.getCode(), text)
              : "";
    };
  }

  /** The row of digits goes by its keys, which write other signs on some keyboards. */
  private static String sign(KeyCode code, String text) {
    return code.isDigitKey() ? "" : text.toUpperCase(Locale.ROOT);
  }

  private static String nameOf(KeyCode code) {
    return switch (code) {
      case LEFT, KP_LEFT -> "←";
      case RIGHT, KP_RIGHT -> "→";
      case UP, KP_UP -> "↑";
      case DOWN, KP_DOWN -> "↓";
      case PAGE_UP -> "PgUp";
      case PAGE_DOWN -> "PgDn";
      case HOME -> "Home";
      case END -> "End";
      case SPACE -> "Space";
      case ENTER -> "Enter";
      case ESCAPE -> "Esc";
      case DELETE, BACK_SPACE -> "Del";
      case INSERT -> "Ins";
      case PLUS, ADD, EQUALS -> "+";
      case MINUS, SUBTRACT -> "−";
      case F1 -> "?";
      case F2, F3, F4, F5, F6, F7, F8, F9, F10, F11, F12 -> code.getName();
      case PERIOD, COMMA, DECIMAL -> ".";
      default ->
          code.isLetterKey()
              ? code.getName()
              : code.isDigitKey() ? code.getName().substring(code.getName().length() - 1) : "";
    };
  }
}
