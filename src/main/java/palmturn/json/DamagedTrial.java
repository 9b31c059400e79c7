package palmturn.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/**
 * The readable part of a trial's file that is damaged.
 *
 * @param trial the trial with the readings that are whole, without estimate, settlements and
 *     places; null where its clip or its stretch can't be read
 * @param readings the readings that are whole
 */
public record DamagedTrial(@Nullable Trial trial, List<Reading> readings) {
  private static final List<String> LOST = List.of("estimate", "settlements", "places");

  /** Returns what can be read of a file's text. */
  public static DamagedTrial read(String text) {
    ObjectNode part = JsonText.readablePart(text);
    List<Reading> readings = new ArrayList<>();
    if (part.get("readings") instanceof ArrayNode items) {
      for (JsonNode item : items) {
        try {
          Reading reading = MarksJson.reading(Keys.of(item, "$"));
          readings.removeIf(each -> each.reader().equals(reading.reader()));
          readings.add(reading);
        } catch (JsonException e) {
          // A damaged reading can't be told from one that was tampered with, so it is left out.
          continue;
        }
      }
    }
    part.remove(LOST);
    part.putArray("readings");
    try {
      Trial trial = TrialJson.read(JsonText.line(part));
      for (Reading reading : readings) {
        trial = trial.withReading(reading);
      }
      return new DamagedTrial(trial, readings);
    } catch (JsonException e) {
      return new DamagedTrial(null, readings);
    }
  }
}
