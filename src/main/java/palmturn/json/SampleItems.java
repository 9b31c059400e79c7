package palmturn.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializable;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.jsontype.TypeSerializer;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.Iterator;
import java.util.stream.IntStream;
import palmturn.trial.Curve;

/**
 * A curve as a list of objects, each made when it is written: as a tree an hour of them would take
 * 400 MB.
 *
 * @param curve what is written
 * @param key name of the value beside {@code timeS}
 */
record SampleItems(Curve curve, String key) implements JsonSerializable, Iterable<JsonNode> {
  @Override
  public Iterator<JsonNode> iterator() {
    return IntStream.range(0, curve.timesS().size()).<JsonNode>mapToObj(this::item).iterator();
  }

  private ObjectNode item(int i) {
    ObjectNode node = JsonText.object();
    node.put("timeS", JsonText.rounded(curve.timesS().get(i), EstimateJson.TIME_DECIMALS));
    node.put(key, JsonText.rounded(curve.values().get(i), EstimateJson.VALUE_DECIMALS));
    return node;
  }

  @Override
  public void serialize(JsonGenerator to, SerializerProvider provider) throws IOException {
    to.writeStartArray();
    for (JsonNode item : this) {
      ((ObjectNode) item).serialize(to, provider);
    }
    to.writeEndArray();
  }

  @Override
  public void serializeWithType(JsonGenerator to, SerializerProvider provider, TypeSerializer type)
      throws IOException {
    serialize(to, provider);
  }
}
