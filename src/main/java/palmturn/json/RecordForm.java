package palmturn.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.lang.reflect.Method;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measure;
import palmturn.trial.Coded;
import palmturn.trial.Extra;

/**
 * The form of a record, taken from its components: null stays null, and an enum is its code. The
 * keys are listed, so that a renamed or added component can't change a form unseen.
 *
 * <p>Keys are separated by spaces, in the order of the form. {@code key=component} stands where the
 * two are named differently, {@code key=component.component} for a part of a part, null where one
 * before it is. {@code key?} is left out where it is null, {@code key*} where it is null, empty or
 * false.
 */
final class RecordForm {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(
              new SimpleModule()
                  .addSerializer(Coded.class, text(Coded::code))
                  .addSerializer(Measure.class, text(Measure::id))
                  .addSerializer(Instant.class, text(Instant::toString))
                  .addSerializer(LocalDate.class, text(LocalDate::toString)))
          .build();

  private static final Map<String, List<FormKey>> KEYS = new ConcurrentHashMap<>();

  private RecordForm() {}

  /**
   * Returns an object of some of a record's components.
   *
   * @throws IllegalArgumentException if the record has no such component, or its number is not
   *     finite
   */
  static ObjectNode of(Object form, String keys) {
    return put(JsonText.object(), form, keys);
  }

  /** Puts the same into an object that has other keys too; a form that is null has only nulls. */
  static ObjectNode put(ObjectNode node, @Nullable Object form, String keys) {
    for (FormKey each : KEYS.computeIfAbsent(keys, FormKey::all)) {
      JsonNode value = component(form, each.path());
      boolean leftOut = each.unlessNull() && value.isNull() || each.unlessEmpty() && empty(value);
      if (!leftOut) {
        put(node, each.name(), value);
      }
    }
    return node;
  }

  /** One key of a form, read once: a trial has thousands of marks with the same keys. */
  private record FormKey(String name, List<String> path, boolean unlessNull, boolean unlessEmpty) {
    static List<FormKey> all(String keys) {
      return Arrays.stream(keys.split(" ")).map(FormKey::of).toList();
    }

    private static FormKey of(String key) {
      String[] named = key.replaceFirst("[?*]$", "").split("=");
      List<String> path = List.of(named[named.length - 1].split("\\."));
      return new FormKey(named[0], path, key.endsWith("?"), key.endsWith("*"));
    }
  }

  private static void put(ObjectNode node, String key, JsonNode value) {
    if (value.isDouble() && !Double.isFinite(value.doubleValue())) {
      throw new IllegalArgumentException("%s can't be %s".formatted(key, value.doubleValue()));
    }
    node.set(key, value);
  }

  /** Puts a figure, null where it can't be told. */
  static void figure(ObjectNode node, String key, @Nullable Double value) {
    put(node, key, MAPPER.valueToTree(value));
  }

  private static JsonNode component(@Nullable Object form, List<String> path) {
    Object value = form;
    for (String name : path) {
      try {
        if (value != null) {
          Method accessor = value.getClass().getMethod(name);
          accessor.setAccessible(true);
          value = accessor.invoke(value);
        }
      } catch (ReflectiveOperationException e) {
        throw new IllegalArgumentException("%s has no %s".formatted(value, name), e);
      }
    }
    return MAPPER.valueToTree(value);
  }

  private static boolean empty(JsonNode value) {
    return value.isNull()
        || value.isContainerNode() && value.isEmpty()
        || value.isTextual() && value.textValue().isEmpty()
        || value.isBoolean() && !value.booleanValue();
  }

  /** Returns a list of such objects. */
  static ArrayNode all(List<?> forms, String keys) {
    return all(forms, form -> of(form, keys));
  }

  /** Returns a list of objects, each made from one of a list. */
  static <T> ArrayNode all(List<? extends T> each, Function<T, ? extends JsonNode> form) {
    ArrayNode array = JsonText.array();
    each.forEach(one -> array.add(form.apply(one)));
    return array;
  }

  /** Returns an object made from a part, null where there is no part. */
  static <T> @Nullable ObjectNode orNull(@Nullable T part, Function<T, ObjectNode> form) {
    return part == null ? null : form.apply(part);
  }

  /** Puts unknown keys back, after the known ones. */
  static ObjectNode extra(ObjectNode node, Extra extra) {
    extra.keys().forEach((key, value) -> node.putIfAbsent(key, JsonText.tree(value)));
    return node;
  }

  private static <T> JsonSerializer<T> text(Function<T, String> text) {
    return new JsonSerializer<>() {
      @Override
      public void serialize(T value, JsonGenerator out, SerializerProvider provider)
          throws IOException {
        out.writeString(text.apply(value));
      }
    };
  }
}
