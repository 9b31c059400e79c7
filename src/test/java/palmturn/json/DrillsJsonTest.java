package palmturn.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.advise.Caution;
import palmturn.advise.DrillAim;
import palmturn.advise.DrillLibrary;
import palmturn.advise.LibraryDrill;
import palmturn.advise.TrainedHand;

class DrillsJsonTest {
  private static final DrillLibrary LIBRARY = DrillsJson.standard();

  @Test
  void theLibraryHasADrillForEveryAim() {
    for (DrillAim aim : DrillAim.values()) {
      assertFalse(LIBRARY.drillsFor(aim).isEmpty(), aim.code());
    }
    assertEquals(
        Set.of("paced-flips", "racket-eights", "wrist-finger-circles", "head-turns"),
        codes(DrillAim.ACCURACY));
    assertTrue(
        codes(DrillAim.SPEED)
            .containsAll(Set.of("near-far-focus", "gaze-circles", "paced-breathing")));
    assertEquals(Set.of("shuttle-keep-ups", "slow-strokes"), codes(DrillAim.TRANSFER));
  }

  @Test
  void eyesHeadAndBreathHaveTheirCautionsAndNoHandToBeCompared() {
    for (LibraryDrill drill : LIBRARY.drills()) {
      boolean eyesOrHead =
          Set.of("head-turns", "near-far-focus", "gaze-circles").contains(drill.code());
      assertEquals(eyesOrHead, drill.cautions().contains(Caution.HEAD_AND_EYES), drill.code());
      boolean breath = drill.code().equals("paced-breathing");
      assertEquals(breath, drill.cautions().contains(Caution.BREATH), drill.code());
      assertEquals(eyesOrHead || breath, drill.trains() == TrainedHand.NONE, drill.code());
      if (eyesOrHead || breath) {
        assertTrue(drill.how().startsWith("Seated"), drill.code());
      }
    }
  }

  @Test
  void everyDrillTellsItsSourceAndGetsHarderOnlyWhenClean() {
    for (LibraryDrill drill : LIBRARY.drills()) {
      assertEquals(LibraryDrill.NO_SOURCE, drill.source(), drill.code());
      assertTrue(
          drill.harderWhen().startsWith("Only after 18 of 20 slaps were clean: "), drill.code());
    }
  }

  @Test
  void whatIsWrittenIsReadAgainAndFitsTheSchema() throws Exception {
    String text = DrillsJson.write(LIBRARY);
    assertEquals(LIBRARY, DrillsJson.read(text));
    assertEquals(Set.of(), SchemaTest.faults("drills", text));
    assertEquals(Set.of(), SchemaTest.faults("drills", DrillsJson.standardText()));
    String less =
        "{\"format\": \"palmturn-drills\", \"version\": 1, \"leaveOut\": [\"head-turns\"]}";
    assertEquals(Set.of(), SchemaTest.faults("drills", less));
    assertEquals(List.of("head-turns"), DrillsJson.read(less).leaveOut());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"dose\" | \"dosage\" | drill paced-flips: $.drills[0].dose: missing",
        "\"stop\": | \"stopp\": | $.drills[0].stop: missing",
        "\"paceShare\": 0.8 | \"paceShare\": 0 | drill paced-flips: $.drills[0].paceShare: must be a number above 0, up to 1.5, not 0",
        "\"paceShare\": 0.8 | \"paceShare\": \"0.8\" | not \"0.8\"",
        "\"paceShare\": 0.8 | \"pace\": 0.8 | drill paced-flips: $.drills[0].pace: not a known key here",
        "\"hand\": \"one\" | \"hand\": \"left\" | $.drills[0].hand: \"left\" is not one of one, both, none",
        "[\"accuracy\"] | [\"accurcy\"] | $.drills[0].qualities[0]: \"accurcy\" is not one of speed, accuracy",
        "[\"accuracy\"] | [] | qualities: name at least one",
        "[\"sore\"] | [\"sores\"] | $.drills[0].cautions[0]: \"sores\" is not one of",
        "\"paced-flips\" | \"Paced Flips\" | must be lower-case words joined by dashes",
        "\"paced-flips\" | \"rest\" | is taken by a rest between blocks: choose another",
        "\"common practice, no source\" | \"\" | name it, or write \"common practice, no source\"",
        "\"leaveOut\": [] | \"leaveOut\": [1] | $.leaveOut[0]: must be a text, not 1",
        "palmturn-drills | palmturn-limits | $.format: must be \"palmturn-drills\"",
        "\"version\": 1 | \"version\": 2 | written by a newer Palmturn",
      })
  void aSlipIsNamedWithItsDrillAndKeyAndTheSchemaRefusesItToo(
      String was, String now, String expected) throws IOException {
    String text = DrillsJson.standardText();
    assertTrue(text.contains(was), was);
    int at = text.indexOf(was);
    String slip = text.substring(0, at) + now + text.substring(at + was.length());
    String message = assertThrows(JsonException.class, () -> DrillsJson.read(slip)).getMessage();
    assertTrue(message.contains(expected), message);
    assertEquals(1, message.lines().count());
    assertFalse(SchemaTest.faults("drills", slip).isEmpty());
  }

  @Test
  void twoDrillsOfOneCodeAreRefused() {
    String text = DrillsJson.standardText().replace("\"racket-eights\"", "\"paced-flips\"");
    String message = assertThrows(JsonException.class, () -> DrillsJson.read(text)).getMessage();
    assertTrue(message.contains("\"paced-flips\" is there twice"), message);
  }

  @Test
  void changesReplaceAddAndLeaveOut() throws Exception {
    DrillLibrary changed =
        LIBRARY.changedBy(
            DrillsJson.read(
                """
                {"format": "palmturn-drills", "version": 1, "leaveOut": ["gaze-circles"], "drills": [
                  {"code": "racket-eights", "name": "eights", "qualities": ["rhythm"], "hand": "both",
                   "how": "As we do them.", "dose": "ten", "harder": "twenty", "retest": "Friday",
                   "stop": "when tired", "source": "our club"},
                  {"code": "wall-taps", "name": "wall taps", "qualities": ["accuracy"], "hand": "one",
                   "how": "Tap.", "dose": "ten", "harder": "twenty", "retest": "Friday",
                   "stop": "when tired", "source": "our club"}
                ]}
                """));
    assertEquals("eights", changed.drills().get(1).name(), "in the place of the old one");
    assertEquals("wall-taps", changed.drills().get(changed.drills().size() - 1).code());
    assertTrue(changed.drill("gaze-circles").isEmpty());
    assertEquals(LIBRARY.drills().size(), changed.drills().size());
    assertEquals(
        List.of("paced-flips", "wrist-finger-circles", "head-turns", "wall-taps"),
        changed.drillsFor(DrillAim.ACCURACY).stream().map(LibraryDrill::code).toList());
  }

  private static Set<String> codes(DrillAim aim) {
    return Set.copyOf(LIBRARY.drillsFor(aim).stream().map(LibraryDrill::code).toList());
  }
}
