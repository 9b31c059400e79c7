package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Extra;

/** Puts keys into an object that is being written; what is null is left out. */
final class Put {
  private Put() {}

  static void text(ObjectNode node, String key, @Nullable String value) {
    if (value != null) {
      node.put(key, value);
    }
  }

  /** Puts a text that is often empty, and then left out. */
  static void words(ObjectNode node, String key, String value) {
    if (!value.isEmpty()) {
      node.put(key, value);
    }
  }

  static void number(ObjectNode node, String key, @Nullable Double value) {
    if (value != null) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("%s can't be %s".formatted(key, value));
      }
      node.put(key, value);
    }
  }

  /** Puts a figure, null where it can't be told, since a script must find the key. */
  static void figure(ObjectNode node, String key, @Nullable Double value) {
    node.putNull(key);
    number(node, key, value);
  }

  /** Puts both ends of an interval, null where there is none. */
  static void range(ObjectNode node, String low, String high, @Nullable Range range) {
    figure(node, low, range == null ? null : range.low());
    figure(node, high, range == null ? null : range.high());
  }

  /** Puts unknown keys back, after the known ones. */
  static ObjectNode extra(ObjectNode node, Extra extra) {
    extra.keys().forEach((key, value) -> node.putIfAbsent(key, JsonText.tree(value)));
    return node;
  }
}
