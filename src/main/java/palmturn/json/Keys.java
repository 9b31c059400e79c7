package palmturn.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;
import palmturn.trial.Extra;

/**
 * The keys of one JSON object as they are taken: each fault names its path, and what was never
 * asked for is left over as {@link #rest}.
 */
final class Keys {
  /** Reads one item of a list. */
  interface Item<T> {
    T read(Keys keys) throws JsonException;
  }

  private final ObjectNode node;
  private final String path;
  private final Set<String> asked = new LinkedHashSet<>();
  private boolean restTaken;

  private Keys(ObjectNode node, String path) {
    this.node = node;
    this.path = path;
  }

  static Keys of(JsonNode node, String path) throws JsonException {
    if (!(node instanceof ObjectNode object)) {
      throw new JsonException("%s: must be an object, not %s".formatted(path, shown(node)));
    }
    return new Keys(object, path);
  }

  String text(String key) throws JsonException {
    return present(key, textOrNull(key));
  }

  @Nullable String textOrNull(String key) throws JsonException {
    JsonNode value = value(key);
    if (value == null) {
      return null;
    }
    if (!value.isTextual()) {
      throw wrong(at(key), "must be a text", value);
    }
    return value.textValue();
  }

  String textOrEmpty(String key) throws JsonException {
    String text = textOrNull(key);
    return text == null ? "" : text;
  }

  /** Returns a text that a function understands, its own complaint being the fault's. */
  <T> T parsed(String key, Function<String, T> parser) throws JsonException {
    return present(key, parsedOrNull(key, parser));
  }

  /** Returns a constant by the code that it has in files. */
  <E extends Enum<E> & Coded> E coded(String key, Class<E> type) throws JsonException {
    return parsed(key, code -> Coded.parse(type, code));
  }

  <T> @Nullable T parsedOrNull(String key, Function<String, T> parser) throws JsonException {
    String text = textOrNull(key);
    return text == null ? null : parse(at(key), text, parser);
  }

  private static <T> T parse(String at, String text, Function<String, T> parser)
      throws JsonException {
    try {
      return parser.apply(text);
    } catch (DateTimeException e) {
      throw new JsonException(
          "%s: \"%s\" is not a date or time such as 2026-05-01 or 2026-05-01T10:00:00Z"
              .formatted(at, shortened(text)));
    } catch (IllegalArgumentException e) {
      throw new JsonException("%s: %s".formatted(at, shortened(e.getMessage())));
    }
  }

  double number(String key, double least, double most) throws JsonException {
    return present(key, numberOrNull(key, least, most));
  }

  double above0(String key, double most) throws JsonException {
    return present(key, above0OrNull(key, most));
  }

  @Nullable Double numberOrNull(String key, double least, double most) throws JsonException {
    JsonNode value = value(key);
    if (value == null) {
      return null;
    }
    return within(at(key), value, least, most);
  }

  private static double within(String at, JsonNode value, double least, double most)
      throws JsonException {
    double number = value.isNumber() ? value.doubleValue() : Double.NaN;
    if (!(number >= least && number <= most)) {
      throw wrong(at, "must be a number from %s to %s".formatted(plain(least), plain(most)), value);
    }
    return number;
  }

  @Nullable Double above0OrNull(String key, double most) throws JsonException {
    JsonNode value = value(key);
    if (value == null) {
      return null;
    }
    double number = value.isNumber() ? value.doubleValue() : Double.NaN;
    if (!(number > 0 && number <= most)) {
      throw wrong(at(key), "must be a number above 0, up to %s".formatted(plain(most)), value);
    }
    return number;
  }

  int integer(String key, int least, int most) throws JsonException {
    JsonNode value = present(key, value(key));
    if (!value.isIntegralNumber()
        || !value.canConvertToInt()
        || value.intValue() < least
        || value.intValue() > most) {
      throw wrong(
          at(key),
          String.format(Locale.ROOT, "must be a whole number from %d to %d", least, most),
          value);
    }
    return value.intValue();
  }

  boolean flag(String key, boolean otherwise) throws JsonException {
    Boolean flag = flagOrNull(key);
    return flag == null ? otherwise : flag;
  }

  @Nullable Boolean flagOrNull(String key) throws JsonException {
    JsonNode value = value(key);
    if (value == null) {
      return null;
    }
    if (!value.isBoolean()) {
      throw wrong(at(key), "must be true or false", value);
    }
    return value.booleanValue();
  }

  <T> T object(String key, Item<T> item) throws JsonException {
    return present(key, objectOrNull(key, item));
  }

  <T> @Nullable T objectOrNull(String key, Item<T> item) throws JsonException {
    JsonNode value = value(key);
    return value == null ? null : of(value, at(key)).read(item);
  }

  /** Returns an object, or another where the key is left out. */
  <T> T objectOr(String key, Item<T> item, T otherwise) throws JsonException {
    T object = objectOrNull(key, item);
    return object == null ? otherwise : object;
  }

  /** Returns the items of a list of objects; none where the key is left out. */
  <T> List<T> list(String key, Item<T> item) throws JsonException {
    List<T> items = new ArrayList<>();
    int i = 0;
    for (JsonNode each : items(key)) {
      items.add(of(each, String.format(Locale.ROOT, "%s[%d]", at(key), i++)).read(item));
    }
    return items;
  }

  /** Returns the items of a list of texts; none where the key is left out. */
  <T> List<T> texts(String key, Function<String, T> parser) throws JsonException {
    List<T> items = new ArrayList<>();
    int i = 0;
    for (JsonNode each : items(key)) {
      String at = String.format(Locale.ROOT, "%s[%d]", at(key), i++);
      if (!each.isTextual()) {
        throw new JsonException("%s: must be a text, not %s".formatted(at, shown(each)));
      }
      items.add(parse(at, each.textValue(), parser));
    }
    return items;
  }

  /** Returns the items of a list of numbers; none where the key is left out. */
  List<Double> numbers(String key, double least, double most) throws JsonException {
    List<Double> numbers = new ArrayList<>();
    for (JsonNode each : items(key)) {
      numbers.add(
          within(String.format(Locale.ROOT, "%s[%d]", at(key), numbers.size()), each, least, most));
    }
    return numbers;
  }

  private Iterable<JsonNode> items(String key) throws JsonException {
    JsonNode value = value(key);
    if (value == null) {
      return List.of();
    }
    if (!value.isArray()) {
      throw wrong(at(key), "must be a list", value);
    }
    return value;
  }

  /** Makes a record; what its constructor refuses is a fault of this object. */
  <T> T make(Item<T> item) throws JsonException {
    try {
      return item.read(this);
    } catch (IllegalArgumentException e) {
      throw fault(e.getMessage());
    }
  }

  /** Makes a record, and refuses keys that it neither asked for nor took along. */
  private <T> T read(Item<T> item) throws JsonException {
    T made = make(item);
    if (!restTaken) {
      refuseRest();
    }
    return made;
  }

  JsonException fault(@Nullable String message) {
    return new JsonException("%s: %s".formatted(path, shortened(message)));
  }

  /** Returns the keys that were never asked for. */
  Extra rest() {
    restTaken = true;
    Map<String, Object> left = new LinkedHashMap<>();
    for (Iterator<Map.Entry<String, JsonNode>> i = node.fields(); i.hasNext(); ) {
      Map.Entry<String, JsonNode> field = i.next();
      if (!asked.contains(field.getKey())) {
        left.put(field.getKey(), field.getValue());
      }
    }
    return left.isEmpty() ? Extra.NONE : new Extra(left);
  }

  /** Passes over keys that were never asked for. */
  void dropRest() {
    restTaken = true;
  }

  /** Refuses keys that were never asked for, where no record can carry them. */
  void refuseRest() throws JsonException {
    for (String key : rest().keys().keySet()) {
      throw new JsonException("%s: not a known key here".formatted(at(key)));
    }
  }

  private @Nullable JsonNode value(String key) {
    asked.add(key);
    JsonNode value = node.get(key);
    return value == null || value.isNull() ? null : value;
  }

  private <T> T present(String key, @Nullable T value) throws JsonException {
    if (value == null) {
      throw new JsonException("%s: missing".formatted(at(key)));
    }
    return value;
  }

  private String at(String key) {
    return path + "." + key;
  }

  private static JsonException wrong(String at, String must, JsonNode value) {
    return new JsonException("%s: %s, not %s".formatted(at, must, shown(value)));
  }

  private static String shown(JsonNode value) {
    return value.isContainerNode()
        ? value.isArray() ? "a list" : "an object"
        : shortened(value.toString());
  }

  private static String shortened(@Nullable String text) {
    String line = String.valueOf(text).replaceAll("\\p{Cntrl}", " ");
    return line.length() <= 200 ? line : line.substring(0, 200) + "…";
  }

  private static String plain(double number) {
    return number == Math.rint(number)
        ? String.format(Locale.ROOT, "%.0f", number)
        : Double.toString(number);
  }
}
