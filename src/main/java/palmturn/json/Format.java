package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;

/**
 * The name and version at the head of a file, and the way from each older version to the newest.
 *
 * @param name the value of {@code format}
 * @param steps how a file of version i+1 becomes one of version i+2; as many as there are older
 *     versions
 */
record Format(String name, List<UnaryOperator<ObjectNode>> steps) {
  private static final int FAR_FUTURE = 1_000_000;

  /** The newest version, which is the one written. */
  int version() {
    return steps.size() + 1;
  }

  /** Returns the text that every file in one line begins with, whatever its version. */
  String opening() {
    String head = JsonText.line(JsonText.object().put("format", name));
    return head.substring(0, head.length() - 1);
  }

  /** Returns the keys of a file, brought up to the newest version. */
  Keys open(String text) throws JsonException {
    ObjectNode file = head(text);
    int found = (int) file.get("version").longValue();
    for (UnaryOperator<ObjectNode> step : steps.subList(found - 1, steps.size())) {
      file = step.apply(file);
    }
    Keys keys = Keys.of(file, "$");
    keys.text("format");
    keys.integer("version", 1, FAR_FUTURE);
    return keys;
  }

  private ObjectNode head(String text) throws JsonException {
    if (!(JsonText.parse(text) instanceof ObjectNode file)) {
      throw new JsonException("$: must be an object with \"format\": \"%s\"".formatted(name));
    }
    Keys keys = Keys.of(file, "$");
    String format = keys.text("format");
    if (!format.equals(name)) {
      throw new JsonException("$.format: must be \"%s\", not \"%s\"".formatted(name, format));
    }
    int found = keys.integer("version", 1, FAR_FUTURE);
    if (found > version()) {
      throw new JsonException(
          String.format(
              Locale.ROOT,
              "written by a newer Palmturn: %s version %d, and this one knows up to version %d",
              name,
              found,
              version()));
    }
    return file;
  }

  /** Returns the head of a file to be written. */
  ObjectNode begin() {
    return JsonText.object().put("format", name).put("version", version());
  }
}
