package palmturn.json;

import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.POJONode;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Text to tree and back: strict, bounded, and laid out so that a person can read and diff it. */
public final class JsonText {
  /** Far deeper than any form here, far shallower than the stack. */
  static final int MAX_NESTING = 64;

  /** A file of all marks of one trial is some tens of kilobytes. */
  static final int MAX_CHARACTERS = 32 * 1024 * 1024;

  private static final ObjectMapper MAPPER =
      JsonMapper.builder(
              new JsonFactoryBuilder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(MAX_NESTING)
                          .maxDocumentLength(MAX_CHARACTERS)
                          .maxStringLength(1_000_000)
                          .maxNameLength(1_000)
                          .maxNumberLength(100)
                          .build())
                  .characterEscapes(new HarmlessEscapes())
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          // An unknown key's 1.50 must not come back as 1.5.
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  /**
   * Writes every character that a terminal takes for an order, or that reverses the direction of
   * writing, by its number: what is printed may come from a stranger's session.
   */
  private static final class HarmlessEscapes extends CharacterEscapes {
    private static final long serialVersionUID = 1;

    @Override
    public int[] getEscapeCodesForAscii() {
      int[] codes = standardAsciiEscapesForJSON();
      codes[0x7F] = ESCAPE_STANDARD;
      return codes;
    }

    @Override
    public @Nullable SerializableString getEscapeSequence(int c) {
      return switch (Character.getType(c)) {
        case Character.CONTROL,
            Character.FORMAT,
            Character.LINE_SEPARATOR,
            Character.PARAGRAPH_SEPARATOR ->
            new SerializedString(String.format(Locale.ROOT, "\\u%04X", c));
        default -> null;
      };
    }
  }

  private JsonText() {}

  public static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  static ArrayNode array() {
    return MAPPER.createArrayNode();
  }

  public static JsonNode tree(Object value) {
    return value instanceof JsonNode node ? node : MAPPER.valueToTree(value);
  }

  /** Returns a list of numbers, each rounded to some decimals. */
  public static ArrayNode numbers(List<Double> values, int decimals) {
    ArrayNode array = array();
    values.forEach(value -> array.add(rounded(value, decimals)));
    return array;
  }

  static double rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue();
  }

  public static JsonNode parse(String text) throws JsonException {
    if (text.length() > MAX_CHARACTERS) {
      throw new JsonException(
          String.format(Locale.ROOT, "too long: over %d characters", MAX_CHARACTERS));
    }
    // Some editors put a byte-order mark in front.
    String json = text.startsWith("\uFEFF") ? text.substring(1) : text;
    if (json.isBlank()) {
      throw new JsonException("empty");
    }
    try {
      return MAPPER.readTree(json);
    } catch (StreamConstraintsException e) {
      // It names the reader's own setting in brackets, which is nothing to a user.
      throw new JsonException("refused: " + firstLine(e).replaceAll(", from `[^`]*`", ""));
    } catch (JsonProcessingException e) {
      throw new JsonException("damaged%s: %s".formatted(where(e), firstLine(e)));
    }
  }

  /**
   * Returns what a damaged object says before the damage: its whole keys, and the whole items of a
   * list that breaks off.
   */
  static ObjectNode readablePart(String text) {
    ObjectNode part = object();
    ObjectReader reader = MAPPER.reader().without(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
    try (JsonParser parser = MAPPER.createParser(text)) {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        return part;
      }
      for (String key = parser.nextFieldName(); key != null; key = parser.nextFieldName()) {
        if (parser.nextToken() == JsonToken.START_ARRAY) {
          ArrayNode items = part.putArray(key);
          while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(reader.<JsonNode>readTree(parser));
          }
        } else {
          part.set(key, reader.<JsonNode>readTree(parser));
        }
      }
    } catch (IOException e) {
      // The damage begins here.
      return part;
    }
    return part;
  }

  /** Returns a text that comes with the program. */
  static String resource(String path) {
    try (InputStream in = JsonText.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalStateException(path + " is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(path + ": " + e.getMessage(), e);
    }
  }

  private static String where(JsonProcessingException e) {
    JsonLocation at = e.getLocation();
    return at == null
        ? ""
        : String.format(Locale.ROOT, " at line %d, column %d", at.getLineNr(), at.getColumnNr());
  }

  private static String firstLine(JsonProcessingException e) {
    String message = e.getOriginalMessage();
    return message == null ? "not JSON" : message.lines().findFirst().orElse("not JSON");
  }

  /** Returns a value on one line, without a line break at its end. */
  public static String line(JsonNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Returns a file's text: a line for each key, but one line for each slap, span or the like, and
   * one for a series of numbers.
   */
  public static String page(JsonNode node) {
    StringBuilder text = new StringBuilder();
    try {
      page(node, text);
    } catch (IOException e) {
      throw new IllegalStateException("a text takes everything", e);
    }
    return text.toString();
  }

  /** Writes a file's text piece by piece: the curves of an hour would take 60 MB as one text. */
  static void page(JsonNode node, Appendable to) throws IOException {
    lay(node, "", false, to);
    to.append('\n');
  }

  private static void lay(JsonNode node, String indent, boolean inArray, Appendable text)
      throws IOException {
    if (node instanceof POJONode lazy
        && lazy.getPojo() instanceof SampleItems samples
        && !samples.curve().isEmpty()) {
      layItems(samples, indent, text);
    } else if (!node.isContainerNode() || node.isEmpty()) {
      text.append(line(node));
    } else if (inArray && flat(node) || series(node)) {
      text.append(line(node));
    } else if (node.isArray()) {
      layItems(node, indent, text);
    } else {
      String deeper = indent + "  ";
      String before = "{\n";
      for (Iterator<Map.Entry<String, JsonNode>> i = node.fields(); i.hasNext(); ) {
        Map.Entry<String, JsonNode> field = i.next();
        text.append(before).append(deeper);
        text.append(line(MAPPER.getNodeFactory().textNode(field.getKey()))).append(": ");
        lay(field.getValue(), deeper, false, text);
        before = ",\n";
      }
      text.append('\n').append(indent).append('}');
    }
  }

  private static void layItems(Iterable<JsonNode> items, String indent, Appendable text)
      throws IOException {
    String deeper = indent + "  ";
    String before = "[\n";
    for (JsonNode item : items) {
      text.append(before).append(deeper);
      lay(item, deeper, true, text);
      before = ",\n";
    }
    text.append('\n').append(indent).append(']');
  }

  /** An object or list of nothing but values and lists of words. */
  private static boolean flat(JsonNode node) {
    for (JsonNode child : node) {
      if (child.isContainerNode() && !words(child)) {
        return false;
      }
    }
    return true;
  }

  private static boolean words(JsonNode node) {
    for (JsonNode child : node) {
      if (!child.isTextual()) {
        return false;
      }
    }
    return node.isArray() && !node.isEmpty();
  }

  private static boolean series(JsonNode node) {
    for (JsonNode child : node) {
      if (!child.isNumber()) {
        return false;
      }
    }
    return node.isArray();
  }
}
