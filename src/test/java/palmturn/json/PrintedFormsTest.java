package palmturn.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.advise.Evidence;
import palmturn.advise.Training;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.measure.SessionScore;
import palmturn.trial.ClipFacts;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/** The forms that scripts read have their keys, with null where a figure can't be told. */
class PrintedFormsTest {
  private static final Set<String> TRIAL_KEYS =
      keys(
          "hand block repeat reading independent timedBy slaps doubles rateSlapsPerS cycleRateHz",
          "tenCycleS tenCycleExtrapolated bestTwoSecondsSlapsPerS cleanRateSlapsPerS",
          "cleanSharePct cleanShareLowPct cleanShareHighPct faults pauses intervalCvPct",
          "steadyCvPct steadyCvLowPct steadyCvHighPct turnBiasPct sameTurnCvPct npvi",
          "timingFloorPct rhythmResolved slowDownPctPerS slowDownLowPctPerS slowDownHighPctPerS",
          "lastOverFirstThird lateFaultsPct elbowMaxCm elbowP95Cm elbowOverLimitPct");

  private static Set<String> keys(String... lines) {
    return new TreeSet<>(List.of(String.join(" ", lines).split(" ")));
  }

  private static JsonNode tree(String text) throws IOException {
    return new ObjectMapper().readTree(text);
  }

  private static Set<String> missing(Set<String> wanted, JsonNode node) {
    Set<String> missing = new TreeSet<>(wanted);
    node.fieldNames().forEachRemaining(missing::remove);
    return missing;
  }

  private static Trial trial(TrialId id, int slaps) {
    Reading reading = Reading.begin("AB", StartedFrom.NOTHING);
    for (int i = 0; i < slaps; i++) {
      reading =
          reading.plus(
              Slap.onFrame(
                  Slap.Kind.SLAP,
                  1 + i / 4.0,
                  1 / 60.0,
                  i % 2 == 0 ? Side.PALM : Side.BACK,
                  i == 3 ? Zone.EDGE : Zone.CENTRE));
    }
    return SampleFiles.plainTrial(id).withReading(reading);
  }

  private static JsonNode score(Trial... trials) throws IOException {
    Session session = Session.begin("H-07", LocalDate.of(2026, 5, 1));
    List<Trial> all = new ArrayList<>(List.of(trials));
    SessionScore score = Scores.session(session, all, ReadingChoice.FIRST, LimitsJson.standard());
    SessionScore scored = score.withCeilings(new Random(1));
    Training training =
        Training.of(Evidence.of(scored, LimitsJson.standard()), DrillsJson.standard());
    return tree(ScoreJson.write(scored, training));
  }

  @Test
  void aScoreHasEveryKeyAndItsFigures() throws IOException {
    JsonNode root =
        score(
            trial(new TrialId(Hand.RIGHT, "baseline", 1), 17),
            trial(new TrialId(Hand.RIGHT, "baseline", 2), 15),
            trial(new TrialId(Hand.LEFT, "baseline", 1), 13),
            trial(new TrialId(Hand.LEFT, "baseline", 2), 14));
    assertEquals(Set.of(), missing(keys("athlete date trials hands sides retest"), root));
    assertTrue(root.get("retest").isEmpty(), "there is no later block");
    JsonNode train = root.get("train");
    assertFalse(train.isEmpty(), "there is always something to say");
    for (JsonNode advice : train) {
      assertEquals(Set.of(), missing(keys("rule hand quality sure why action drills"), advice));
    }
    assertEquals(Set.of(), missing(keys("note weeks"), root.get("plan")));
    assertEquals("2026-05-01", root.get("date").textValue());
    JsonNode first = root.get("trials").get(0);
    assertEquals(Set.of(), missing(TRIAL_KEYS, first));
    assertTrue(first.get("slaps").isInt());
    assertEquals(17, first.get("slaps").intValue());
    assertEquals(0, first.get("doubles").intValue());
    assertEquals(4.0, first.get("rateSlapsPerS").doubleValue(), 1e-12);
    assertEquals("picture", first.get("timedBy").textValue());
    assertTrue(first.get("tenCycleExtrapolated").booleanValue());
    assertEquals(1, first.get("faults").get("edge").get("back").intValue());
    assertEquals(10 / 17.0, first.get("faults").get("edge").get("per10").doubleValue(), 1e-12);
    assertTrue(first.get("elbowMaxCm").isNull(), "no elbow was tracked");
    JsonNode hand = root.get("hands").get(0);
    assertEquals(
        Set.of(),
        missing(
            keys("hand block quality n mean sd best typicalError low high unit readings"), hand));
    assertEquals("AB", hand.get("readings").get(0).textValue());
    JsonNode side = root.get("sides").get(0);
    assertEquals(
        Set.of(),
        missing(
            keys("quality right left difference low high unit verdict furtherTrials readings"),
            side));
    JsonNode ceiling = root.get("ceiling").get(0);
    assertEquals(
        Set.of(),
        missing(
            keys(
                "hand outcome cleanCeilingSlapsPerS low high slowestSlapsPerS fastestSlapsPerS",
                "trials paced attempts faulty unit readings"),
            ceiling));
    assertEquals("cannot-tell", ceiling.get("outcome").textValue(), "two trials are too few");
    assertTrue(ceiling.get("cleanCeilingSlapsPerS").isNull());
  }

  @Test
  void aRetestHasEveryKeyAndNullsWithoutAControl() throws IOException {
    JsonNode retest =
        score(
                trial(new TrialId(Hand.RIGHT, "baseline", 1), 17),
                trial(new TrialId(Hand.RIGHT, "baseline", 2), 15),
                trial(new TrialId(Hand.RIGHT, "after-1", 1), 13),
                trial(new TrialId(Hand.RIGHT, "after-1", 2), 14))
            .get("retest");
    assertEquals(4, retest.size());
    for (JsonNode change : retest) {
      assertEquals(
          Set.of(),
          missing(
              keys(
                  "hand quality block before after difference low high unit verdict furtherTrials",
                  "drill control netDifference netLow netHigh netVerdict"),
              change));
      assertEquals("none", change.get("control").textValue());
      assertTrue(change.get("netDifference").isNull());
      assertTrue(change.get("drill").isNull());
      assertEquals("cannot-tell", change.get("netVerdict").textValue());
    }
    assertEquals(0, retest.get(0).get("difference").doubleValue(), 1e-12);
    assertEquals("no-change", retest.get(0).get("verdict").textValue());
  }

  @Test
  void figuresOfATrialWithoutMarksAreNull() throws IOException {
    JsonNode only = score(trial(SampleFiles.RIGHT, 0)).get("trials").get(0);
    assertEquals(Set.of(), missing(TRIAL_KEYS, only));
    assertEquals(0, only.get("slaps").intValue());
    for (String key : keys("rateSlapsPerS tenCycleS tenCycleExtrapolated cleanSharePct npvi")) {
      assertTrue(only.get(key).isNull(), key);
    }
  }

  @Test
  void factsHaveEveryKey() throws IOException {
    ClipFacts silent = facts(0, 60.0, null, null, false, List.of("no sound"));
    ClipFacts loud =
        facts(-0.021, null, 240.0, new ClipFacts.Sound("aac", 48000, 1, -0.021), true, List.of());
    JsonNode root = tree(FactsJson.write(List.of(silent, loud)));
    assertTrue(root.isArray());
    for (JsonNode clip : root) {
      assertEquals(
          Set.of(),
          missing(
              keys(
                  "clip sha256 container videoCodec width height rotationDeg frames firstS",
                  "durationS nominalFps meanFps variableRate captureFps sound location warnings"),
              clip));
    }
    assertTrue(root.get(0).get("sound").isNull());
    assertTrue(root.get(0).get("captureFps").isNull());
    assertTrue(root.get(1).get("nominalFps").isNull());
    assertEquals("no sound", root.get(0).get("warnings").get(0).textValue());
    assertEquals(
        Set.of(), missing(keys("codec sampleRate channels firstS"), root.get(1).get("sound")));
    assertEquals("[]\n", FactsJson.write(List.of()));
  }

  private static ClipFacts facts(
      double firstS,
      Double nominalFps,
      Double captureFps,
      ClipFacts.Sound sound,
      boolean location,
      List<String> warnings) {
    return new ClipFacts(
        "a.mp4",
        SampleFiles.SHA,
        "mp4",
        "h264",
        720,
        1280,
        90,
        420,
        firstS,
        7.0,
        nominalFps,
        59.94,
        true,
        captureFps,
        sound,
        location,
        warnings,
        1 / 60.0,
        false);
  }

  @Test
  void theShippedLimitsSayWhereTheyComeFrom() {
    Limits limits = LimitsJson.standard();
    assertEquals(new Limit(80, Limit.OWN_CHOICE), limits.cleanSharePct());
    assertEquals(new Limit(2.5, Limit.OWN_CHOICE), limits.margins().slowDownPctPerS());
    assertEquals(null, limits.minRateSlapsPerS());
  }

  private static String limitsText() throws IOException {
    try (InputStream in = LimitsJson.class.getResourceAsStream("/palmturn/limits.json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"value\": 80 | \"value\": 101 | $.cleanSharePct.value: must be a number from 0 to 100, not 101",
        "\"value\": 80 | \"value\": -1 | $.cleanSharePct.value: must be a number from 0 to 100",
        "\"steadyCvPct\" | \"steadyCv\" | $.steadyCvPct: missing",
        "\"minRateSlapsPerS\" | \"minRate\" | $.minRate: not a known key here",
        "\"value\": 2.5, | | $.margins.slowDownPctPerS.value: missing",
      })
  void aSlipInEditedLimitsIsNamed(String was, String now, String says) throws IOException {
    String text = limitsText();
    assertTrue(text.contains(was));
    String edited = text.replace(was, now == null ? "" : now);
    JsonException e = assertThrows(JsonException.class, () -> LimitsJson.read(edited));
    assertTrue(e.getMessage().contains(says), e.getMessage());
  }

  @Test
  void aCoachMaySetALeastRate() throws Exception {
    String text = limitsText();
    Limits limits =
        LimitsJson.read(
            text.replace(
                "\"minRateSlapsPerS\": null",
                "\"minRateSlapsPerS\": {\"value\": 3.5, \"source\": \"the coach\"}"));
    assertEquals(3.5, limits.minRateSlapsPerS().value());
  }

  private static EstimateLine of(Hand hand) {
    return new EstimateLine("a.mp4", null, null, hand, SampleFiles.SHA, null);
  }

  @Test
  void anEstimateHasItsFixedKeys() throws IOException {
    StringBuilder page = new StringBuilder();
    new PrintedEstimate(of(Hand.RIGHT), SampleFiles.fullEstimate()).print(page);
    JsonNode found = tree(page.toString());
    assertEquals(
        Set.of(),
        missing(
            keys(
                "clip hand fps variableRate slaps trialFound captureFps rateSlapsPerS",
                "intervalCvPct timingFloorPct rotation turn elbow spans soundOffsetS warnings"),
            found));
    assertEquals(
        Set.of(),
        missing(
            keys(
                "timeS side sideConfidence zone zoneConfidence double sources confidence timedBy",
                "resolutionS"),
            found.get("slaps").get(0)));
    assertEquals("sound", found.get("slaps").get(0).get("sources").get(0).textValue());
    assertTrue(found.get("slaps").get(1).get("soundS").isNull());
    assertEquals(2.6125, found.get("rotation").get("series").get(1).get("hz").doubleValue());
    assertEquals(1.25, found.get("turn").get(2).get("value").doubleValue());
    assertEquals(Set.of(), missing(keys("kind startS endS confidence"), found.get("spans").get(0)));
    JsonNode elbow = found.get("elbow");
    assertEquals(1.0, elbow.get("maxCm").doubleValue());
    assertEquals("given", elbow.get("scale").textValue());
    // 10 pixels at 0.1 cm a pixel and 250 pixels a forearm.
    assertEquals(1.0, elbow.get("series").get(1).get("cm").doubleValue());
    assertEquals(0.04, elbow.get("series").get(1).get("forearms").doubleValue());
    JsonNode unseen = elbow.get("unseen").get(0);
    assertEquals(1.1, unseen.get("timeS").doubleValue());
    assertEquals(0.6731, unseen.get("cm").doubleValue());
    assertEquals(0.3125, unseen.get("sdCm").doubleValue());
    assertEquals(0.0269, unseen.get("forearms").doubleValue());
    assertEquals(0.0125, unseen.get("sdForearms").doubleValue());
    assertEquals(8.0, elbow.get("path").get(1).get("downPx").doubleValue());
  }

  @Test
  void anEstimateThatFoundNothingSaysNullAndNeverZero() throws IOException {
    String line = new PrintedEstimate(of(Hand.LEFT), SampleFiles.emptyEstimate()).line();
    assertEquals(1, line.lines().count());
    JsonNode found = tree(line);
    for (String key :
        List.of(
            "captureFps",
            "rateSlapsPerS",
            "intervalCvPct",
            "timingFloorPct",
            "elbow",
            "handRegion",
            "soundOffsetS",
            "trial")) {
      assertTrue(found.get(key).isNull(), key);
    }
    assertTrue(found.get("rotation").get("frequencyHz").isNull());
    assertEquals(0, found.get("slaps").size());
    assertEquals(1, found.get("warnings").size());
  }
}
