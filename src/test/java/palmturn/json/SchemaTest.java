package palmturn.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;

/** The published schemas say what is written, and refuse what the program refuses. */
class SchemaTest {
  private static final String SESSION = SessionJson.write(SampleFiles.fullSession());
  private static final String TRIAL = TrialJson.write(SampleFiles.fullTrial());
  private static final String SETTLED = TrialJson.write(SampleFiles.settledTrial());
  private static final String ESTIMATED =
      TrialJson.write(
          SampleFiles.plainTrial(SampleFiles.RIGHT).withEstimate(SampleFiles.fullEstimate()));

  private static final String PLACED =
      TrialJson.write(SampleFiles.fullTrial().withPlaces(SampleFiles.fullPlaces()));

  @Test
  void writtenSessionsFit() throws IOException {
    assertEquals(Set.of(), faults("session", SESSION));
    assertEquals(
        Set.of(),
        faults("session", SessionJson.write(Session.begin("H-07", LocalDate.of(2026, 5, 1)))));
  }

  @Test
  void writtenPlacesFit() throws IOException {
    assertEquals(Set.of(), faults("trial", PLACED));
    assertEquals(
        Set.of(),
        faults(
            "trial",
            TrialJson.write(
                SampleFiles.fullTrial().withPlaces(PlacedPoints.NONE.withTrunk(new Point(1, 2))))));
  }

  @Test
  void writtenTrialsFit() throws IOException {
    assertEquals(Set.of(), faults("trial", TRIAL));
    Random random = new Random(31);
    for (int i = 0; i < 20; i++) {
      String text =
          TrialJson.write(
              SampleFiles.plainTrial(SampleFiles.RIGHT)
                  .withReading(SampleFiles.randomReading("AB", 40, random)));
      assertEquals(Set.of(), faults("trial", text), text);
    }
  }

  @Test
  void writtenSettlementsFit() throws IOException {
    assertEquals(Set.of(), faults("trial", SETTLED));
  }

  @Test
  void writtenEstimatesFit() throws IOException {
    assertEquals(Set.of(), faults("trial", ESTIMATED));
    assertEquals(
        Set.of(),
        faults(
            "trial",
            TrialJson.write(SampleFiles.fullTrial().withEstimate(SampleFiles.emptyEstimate()))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "session | \"athlete\" | \"who\"",
        "session | 2026-05-01\" | 1 May\"",
        "session | 2026-05-01T10:00:00Z | yesterday",
        "session | \"forearmCm\": 25.5 | \"forearmCm\": 0",
        "session | \"handCm\": 18.5 | \"handCm\": 185",
        "session | \"right-baseline-1\" | \"right-1\"",
        "session | \"hand\": \"left\" | \"hand\": \"middle\"",
        "trial | \"timeS\":1.0 | \"timeS\":\"1.0\"",
        "trial | \"timeS\":1.0 | \"time\":1.0",
        "trial | \"side\":\"back\" | \"side\":\"front\"",
        "trial | \"seen\":false | \"seen\":0",
        "trial | \"repeat\": 1 | \"repeat\": 1.5",
        "trial | \"state\": \"open\" | \"state\": \"shut\"",
        "trial | \"estimate\" | \"a guess\"",
        "trial | \"factor\":0.25 | \"factor\":1,\"x\":1",
        "trial | \"version\": 1 | \"version\": 2",
        "trial | \"sha256\": \"0 | \"sha256\": \"g",
        "estimate | \"confidence\":0.97 | \"confidence\":1.1",
        "estimate | \"pose\":1 | \"pose\":2",
        "estimate | \"pose\":1 | \"pose\":1,\"x\":1",
        "estimate | \"sound\",\"motion\" | \"ear\"",
        "estimate | [-1.0,0.0,1.25] | [-1.0,null,1.25]",
        "estimate | [0.0,10.0,5.0] | [0.0,-10.0,5.0]",
        "settled | \"choice\": \"neither\" | \"choice\": \"both\"",
        "settled | \"by\": \"QM\" | \"who\": \"QM\"",
        "settled | \"toleranceS\": 0.04 | \"toleranceS\": -1",
        "settled | \"estimateSeen\": true | \"estimateSeen\": 1",
        "settled | \"reopenedAt\": [ | \"reopenedAt\": [0, ",
        "places | \"cm\": 25.5 | \"cm\": 0",
        "places | \"x\": 412.5 | \"x\": null",
        "places | \"to\": | \"until\":",
        "estimate | \"clipSha256\": \"0 | \"clipSha256\": \"x",
      })
  void whatTheProgramRefusesTheSchemaRefusesToo(String schema, String was, String now)
      throws IOException {
    Map<String, String> texts =
        Map.of(
            "session",
            SESSION,
            "trial",
            TRIAL,
            "estimate",
            ESTIMATED,
            "settled",
            SETTLED,
            "places",
            PLACED);
    String text = texts.get(schema);
    assertTrue(text.contains(was), text);
    String file = schema.equals("session") ? "session" : "trial";
    assertFalse(faults(file, text.replace(was, now)).isEmpty());
  }

  static Set<ValidationMessage> faults(String name, String text) throws IOException {
    try (InputStream in =
        SchemaTest.class.getResourceAsStream("/palmturn/schema/" + name + ".schema.json")) {
      assertNotNull(in);
      JsonSchema schema =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
      return schema.validate(
          text,
          InputFormat.JSON,
          context -> context.getExecutionConfig().setFormatAssertionsEnabled(true));
    }
  }
}
