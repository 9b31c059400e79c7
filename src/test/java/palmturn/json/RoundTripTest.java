package palmturn.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;

class RoundTripTest {
  @Test
  void aFullSessionComesBackAsItWas() throws JsonException {
    Session session = SampleFiles.fullSession();
    assertEquals(session, SessionJson.read(SessionJson.write(session)));
  }

  @Test
  void aBareSessionComesBackAsItWas() throws JsonException {
    Session session = Session.begin("H-07", LocalDate.of(2026, 5, 1));
    assertEquals(session, SessionJson.read(SessionJson.write(session)));
  }

  @Test
  void aFullTrialComesBackAsItWas() throws JsonException {
    Trial trial = SampleFiles.fullTrial();
    assertEquals(trial, TrialJson.read(TrialJson.write(trial)));
  }

  @Test
  void aFullEstimateComesBackAsItWas() throws JsonException {
    Trial trial = SampleFiles.fullTrial().withEstimate(SampleFiles.fullEstimate());
    assertEquals(trial, TrialJson.read(TrialJson.write(trial)));
  }

  @Test
  void anEmptyEstimateComesBackAsItWas() throws JsonException {
    Trial trial = SampleFiles.fullTrial().withEstimate(SampleFiles.emptyEstimate());
    assertEquals(trial, TrialJson.read(TrialJson.write(trial)));
  }

  @Test
  void settlementsComeBackAsTheyWere() throws JsonException {
    Trial trial = SampleFiles.settledTrial();
    assertEquals(trial, TrialJson.read(TrialJson.write(trial)));
  }

  @Test
  void thatTheEstimateWasSeenIsInTheJournalToo() throws JsonException {
    Reading seen = Reading.begin("AB", StartedFrom.NOTHING).withEstimateSeen(true);
    JournalLine line = new JournalLine(Instant.EPOCH, "Add a slap", seen, null);
    assertEquals(line, JournalLine.read(line.write().strip()));
    assertFalse(seen.independent());
    assertTrue(seen.withEstimateSeen(false).independent());
  }

  @Test
  void unknownKeysOfASettlementAreKept() throws JsonException {
    String text =
        TrialJson.write(SampleFiles.settledTrial())
            .replace("\"removeOffset\": true", "\"removeOffset\": true, \"x\": [1.50]")
            .replace("\"why\": \"both", "\"y\": 2.50, \"why\": \"both");
    String again = TrialJson.write(TrialJson.read(text));
    assertTrue(again.contains("1.50") && again.contains("2.50"), again);
  }

  @Test
  void placesComeBackAsTheyWere() throws JsonException {
    for (PlacedPoints places :
        List.of(
            SampleFiles.fullPlaces(),
            PlacedPoints.NONE.withElbow(new Point(412.5, 300)),
            PlacedPoints.NONE.withTarget(new Point(0, 0)))) {
      Trial trial = SampleFiles.fullTrial().withPlaces(places);
      assertEquals(trial, TrialJson.read(TrialJson.write(trial)));
    }
  }

  @Test
  void placesAreLeftOutWhereNothingWasPointedAtAndNullWhereOneWasNot() throws JsonException {
    assertFalse(TrialJson.write(SampleFiles.fullTrial()).contains("places"));
    String text =
        TrialJson.write(
            SampleFiles.fullTrial().withPlaces(PlacedPoints.NONE.withElbow(new Point(412.5, 300))));
    assertTrue(text.contains("\"trunk\": null"), text);
    String more = text.replace("\"trunk\": null", "\"trunk\": null, \"wrist\": [1.50]");
    assertTrue(TrialJson.write(TrialJson.read(more)).contains("1.50"));
  }

  @Test
  void unknownKeysOfAnEstimateAreKept() throws JsonException {
    String text =
        TrialJson.write(SampleFiles.fullTrial().withEstimate(SampleFiles.fullEstimate()))
            .replace("\"trialFound\": true", "\"trialFound\": true, \"a\": {\"b\": [1.50]}");
    String again = TrialJson.write(TrialJson.read(text));
    assertTrue(again.contains("1.50"), again);
    assertEquals(again, TrialJson.write(TrialJson.read(again)));
  }

  @Test
  void aCurveHasOneLineAndEachContactToo() {
    String text =
        TrialJson.write(
            SampleFiles.plainTrial(SampleFiles.RIGHT).withEstimate(SampleFiles.fullEstimate()));
    assertEquals(3, text.lines().filter(line -> line.contains("\"pose\"")).count(), text);
    assertEquals(
        1, text.lines().filter(line -> line.contains("[0.9,0.908333,0.916667]")).count(), text);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void randomMarksComeBackToTheLastBit(long seed) throws JsonException {
    Random random = new Random(seed);
    for (int i = 0; i < 25; i++) {
      Reading reading = SampleFiles.randomReading("AB", random.nextInt(60), random);
      Trial trial = SampleFiles.plainTrial(SampleFiles.RIGHT).withReading(reading);
      assertEquals(trial, TrialJson.read(TrialJson.write(trial)));
      JournalLine line = new JournalLine(Instant.EPOCH.plusSeconds(i), "Add a slap", reading, null);
      String text = line.write();
      assertEquals(1, text.chars().filter(c -> c == '\n').count(), "one line");
      assertEquals(line, JournalLine.read(text.substring(0, text.length() - 1)));
    }
  }

  @Test
  void eachMarkHasOneLineForDiffs() {
    String text = TrialJson.write(SampleFiles.fullTrial());
    assertEquals(2, text.lines().filter(line -> line.contains("\"timeS\"")).count());
    assertTrue(text.endsWith("}\n"));
  }

  @Test
  void unknownKeysAreKeptAtEveryLevelOfASession() throws JsonException {
    String text =
        """
        {"format": "palmturn-session", "version": 1, "athlete": "H-07", "date": "2026-05-01",
         "a": {"deep": [1, null, 1.50, 12345678901234567890]},
         "blocks": [{"name": "baseline", "b": 1e400},
           {"name": "after-1", "c": "x", "drill": {"code": "rest", "hand": "none", "d": true}}],
         "messages": [{"from": "H-07", "at": "2026-05-01T10:00:00Z", "text": "hi", "e": []}]}
        """;
    String again = SessionJson.write(SessionJson.read(text));
    for (String key : List.of("a", "b", "c", "d", "e")) {
      assertTrue(again.contains("\"%s\":".formatted(key)), key + " in " + again);
    }
    assertTrue(again.contains("1.50"), again);
    assertTrue(again.contains("12345678901234567890"), again);
    assertTrue(again.contains("1E+400"), again);
    assertEquals(again, SessionJson.write(SessionJson.read(again)), "settles at once");
  }

  @Test
  void unknownKeysAreKeptAtEveryLevelOfATrial() throws JsonException {
    String text =
        """
        {"format": "palmturn-trial", "version": 1, "hand": "left", "block": "baseline",
         "repeat": 1, "mirrored": "unknown", "a": 1,
         "clip": {"path": "clips/a.mp4", "sha256": "%s", "medianFrameS": 0.016, "b": 2},
         "readings": [{"reader": "AB", "state": "open", "startedFrom": "nothing", "c": 3,
           "slaps": [{"kind": "slap", "timeS": 1, "side": "palm", "zone": "centre",
             "timedBy": "picture", "resolutionS": 0.016, "d": {"x": [4]}}],
           "spans": [{"kind": "pause", "startS": 1, "endS": 2, "e": "5"}]}]}
        """
            .formatted(SampleFiles.SHA);
    Trial read = TrialJson.read(text);
    String again = TrialJson.write(read);
    for (String key : List.of("a", "b", "c", "d", "e")) {
      assertTrue(again.contains("\"%s\":".formatted(key)), key + " in " + again);
    }
    assertEquals(read, TrialJson.read(again));
    JournalLine line = new JournalLine(Instant.EPOCH, "x", read.readings().get(0), null);
    assertEquals(line, JournalLine.read(line.write().strip()), "in the journal too");
  }
}
