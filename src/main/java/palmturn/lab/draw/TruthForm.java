package palmturn.lab.draw;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.json.JsonText;

/**
 * The truth of a drawn clip in the form of the file beside it.
 *
 * @param file the clip's name
 * @param parameters what was asked for; values are texts, numbers and lists of such maps
 * @param contacts every contact and miss, in order
 * @param spans faults over a stretch, in order
 * @param numbers single figures, key with unit to value
 * @param points places in the first picture, key to x and y in pixels
 * @param frameTimesS when each picture is shown
 * @param seriesHz samples a second of the series, from time 0
 * @param series key with unit to samples
 * @param realised measures of the contacts, as {@code score --json} names them
 * @param meanings key to a sentence that says how it is meant
 */
public record TruthForm(
    String file,
    Map<String, Object> parameters,
    List<ContactForm> contacts,
    List<Span> spans,
    Map<String, Double> numbers,
    Map<String, double[]> points,
    double[] frameTimesS,
    double seriesHz,
    Map<String, double[]> series,
    Map<String, @Nullable Object> realised,
    Map<String, String> meanings) {

  /** One contact. */
  public record ContactForm(
      double timeS,
      String side,
      String zone,
      String kind,
      double level,
      double offsetAlongTargetCm,
      double offsetAcrossTargetCm) {}

  /** One span. */
  public record Span(String kind, double startS, double endS) {}

  /** Returns the file's text; series and frame times are rounded, contacts and measures are not. */
  public String json() {
    ObjectNode root = JsonText.object();
    root.put("format", "palmturn-truth");
    root.put("version", 1);
    root.put("file", file);
    root.set("parameters", JsonText.tree(parameters));
    ArrayNode allContacts = root.putArray("contacts");
    contacts.forEach(contact -> allContacts.add(JsonText.tree(contact)));
    ArrayNode allSpans = root.putArray("spans");
    spans.forEach(span -> allSpans.add(JsonText.tree(span)));
    numbers.forEach(root::put);
    points.forEach((key, at) -> root.set(key, rounded(at, 2)));
    root.set("realised", JsonText.tree(realised));
    root.put("seriesHz", seriesHz);
    series.forEach((key, samples) -> root.set(key, rounded(samples, 2)));
    root.set("frameTimesS", rounded(frameTimesS, 6));
    root.set("meanings", JsonText.tree(meanings));
    // A line for each key: a series laid out number by number would be a thousand lines.
    return root.properties().stream()
        .map(key -> "\"%s\": %s".formatted(key.getKey(), JsonText.line(key.getValue())))
        .collect(Collectors.joining(",\n", "{\n", "\n}\n"));
  }

  private static ArrayNode rounded(double[] values, int decimals) {
    return JsonText.numbers(Arrays.stream(values).boxed().toList(), decimals);
  }
}
