package palmturn.measure;

import java.util.List;
import java.util.Locale;

/** Lists and capitals in English sentences. */
public final class Phrases {
  private Phrases() {}

  /** Returns a list as a phrase: a, b and c. */
  public static String list(List<String> parts) {
    if (parts.size() < 2) {
      return String.join("", parts);
    }
    return String.join(", ", parts.subList(0, parts.size() - 1))
        + " and "
        + parts.get(parts.size() - 1);
  }

  /** Returns a text with its first letter as a capital. */
  public static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
