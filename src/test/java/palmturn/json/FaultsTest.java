package palmturn.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.SampleFiles;

class FaultsTest {
  private static final String TRIAL = TrialJson.write(SampleFiles.fullTrial());
  private static final String SESSION = SessionJson.write(SampleFiles.fullSession());

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"confidence\":0.97 | \"confidence\":1.1 | $.estimate.slaps[0].confidence: must be a number from 0 to 1, not 1.1",
        "\"pose\":1 | \"pose\":2 | $.estimate.slaps[0].pose: must be a whole number from -1 to 1, not 2",
        "\"pose\":1 | \"pose\":1,\"x\":1 | $.estimate.slaps[0].x: not a known key here",
        "\"sources\":[\"sound\" | \"sources\":[\"ear\" | $.estimate.slaps[0].sources[0]: \"ear\" is not one of sound, motion, shape",
        "[-1.0,0.0,1.25] | [-1.0,0.0] | $.estimate.turn: 3 times but 2 values",
        "[-1.0,0.0,1.25] | [-1.0,null,1.25] | $.estimate.turn.values[1]: must be a number",
        "[0.0,10.0,5.0] | [0.0,10.0] | $.estimate.elbow: timesS, rightPx, downPx and distancePx must be equally long",
        "[0.0,10.0,5.0] | [0.0,-10.0,5.0] | $.estimate.elbow.distancePx[1]: must be a number from 0",
        "\"startS\":0.95 | \"startS\":1.1 | $.estimate.spans[0]: a span must end after it starts",
        "\"clipSha256\": \"0 | \"clipSha256\": \"x | $.estimate.clipSha256: must be 64 hexadecimal digits",
      })
  void aFaultInAnEstimateIsNamedByItsPlace(String was, String now, String says) {
    String good =
        TrialJson.write(
            SampleFiles.plainTrial(SampleFiles.RIGHT).withEstimate(SampleFiles.fullEstimate()));
    assertTrue(good.contains(was), () -> was + " is not in " + good);
    String text = good.replaceFirst(Pattern.quote(was), Matcher.quoteReplacement(now));
    assertSays(says, assertThrows(JsonException.class, () -> TrialJson.read(text)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"timeS\":1.0 | \"timeS\":\"1.0\" | $.readings[0].slaps[0].timeS: must be a number",
        "\"timeS\":1.0 | \"timeS\":1e9 | $.readings[0].slaps[0].timeS: must be a number from",
        "\"timeS\":1.0 | \"timeS\":1e999 | $.readings[0].slaps[0].timeS: must be a number from",
        "\"timeS\":1.0 | \"time\":1.0 | $.readings[0].slaps[0].timeS: missing",
        "\"timeS\":1.0 | \"timeS\":null | $.readings[0].slaps[0].timeS: missing",
        "\"side\":\"back\" | \"side\":\"front\" | $.readings[0].slaps[1].side: \"front\" is not one of palm, back, unknown",
        "\"seen\":false | \"seen\":0 | $.readings[0].slaps[1].seen: must be true or false, not 0",
        "\"endS\":1.9 | \"endS\":1.1 | $.readings[0].spans[0]: a span must end after it starts",
        "\"repeat\": 1 | \"repeat\": 1.5 | $.repeat: must be a whole number from 1 to 999, not 1.5",
        "\"repeat\": 1 | \"repeat\": 0 | $.repeat: must be a whole number",
        "\"repeat\": 1 | \"repeat\": 99999999999 | $.repeat: must be a whole number",
        "\"block\": \"baseline\" | \"block\": \"../x\" | $: \"../x\" is not a block",
        "\"sha256\": \"0 | \"sha256\": \"g | $.clip.sha256: must be 64 hexadecimal digits",
        "\"reader\": \"EF\" | \"reader\": \"AB\" | $: two readings by \"AB\"",
        "\"reader\": \"EF\" | \"reader\": \" \" | $.readings[1]: a reader needs a name",
        "\"state\": \"open\" | \"state\": \"shut\" | $.readings[1].state: \"shut\" is not open or finished",
        "\"estimate\" | \"a guess\" | $.readings[1].startedFrom: \"a guess\" is not one of",
        "\"factor\":0.25 | \"factor\":0 | $.timeScale[1].factor: must be a number above 0",
        "\"factor\":0.25 | \"factor\":1,\"x\":1 | $.timeScale[1].x: not a known key here",
        "\"fromS\":2.0 | \"fromS\":0 | $: the pieces of timeScale must be in order of time",
        "\"toS\": 6.5 | \"toS\": 0.5 | $: a trial must end after it starts",
        "\"slaps\": [ | \"slaps\": 3, \"x\": [ | $.readings[0].slaps: must be a list, not 3",
        "palmturn-trial | palmturn-session | $.format: must be \"palmturn-trial\"",
        "\"version\": 1 | \"version\": 0 | $.version: must be a whole number from 1",
        "\"version\": 1 | \"version\": 2 | written by a newer Palmturn: palmturn-trial version 2, and this one knows up to version 1",
        "\"version\": 1 | \"version\": 1, \"version\": 1 | damaged at line 3, column",
        "\"hand\": \"right\", | \"hand\": \"right\" | damaged at line 5, column",
      })
  void aFaultInATrialIsNamedByItsPlace(String was, String now, String says) {
    assertTrue(TRIAL.contains(was), () -> was + " is not in " + TRIAL);
    String text = TRIAL.replaceFirst(Pattern.quote(was), Matcher.quoteReplacement(now));
    assertSays(says, assertThrows(JsonException.class, () -> TrialJson.read(text)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-05-01\" | 2026-02-30\" | $.date: \"2026-02-30\" is not a date",
        "2026-05-01T10:00:00Z | yesterday | $.blocks[1].drill.start: \"yesterday\" is not a date or time",
        "\"name\": \"after-1\" | \"name\": \"baseline\" | $: two blocks named baseline",
        "\"name\": \"after-1\" | \"name\": \"after-0\" | $.blocks[1]: \"after-0\" is not a block",
        "\"right-baseline-1\" | \"right-1\" | $.filmed[0]: \"right-1\" is not a trial's name",
        "\"right-baseline-1\" | 7 | $.filmed[0]: must be a text, not 7",
        "\"forearmCm\": 25.5 | \"forearmCm\": -1 | $.forearmCm: must be a number above 0, up to 100, not -1",
        "\"handCm\": 18.5 | \"handCm\": 185 | $.handCm: must be a number from 8 to 30, not 185",
        "\"guardianConsent\": true | \"guardianConsent\": \"yes\" | $.guardianConsent: must be true or false",
        "\"hand\": \"left\" | \"hand\": [] | $.blocks[1].drill.hand: must be a text, not a list",
        "\"messages\": [ | \"messages\": [1, | $.messages[0]: must be an object, not 1",
      })
  void aFaultInASessionIsNamedByItsPlace(String was, String now, String says) {
    assertTrue(SESSION.contains(was), () -> was + " is not in " + SESSION);
    String text = SESSION.replaceFirst(Pattern.quote(was), Matcher.quoteReplacement(now));
    assertSays(says, assertThrows(JsonException.class, () -> SessionJson.read(text)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  \n", "[]", "null", "7", "{}", "{", "nonsense", "{} {}", "\u0000"})
  void whatIsNoSessionAtAllIsRefusedInOneLine(String text) {
    assertSays("", assertThrows(JsonException.class, () -> SessionJson.read(text)));
  }

  @Test
  void absurdNestingIsRefused() {
    String text = SESSION.replaceFirst("\\{", "{\"x\": " + "[".repeat(100_000));
    assertSays(
        "refused: Document nesting depth (65) exceeds the maximum allowed (64)",
        assertThrows(JsonException.class, () -> SessionJson.read(text)));
  }

  @Test
  void absurdSizeIsRefused() {
    String text = SESSION + " ".repeat(JsonText.MAX_CHARACTERS);
    assertSays("too long", assertThrows(JsonException.class, () -> SessionJson.read(text)));
  }

  @Test
  void aByteOrderMarkInFrontIsForgiven() throws JsonException {
    assertEquals(SampleFiles.fullSession(), SessionJson.read("\uFEFF" + SESSION));
  }

  /** Cut anywhere and with any one character changed, a file is read or refused, never worse. */
  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void damageAnywhereIsOneClearLine(long seed) {
    Random random = new Random(seed);
    String end = TRIAL.stripTrailing();
    for (int i = 0; i < 400; i++) {
      String cut = end.substring(0, random.nextInt(end.length()));
      assertSays("", assertThrows(JsonException.class, () -> TrialJson.read(cut)));
      StringBuilder flipped = new StringBuilder(TRIAL);
      flipped.setCharAt(random.nextInt(TRIAL.length()), (char) random.nextInt(0x180));
      try {
        TrialJson.read(flipped.toString());
      } catch (JsonException e) {
        assertSays("", e);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23})
  void anyCharacterChangedInAJournalLineIsFound(long seed) {
    Random random = new Random(seed);
    String line =
        new JournalLine(
                Instant.EPOCH, "Add a slap", SampleFiles.fullTrial().readings().get(0), null)
            .write()
            .strip();
    assertEquals(line, JournalLine.wholeLineIn(line));
    for (int i = 0; i < 400; i++) {
      StringBuilder changed = new StringBuilder(line);
      int at = random.nextInt(line.length());
      changed.setCharAt(at, (char) (line.charAt(at) + 1 + random.nextInt(50)));
      assertThrows(JsonException.class, () -> JournalLine.read(changed.toString()));
      assertThrows(JsonException.class, () -> JournalLine.read(line.substring(0, at)));
    }
  }

  @Test
  void olderVersionsAreBroughtUpStepByStep() throws JsonException {
    UnaryOperator<ObjectNode> rename =
        file -> {
          file.set("timeS", file.remove("time"));
          return file;
        };
    UnaryOperator<ObjectNode> toSeconds =
        file -> file.put("timeS", file.get("timeS").doubleValue() / 1000);
    Format third = new Format("sample", List.of(rename, toSeconds));
    assertEquals(3, third.version());
    assertEquals(
        1.5,
        third.open("{\"format\":\"sample\",\"version\":1,\"time\":1500}").number("timeS", 0, 9));
    assertEquals(
        1.5,
        third.open("{\"format\":\"sample\",\"version\":2,\"timeS\":1500}").number("timeS", 0, 9));
    assertEquals(
        1.5,
        third.open("{\"format\":\"sample\",\"version\":3,\"timeS\":1.5}").number("timeS", 0, 9));
    assertSays(
        "sample version 4, and this one knows up to version 3",
        assertThrows(
            JsonException.class, () -> third.open("{\"format\":\"sample\",\"version\":4}")));
  }

  private static void assertSays(String expected, JsonException e) {
    String message = String.valueOf(e.getMessage());
    assertTrue(message.contains(expected), () -> "\"%s\" in: %s".formatted(expected, message));
    assertEquals(1, message.lines().count(), message);
    assertTrue(message.length() < 400, message);
  }
}
