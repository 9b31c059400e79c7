package palmturn.app.tally;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.json.LimitsJson;
import palmturn.measure.LimitVerdict;
import palmturn.measure.Scores;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class TallyTest {
  private final Tally tally = new Tally();

  @Test
  void fiveSlapsASecondReadFivePointZero() {
    show(slaps(21, 0.2, Zone.CENTRE), TimeScale.REAL);

    assertEquals("5.0", line("Speed").figure());
    assertEquals("100", line("Accuracy").figure());
    assertEquals("21 of 21, 95 % interval 85 to 100 %", line("Accuracy").note());
    assertEquals("within limit 80", line("Accuracy").verdictWords());
    assertEquals("21 slaps", tally.countProperty().get());
  }

  @Test
  void offCentreSlapsPutAccuracyUnderItsLimit() {
    show(slaps(21, 0.2, Zone.FINGERS), TimeScale.REAL);

    assertEquals("0", line("Accuracy").figure());
    assertEquals(LimitVerdict.OVER, line("Accuracy").verdict());
    assertEquals("under limit 80", line("Accuracy").verdictWords());
  }

  @Test
  void rhythmUnderTheTimingFloorIsAtMost() {
    List<Slap> slaps = new ArrayList<>(slaps(21, 0.2, Zone.CENTRE));
    slaps.set(10, slaps.get(10).movedToFrame(slaps.get(10).timeS() + 0.01, 1 / 60.0));
    show(slaps, TimeScale.REAL);

    assertEquals("≤ ", line("Rhythm").figure().substring(0, 2));
  }

  @Test
  void nothingMarkedReadsAsADashNotAsZero() {
    show(List.of(), TimeScale.REAL);

    for (TallyRow each : tally.rowsProperty().get()) {
      assertEquals("–", each.figure(), each.name());
      assertNull(each.gauge(), each.name());
    }
    assertEquals("no slap marked yet", line("Accuracy").note());
  }

  @Test
  void refusedTimeSaysWhy() {
    show(slaps(21, 0.2, Zone.CENTRE), TimeScale.refused("the clip is slowed in part"));

    assertEquals("–", line("Speed").figure());
    assertEquals("the clip is slowed in part", line("Speed").note());
  }

  private void show(List<Slap> slaps, TimeScale scale) {
    Trial trial =
        new Trial(
            TrialId.parse("right-baseline-1"),
            new ClipRef("clips/a.mp4", "0".repeat(64), 1 / 60.0, Extra.NONE),
            null,
            null,
            Mirrored.FALSE,
            null,
            scale,
            null,
            null,
            List.of(),
            null,
            Extra.NONE);
    Reading reading = Reading.begin("AK", StartedFrom.NOTHING).withSlaps(slaps);
    tally.show(
        Scores.trial(trial, reading, 5, LimitsJson.standard()), LimitsJson.standard(), null, 0);
  }

  private static List<Slap> slaps(int n, double apartS, Zone zone) {
    List<Slap> slaps = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(Slap.onFrame(Slap.Kind.SLAP, 1 + i * apartS, 1 / 60.0, side, zone));
    }
    return slaps;
  }

  private TallyRow line(String name) {
    return tally.rowsProperty().get().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
