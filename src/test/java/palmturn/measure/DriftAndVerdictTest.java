package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

class DriftAndVerdictTest {
  private static final Reading EVEN = Made.reading(Made.slaps(1, Made.same(20, 0.2)));

  @Test
  void elbowIsMeasuredInsideTheWindowOnly() {
    double[] timesS = {0.5, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0};
    double[] cm = {9, 0, 1, 4, 2, 1, 8};
    Drift drift = drift(new ElbowSeries(timesS, cm));
    assertEquals(4, drift.elbowMaxCm());
    // Of the four seconds from 1 to 5 s the one from 3 to 4 s is over 3 cm.
    assertEquals(25, drift.elbowOverLimitPct(), 1e-9);
    // Type 7: position 1 + 4 × 0.95 = 4.8 among 0, 1, 1, 2, 4.
    assertEquals(2 + 0.8 * 2, drift.elbowP95Cm(), 1e-9);
  }

  @Test
  void unevenFramesWeighByHowLongTheyLast() {
    double[] timesS = {1.0, 1.1, 1.2, 4.2};
    double[] cm = {4, 4, 1, 1};
    assertEquals(100 * 0.2 / 3.2, drift(new ElbowSeries(timesS, cm)).elbowOverLimitPct(), 1e-9);
  }

  @Test
  void noElbowNoDrift() {
    assertNull(drift(null).elbowMaxCm());
    assertEquals(LimitVerdict.CANNOT_TELL, Made.score(EVEN.slaps()).verdicts().get(Quality.DRIFT));
  }

  @Test
  void theElbowIsTheEstimates() {
    Trial trial = Made.trial(TimeScale.REAL).withEstimate(SampleFiles.fullEstimate());
    // Inside the window it strays 10 and then 5 pixels of 0.1 cm.
    assertEquals(1.0, Scores.trial(trial, EVEN, 5, Made.LIMITS).drift().elbowMaxCm());
    Trial blind = Made.trial(TimeScale.REAL).withEstimate(SampleFiles.emptyEstimate());
    assertNull(Scores.trial(blind, EVEN, 5, Made.LIMITS).drift().elbowMaxCm());
  }

  @Test
  void anEstimateIsScoredAsAReadingThatIsNotIndependent() {
    Trial trial = Made.trial(TimeScale.REAL).withEstimate(SampleFiles.fullEstimate());
    Reading reading = ReadingChoice.ESTIMATE.of(trial);
    TrialScore score = Scores.trial(trial, reading, 5, Made.LIMITS);
    assertEquals("estimate", score.reading());
    assertFalse(score.independent());
    assertEquals(2, score.accuracy().slaps());
    assertEquals(1, score.accuracy().doubles());
    Reading unspoilt = reading.withSpans(List.of());
    assertNull(
        Scores.trial(trial, unspoilt, 5, Made.LIMITS).accuracy().cleanSharePct(),
        "its zones are unknown");
    assertNull(ReadingChoice.ESTIMATE.of(Made.trial(TimeScale.REAL)));
  }

  /** Clean slaps of 25; Wilson intervals from the formula checked in the room of numbers. */
  @ParameterizedTest
  @CsvSource({"25, WITHIN", "22, UNCLEAR", "17, UNCLEAR", "15, OVER", "12, OVER"})
  void cleanShareAgainstEightyPerCent(int clean, LimitVerdict expected) {
    List<Slap> slaps = new ArrayList<>(Made.slaps(0, Made.same(24, 0.2)));
    for (int i = clean; i < slaps.size(); i++) {
      slaps.set(i, slaps.get(i).withZone(Zone.EDGE));
    }
    assertEquals(expected, Made.score(slaps).verdicts().get(Quality.ACCURACY));
  }

  @Test
  void slowDownAgainstThreePerCentASecond() {
    assertEquals(LimitVerdict.WITHIN, slowing(0.01).verdicts().get(Quality.ENDURANCE));
    assertEquals(LimitVerdict.OVER, slowing(0.08).verdicts().get(Quality.ENDURANCE));
  }

  @Test
  void noLimitNoVerdict() {
    assertEquals(LimitVerdict.CANNOT_TELL, Made.score(EVEN.slaps()).verdicts().get(Quality.SPEED));
    Limits limits = Made.LIMITS;
    Limits withRate =
        new Limits(
            limits.cleanSharePct(),
            limits.steadyCvPct(),
            limits.slowDownPctPerS(),
            limits.elbowCm(),
            new Limit(4.5, "the coach"),
            limits.margins());
    TrialScore score = Scores.trial(Made.trial(TimeScale.REAL), EVEN, 5, withRate);
    assertEquals(LimitVerdict.WITHIN, score.verdicts().get(Quality.SPEED));
  }

  @ParameterizedTest
  @CsvSource({
    // scatter as a share of the interval, onset SD s, verdict
    "0.02, 0.001, WITHIN",
    "0.08, 0.001, UNCLEAR",
    "0.20, 0.001, OVER",
    // A floor of 4.2 %: 7 % is at most 7 %, which is under 8 % whatever the floor hides.
    "0.07, 0.006, WITHIN",
    // A floor of 14 %: most of 18 % may be the marks' own scatter, so that over can't be said.
    "0.18, 0.020, UNCLEAR"
  })
  void steadyCvAgainstEightPerCent(double scatter, double onsetSdS, LimitVerdict expected) {
    double[] d = Made.same(24, 0.2);
    for (int i = 0; i < d.length; i++) {
      // Up, up, down, down: no turn bias and next to no slope.
      d[i] += (i / 2) % 2 == 0 ? scatter * 0.2 : -scatter * 0.2;
    }
    List<Slap> slaps =
        Made.slaps(0, d).stream()
            .map(slap -> Made.timed(slap, TimedBy.SOUND, onsetSdS, slap.timeS()))
            .toList();
    TrialScore score = Made.score(slaps);
    assertEquals(expected, score.verdicts().get(Quality.RHYTHM), score.rhythm().toString());
  }

  private static TrialScore slowing(double perSecond) {
    double[] d = new double[20];
    double startS = 0;
    for (int i = 0; i < d.length; i++) {
      d[i] = 0.19 * Math.exp(perSecond * startS) + (i % 3 - 1) * 0.001;
      startS += d[i];
    }
    return Made.score(Made.slaps(0, d));
  }

  private static Drift drift(@Nullable ElbowSeries elbow) {
    return Scores.trial(Made.trial(TimeScale.REAL), EVEN, 5, Made.LIMITS, elbow).drift();
  }
}
