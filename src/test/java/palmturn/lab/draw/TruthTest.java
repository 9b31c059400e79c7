package palmturn.lab.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import palmturn.advise.Evidence;
import palmturn.advise.Training;
import palmturn.json.DrillsJson;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.measure.SessionScore;
import palmturn.trial.ClipRef;
import palmturn.trial.Coded;
import palmturn.trial.Extra;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;
import palmturn.work.score.LimitsInForce;
import palmturn.work.score.Scoring;

/** Each bundled clip, scored from its truth, gives the measures that its drawing gave. */
class TruthTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");
  private static final double TOLERANCE = 1e-9;
  private static final ObjectMapper JSON = new ObjectMapper();

  static Stream<String> names() throws IOException {
    try (Stream<Path> files = Files.list(CLIPS)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".truth.json"))
          .sorted()
          .toList()
          .stream();
    }
  }

  @Test
  void aWholeSessionIsBundled() throws IOException {
    assertEquals(
        SyntheticClips.demoNames().stream().map(name -> name + ".truth.json").sorted().toList(),
        names().toList());
  }

  @ParameterizedTest
  @MethodSource("names")
  void theMeasuresOfTheTruthAreThoseRealised(String name) throws IOException {
    JsonNode truth = JSON.readTree(CLIPS.resolve(name).toFile());
    JsonNode scored = JSON.readTree(score(name, truth)).get("trials").get(0);
    JsonNode realised = truth.get("realised");
    assertTrue(realised.size() >= 15, "measures in " + name);
    for (Iterator<Map.Entry<String, JsonNode>> keys = realised.fields(); keys.hasNext(); ) {
      Map.Entry<String, JsonNode> key = keys.next();
      JsonNode ours = scored.get(key.getKey());
      assertFalse(ours == null, key.getKey());
      if (key.getValue().isNumber()) {
        assertEquals(key.getValue().asDouble(), ours.asDouble(), TOLERANCE, key.getKey());
      } else {
        assertEquals(key.getValue(), ours, key.getKey());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void theHandCameDownWhereTheZoneSays(String name) throws IOException {
    for (JsonNode contact : JSON.readTree(CLIPS.resolve(name).toFile()).get("contacts")) {
      double along = contact.get("offsetAlongTargetCm").asDouble();
      double across = contact.get("offsetAcrossTargetCm").asDouble();
      String place = along > 6 ? "fingers" : along < -5 ? "wrist" : across > 3 ? "edge" : "centre";
      assertEquals(contact.get("zone").asText(), place, contact.toString());
    }
  }

  private static String score(String name, JsonNode truth) {
    Reading reading =
        new Reading("truth", true, StartedFrom.NOTHING, slaps(truth), spans(truth), Extra.NONE);
    Trial trial =
        new Trial(
            TrialId.parse(name.replace(".truth.json", "")),
            new ClipRef("clips/x.mp4", "0".repeat(64), 1 / 60.0, Extra.NONE),
            null,
            null,
            Mirrored.FALSE,
            null,
            TimeScale.REAL,
            null,
            null,
            List.of(reading),
            null,
            Extra.NONE);
    SessionScore score =
        Scores.session(
            Session.begin("H-07", LocalDate.of(2026, 11, 14)),
            List.of(trial),
            ReadingChoice.FIRST,
            LimitsInForce.STANDARD.limits());
    return Scoring.json(
        score,
        Training.of(Evidence.of(score, LimitsInForce.STANDARD.limits()), DrillsJson.standard()));
  }

  private static List<Slap> slaps(JsonNode truth) {
    List<Slap> slaps = new ArrayList<>();
    for (JsonNode each : truth.get("contacts")) {
      double timeS = each.get("timeS").asDouble();
      slaps.add(
          new Slap(
              Coded.parse(Slap.Kind.class, each.get("kind").asText()),
              timeS,
              Coded.parse(Side.class, each.get("side").asText()),
              Coded.parse(Zone.class, each.get("zone").asText()),
              TimedBy.PICTURE,
              0,
              timeS,
              null,
              true,
              "",
              Extra.NONE));
    }
    return slaps;
  }

  private static List<Span> spans(JsonNode truth) {
    List<Span> spans = new ArrayList<>();
    for (JsonNode each : truth.get("spans")) {
      spans.add(
          new Span(
              Coded.parse(Span.SpanKind.class, each.get("kind").asText()),
              each.get("startS").asDouble(),
              each.get("endS").asDouble(),
              "",
              Extra.NONE));
    }
    return spans;
  }
}
