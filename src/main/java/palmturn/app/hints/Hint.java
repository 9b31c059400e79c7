package palmturn.app.hints;

import java.util.List;

/**
 * Keys and what they do.
 *
 * @param keys as they stand on the keyboard, pressed together or one of them as the words say
 * @param words what they do
 */
public record Hint(List<String> keys, String words) {
  public Hint {
    keys = List.copyOf(keys);
  }

  static Hint of(String words, String... keys) {
    return new Hint(List.of(keys), words);
  }
}
