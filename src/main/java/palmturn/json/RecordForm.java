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
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import palmturn.measure.Measure;
import palmturn.trial.Coded;

/**
 * The form of a record, taken from its components: null stays null, and an enum is its code. The
 * keys are listed, so that a renamed or added component can't change a form unseen.
 */
final class RecordForm {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(
              new SimpleModule()
                  .addSerializer(Coded.class, text(Coded::code))
                  .addSerializer(Measure.class, text(Measure::id))
                  .addSerializer(LocalDate.class, text(LocalDate::toString)))
          .build();

  private RecordForm() {}

  /**
   * Returns an object of some of a record's components.
   *
   * @param keys separated by spaces, in the order of the form; {@code key=component} where the two
   *     are named differently
   * @throws IllegalArgumentException if the record has no such component, or its number is not
   *     finite
   */
  static ObjectNode of(Record form, String keys) {
    return put(JsonText.object(), form, keys);
  }

  /** Puts the same into an object that has other keys too. */
  static ObjectNode put(ObjectNode node, Record form, String keys) {
    ObjectNode all = MAPPER.valueToTree(form);
    for (String each : keys.split(" ")) {
      String key = each.replaceFirst("=.*", "");
      JsonNode value = all.get(each.replaceFirst(".*=", ""));
      if (value == null || value.isDouble() && !Double.isFinite(value.doubleValue())) {
        throw new IllegalArgumentException("%s can't be %s".formatted(key, value));
      }
      node.set(key, value);
    }
    return node;
  }

  /** Returns a list of such objects. */
  static ArrayNode all(List<? extends Record> forms, String keys) {
    ArrayNode array = JsonText.array();
    forms.forEach(form -> array.add(of(form, keys)));
    return array;
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
