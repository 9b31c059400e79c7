package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Zone;

class WindowAndSpeedTest {

  @Test
  void theRateCountsIntervalsNotSlaps() {
    // 0.2 s apart for 2 s: eleven slaps, ten intervals.
    Speed speed = Made.score(Made.slaps(1.0, Made.same(10, 0.2))).speed();
    assertEquals(5.0, speed.rateSlapsPerS(), 1e-12);
    assertEquals(2.5, speed.cycleRateHz(), 1e-12);
  }

  @Test
  void onlySlapsInsideTheWindowCount() {
    // 0.25 s apart for 10 s: the slap exactly 5 s after the first is the last inside.
    TrialScore score = Made.score(Made.slaps(0.4, Made.same(40, 0.25)));
    assertEquals(21, score.accuracy().slaps());
    assertEquals(4.0, score.speed().rateSlapsPerS(), 1e-12);
  }

  @Test
  void theWindowBeginsWithTheFirstContactNotWithAMissedTurn() {
    List<Slap> marks = new ArrayList<>(Made.slaps(2.0, Made.same(10, 0.2)));
    marks.add(Made.mark(Slap.Kind.MISSED, 1.0, Side.BACK, Zone.UNKNOWN));
    assertEquals(11, Made.score(marks).accuracy().attempts());
  }

  @Test
  void tenCyclesAreTheTwentyFirstSlapOrAreExtrapolated() {
    Speed whole = Made.score(Made.slaps(0, Made.same(24, 0.2))).speed();
    assertEquals(4.0, whole.tenCycleS(), 1e-12);
    assertFalse(whole.tenCycleExtrapolated());

    Speed part = Made.score(Made.slaps(0, Made.same(19, 0.25))).speed();
    assertEquals(5.0, part.tenCycleS(), 1e-12);
    assertTrue(part.tenCycleExtrapolated());
  }

  @Test
  void theBestTwoSecondsFindTheFastStretch() {
    double[] intervals = Made.same(22, 0.3);
    for (int i = 4; i < 14; i++) {
      intervals[i] = 0.2;
    }
    assertEquals(5.0, Made.score(Made.slaps(0, intervals)).speed().bestTwoSecondsSlapsPerS(), 1e-9);
  }

  @Test
  void aStretchUnderOneAndAHalfSecondsIsNoBest() {
    assertNull(Made.score(Made.slaps(0, Made.same(7, 0.2))).speed().bestTwoSecondsSlapsPerS());
    assertNotNull(Made.score(Made.slaps(0, Made.same(8, 0.2))).speed().bestTwoSecondsSlapsPerS());
  }

  @Test
  void oneSlapHasNoRate() {
    TrialScore score = Made.score(Made.slaps(1));
    assertNull(score.speed().rateSlapsPerS());
    assertNull(score.rhythm().intervalCvPct());
    assertNull(score.endurance().slowDownPctPerS());
    assertEquals(1, score.accuracy().slaps());
  }

  @Test
  void anEmptyReadingHasNoFigures() {
    TrialScore score = Made.score(List.of());
    assertEquals(0, score.accuracy().slaps());
    for (Measure measure : Measures.ALL) {
      boolean count = List.of("slaps", "doubles", "pauses").contains(measure.id());
      assertEquals(count ? (Double) 0.0 : null, measure.value(score), measure.id());
    }
  }

  @Test
  void marksOutsideTheTrialsStretchAreAnotherTrials() {
    var whole = Made.trial(TimeScale.REAL);
    var stretch =
        new palmturn.trial.Trial(
            whole.id(),
            whole.clip(),
            1.0,
            2.0,
            whole.mirrored(),
            null,
            whole.timeScale(),
            null,
            null,
            List.of(),
            null,
            whole.extra());
    Reading reading = Made.reading(Made.slaps(0.1, Made.same(30, 0.1)));
    TrialScore score = Scores.trial(stretch, reading, 5, Made.LIMITS);
    assertEquals(11, score.accuracy().slaps());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void shiftingTimeChangesNothing(long seed) {
    double[] intervals = uneven(new Random(seed));
    TrialScore here = Made.score(Made.slaps(0.5, intervals));
    TrialScore later = Made.score(Made.slaps(64.5, intervals));
    for (Measure measure : Measures.ALL) {
      assertSame(measure, here, later, 1);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {6, 7, 8})
  void scalingTimeScalesTheRateAndLeavesRhythm(long seed) {
    double[] intervals = uneven(new Random(seed));
    double[] twice = new double[intervals.length];
    for (int i = 0; i < twice.length; i++) {
      twice[i] = 2 * intervals[i];
    }
    TrialScore once = Made.score(Made.slaps(0, intervals));
    TrialScore slow =
        Scores.trial(
            Made.trial(TimeScale.REAL), Made.reading(Made.slaps(0, twice)), 10, Made.LIMITS);
    assertSame(Measures.RATE, once, slow, 0.5);
    assertSame(Measures.INTERVAL_CV, once, slow, 1);
    assertSame(Measures.STEADY_CV, once, slow, 1);
    assertSame(Measures.TURN_BIAS, once, slow, 1);
    assertSame(Measures.SAME_TURN_CV, once, slow, 1);
    assertSame(Measures.NPVI, once, slow, 1);
    assertSame(Measures.LAST_OVER_FIRST, once, slow, 1);
    assertSame(Measures.TIMING_FLOOR, once, slow, 0.5);
  }

  @ParameterizedTest
  @ValueSource(longs = {9, 10, 11})
  void doublesNeverChangeTheRateOrTheRhythm(long seed) {
    Random random = new Random(seed);
    List<Slap> plain = Made.slaps(0.3, uneven(random));
    List<Slap> withDoubles = new ArrayList<>(plain);
    for (Slap slap : plain) {
      if (random.nextInt(3) == 0) {
        withDoubles.add(Made.mark(Slap.Kind.DOUBLE, slap.timeS() + 0.06, slap.side(), Zone.CENTRE));
      }
    }
    TrialScore without = Made.score(plain);
    TrialScore with = Made.score(withDoubles);
    assertTrue(with.accuracy().doubles() > 0);
    for (Measure measure : Measures.ALL) {
      if (measure.quality() == Quality.RHYTHM
          || measure == Measures.RATE
          || measure == Measures.SLAPS
          || measure == Measures.SLOW_DOWN) {
        assertSame(measure, without, with, 1);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {12, 13})
  void slowMotionGivesTheFiguresOfRealTime(long seed) {
    double[] intervals = uneven(new Random(seed));
    double[] eightTimes = new double[intervals.length];
    for (int i = 0; i < eightTimes.length; i++) {
      eightTimes[i] = 8 * intervals[i];
    }
    TrialScore real = Made.score(Made.slaps(0.5, intervals));
    TrialScore slow =
        Scores.trial(
            Made.trial(TimeScale.uniform(1.0 / 8)),
            Made.reading(Made.slaps(4, eightTimes)),
            5,
            Made.LIMITS);
    for (Measure measure : Measures.ALL) {
      // The frames of the stretched clip stand for an eighth of the time: so does the floor.
      assertSame(measure, real, slow, measure == Measures.TIMING_FLOOR ? 1.0 / 8 : 1);
    }
  }

  @Test
  void aClipSlowedInPartIsScaledByPiece() {
    // Real intervals of 0.2 s; from media second 1 on everything takes four times as long.
    TimeScale scale =
        new TimeScale(List.of(new TimeScale.Piece(0, 1), new TimeScale.Piece(1, 0.25)), "");
    TrialScore score =
        Scores.trial(
            Made.trial(scale),
            Made.reading(Made.slaps(0, 0.2, 0.2, 0.2, 0.2, 0.2, 0.8, 0.8, 0.8, 0.8, 0.8)),
            5,
            Made.LIMITS);
    assertEquals(5.0, score.speed().rateSlapsPerS(), 1e-9);
    assertEquals(0, score.rhythm().intervalCvPct(), 1e-9);
  }

  @Test
  void whereRealTimeIsRefusedOnlyAccuracyIsLeft() {
    TrialScore score =
        Scores.trial(
            Made.trial(TimeScale.refused("slowed in part, the file does not say where")),
            Made.reading(Made.slaps(0, Made.same(60, 0.2))),
            5,
            Made.LIMITS);
    assertNull(score.speed().rateSlapsPerS());
    assertNull(score.rhythm().steadyCvPct());
    assertNull(score.endurance().slowDownPctPerS());
    assertEquals(61, score.accuracy().slaps());
    assertEquals(100.0, score.accuracy().cleanSharePct());
    assertFalse(score.timeRefusedWhy().isEmpty());
  }

  static double[] uneven(Random random) {
    double[] intervals = new double[22];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = 0.18 + 0.04 * random.nextDouble();
    }
    return intervals;
  }

  private static void assertSame(Measure measure, TrialScore a, TrialScore b, double factor) {
    Double before = measure.value(a);
    Double after = measure.value(b);
    if (before == null || after == null) {
      assertEquals(before, after, measure.id());
      return;
    }
    assertEquals(before * factor, after, 1e-9 * (1 + Math.abs(before)), measure.id());
  }
}
