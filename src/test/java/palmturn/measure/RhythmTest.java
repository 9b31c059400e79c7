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
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.numbers.Stats;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class RhythmTest {

  @Test
  void aPerfectlyEvenTrialHasNoVariation() {
    TrialScore score = Made.score(Made.slaps(0.7, Made.same(24, 0.2)));
    Rhythm rhythm = score.rhythm();
    assertEquals(0, rhythm.intervalCvPct(), 1e-9);
    assertEquals(0, rhythm.steadyCvPct(), 1e-9);
    assertEquals(0, rhythm.npvi(), 1e-9);
    assertEquals(0, rhythm.turnBiasPct(), 1e-9);
    assertEquals(0, rhythm.sameTurnCvPct(), 1e-9);
    assertEquals(0, score.endurance().slowDownPctPerS(), 1e-9);
    assertEquals(1, score.endurance().lastOverFirstThird(), 1e-9);
  }

  @Test
  void anExactTurnBiasIsNoUnsteadiness() {
    double[] intervals = new double[24];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = i % 2 == 0 ? 0.22 : 0.18; // the first turn is palm to back
    }
    Rhythm rhythm = Made.score(Made.slaps(0, intervals)).rhythm();
    assertEquals(20, rhythm.turnBiasPct(), 1e-9);
    assertEquals(0, rhythm.steadyCvPct(), 1e-9);
    assertEquals(0, rhythm.sameTurnCvPct(), 1e-9);
    // SD(n−1) of twelve each at ±0.02 about 0.2.
    assertEquals(100 * Math.sqrt(24 * 0.0004 / 23) / 0.2, rhythm.intervalCvPct(), 1e-9);
    assertEquals(20, rhythm.npvi(), 1e-9);
  }

  @Test
  void anExactExponentialSlowDownIsRecovered() {
    // Midpoints and durations of a series whose ln d rises 0.05 a second on its midpoints.
    double b = 0.05;
    List<Double> intervals = new ArrayList<>();
    double startS = 0;
    while (startS < 4.6) {
      double d = 0.18;
      for (int k = 0; k < 60; k++) {
        d = 0.18 * Math.exp(b * (startS + d / 2));
      }
      intervals.add(d);
      startS += d;
    }
    TrialScore score =
        Made.score(Made.slaps(3, intervals.stream().mapToDouble(each -> each).toArray()));
    assertEquals(100 * Math.expm1(b), score.endurance().slowDownPctPerS(), 1e-8);
    assertTrue(score.endurance().lastOverFirstThird() < 0.9);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void steadyCvIsResidualScatterOverTheMean(long seed) {
    // The same by solving the normal equations for three unknowns.
    double[] d = WindowAndSpeedTest.uneven(new Random(seed));
    double[][] rows = new double[d.length][];
    double startS = 0;
    for (int i = 0; i < d.length; i++) {
      rows[i] = new double[] {1, startS + d[i] / 2, i % 2 == 0 ? 0.5 : -0.5};
      startS += d[i];
    }
    double squares = squaresLeft(rows, d);
    Double mean = Stats.mean(d);
    assertNotNull(mean);
    double expected = 100 * Math.sqrt(squares / (d.length - 3)) / mean;

    assertEquals(expected, Made.score(Made.slaps(0.2, d)).rhythm().steadyCvPct(), 1e-8);
  }

  @Test
  void unknownSidesLeaveOutTheTurnMeasuresAndTheTurnTerm() {
    double[] d = WindowAndSpeedTest.uneven(new Random(4));
    List<Slap> slaps = new ArrayList<>(Made.slaps(0, d));
    slaps.set(5, slaps.get(5).withSide(Side.UNKNOWN));
    Rhythm rhythm = Made.score(slaps).rhythm();
    assertNull(rhythm.turnBiasPct());
    assertNull(rhythm.sameTurnCvPct());
    double[][] rows = new double[d.length][];
    double startS = 0;
    for (int i = 0; i < d.length; i++) {
      rows[i] = new double[] {1, startS + d[i] / 2};
      startS += d[i];
    }
    Double mean = Stats.mean(d);
    assertNotNull(mean);
    assertEquals(
        100 * Math.sqrt(squaresLeft(rows, d) / (d.length - 2)) / mean, rhythm.steadyCvPct(), 1e-8);
  }

  @Test
  void theSameSideTwiceBelongsToNoTurn() {
    List<Slap> slaps = new ArrayList<>(Made.slaps(0, Made.same(20, 0.2)));
    slaps.set(7, slaps.get(7).withSide(Side.PALM));
    TrialScore score = Made.score(slaps);
    assertEquals(2, score.intervals().stream().filter(each -> each.turn() == null).count());
    assertEquals(20, score.rhythm().intervals());
    assertNotNull(score.rhythm().turnBiasPct());
  }

  @Test
  void pausesCountInTheRateButNotInRhythm() {
    double[] d = Made.same(15, 0.2);
    d[7] = 0.9;
    TrialScore score = Made.score(Made.slaps(0, d));
    assertEquals(1, score.rhythm().pauses());
    assertEquals(0, score.rhythm().intervalCvPct(), 1e-9);
    assertEquals(15 / 3.7, score.speed().rateSlapsPerS(), 1e-9);
  }

  @Test
  void aPauseBeginsOverTwoPointTwoMedians() {
    double[] d = Made.same(15, 0.2);
    d[7] = 0.43;
    assertEquals(0, Made.score(Made.slaps(0, d)).rhythm().pauses());
    d[7] = 0.45;
    assertEquals(1, Made.score(Made.slaps(0, d)).rhythm().pauses());
  }

  @Test
  void aMarkedPauseIsOneEvenIfShort() {
    List<Slap> slaps = Made.slaps(0, Made.same(15, 0.2));
    Rhythm rhythm = Made.score(slaps, Made.span(Span.SpanKind.PAUSE, 1.19, 1.41)).rhythm();
    assertEquals(1, rhythm.pauses());
    assertEquals(14, rhythm.intervals());
  }

  @Test
  void anIntervalOverAMissedTurnIsNeitherRhythmNorPause() {
    double[] d = Made.same(15, 0.2);
    d[7] = 0.6;
    List<Slap> marks = new ArrayList<>(Made.slaps(0, d));
    marks.add(Made.mark(Slap.Kind.MISSED, 1.7, Side.PALM, Zone.UNKNOWN));
    TrialScore score = Made.score(marks);
    assertEquals(0, score.rhythm().pauses());
    assertEquals(14, score.rhythm().intervals());
    assertEquals(0, score.rhythm().intervalCvPct(), 1e-9);
  }

  @Test
  void timedBySoundWhereFourFifthsOfTheIntervalsAre() {
    List<Slap> slaps = new ArrayList<>();
    for (Slap slap : Made.slaps(1, Made.same(20, 0.2))) {
      // The sound runs 30 ms behind and is even; the picture jitters.
      double soundS = slap.timeS() + 0.03;
      double jitter = slaps.size() % 3 == 0 ? 0.01 : 0;
      Slap seen = Made.mark(slap.kind(), slap.timeS() + jitter, slap.side(), slap.zone());
      slaps.add(Made.timed(seen, TimedBy.PICTURE, Made.FRAME_S, soundS));
    }
    Rhythm bySound = Made.score(slaps).rhythm();
    assertEquals(TimedBy.SOUND, bySound.timedBy());
    assertEquals(0, bySound.intervalCvPct(), 1e-9);

    // Two inner slaps without an onset take four of twenty intervals: 80 % are left, just enough.
    slaps.set(5, Made.timed(slaps.get(5), TimedBy.PICTURE, Made.FRAME_S, null));
    slaps.set(9, Made.timed(slaps.get(9), TimedBy.PICTURE, Made.FRAME_S, null));
    Rhythm justEnough = Made.score(slaps).rhythm();
    assertEquals(TimedBy.SOUND, justEnough.timedBy());
    assertEquals(4, justEnough.leftOut());
    assertEquals(16, justEnough.intervals());
    assertEquals(0, justEnough.intervalCvPct(), 1e-9);

    slaps.set(13, Made.timed(slaps.get(13), TimedBy.PICTURE, Made.FRAME_S, null));
    Rhythm byPicture = Made.score(slaps).rhythm();
    assertEquals(TimedBy.PICTURE, byPicture.timedBy());
    assertEquals(0, byPicture.leftOut());
    assertTrue(byPicture.intervalCvPct() > 1);
  }

  @Test
  void theSoundOfAStretchedClipIsNotUsed() {
    List<Slap> slaps =
        Made.slaps(0, Made.same(20, 0.8)).stream()
            .map(slap -> Made.timed(slap, TimedBy.PICTURE, Made.FRAME_S, slap.timeS()))
            .toList();
    TrialScore score =
        Scores.trial(Made.trial(TimeScale.uniform(0.25)), Made.reading(slaps), 5, Made.LIMITS);
    assertEquals(TimedBy.PICTURE, score.rhythm().timedBy());
  }

  @Test
  void oneTypedSlapTakesTheRhythmAway() {
    List<Slap> slaps = new ArrayList<>(Made.slaps(0, Made.same(20, 0.2)));
    slaps.set(4, Made.timed(slaps.get(4), TimedBy.TYPED, 0.05, null));
    TrialScore score = Made.score(slaps);
    assertEquals(TimedBy.TYPED, score.rhythm().timedBy());
    assertNull(score.rhythm().steadyCvPct());
    assertNull(score.rhythm().intervalCvPct());
    assertNull(score.rhythm().resolved());
    assertEquals(5, score.speed().rateSlapsPerS(), 1e-9);
    assertEquals(LimitVerdict.CANNOT_TELL, score.verdicts().get(Quality.RHYTHM));
  }

  @Test
  void theFloorOfFrameMarksIsTheirSpacingOverRootSix() {
    Rhythm rhythm = Made.score(Made.slaps(0, Made.same(20, 0.2))).rhythm();
    assertEquals(100 * Made.FRAME_S / Math.sqrt(6) / 0.2, rhythm.timingFloorPct(), 1e-9);
  }

  @Test
  void theFloorOfSoundMarksIsTheirSpreadTimesRootTwo() {
    List<Slap> slaps =
        Made.slaps(0, Made.same(20, 0.2)).stream()
            .map(slap -> Made.timed(slap, TimedBy.SOUND, 0.002, slap.timeS()))
            .toList();
    assertEquals(
        100 * 0.002 * Math.sqrt(2) / 0.2, Made.score(slaps).rhythm().timingFloorPct(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(longs = {41, 42, 43})
  void markingByFrameScattersIntervalsByTheSpacingOverRootSix(long seed) {
    // Each contact is marked on the first frame at or after it; what is left is the marks' error.
    Random random = new Random(seed);
    double[] errors = new double[20000];
    double contactS = random.nextDouble();
    double markedS = Math.ceil(contactS / Made.FRAME_S) * Made.FRAME_S;
    for (int i = 0; i < errors.length; i++) {
      double nextS = contactS + 0.15 + 0.1 * random.nextDouble();
      double nextMarkedS = Math.ceil(nextS / Made.FRAME_S) * Made.FRAME_S;
      errors[i] = (nextMarkedS - markedS) - (nextS - contactS);
      contactS = nextS;
      markedS = nextMarkedS;
    }
    double expected = Made.FRAME_S / Math.sqrt(6);
    assertEquals(expected, Stats.sd(errors), 0.02 * expected);
  }

  @Test
  void aCvUnderTwiceItsFloorIsNotResolved() {
    double[] d = Made.same(24, 0.2);
    for (int i = 0; i < d.length; i++) {
      d[i] += (i / 2) % 2 == 0 ? 0.01 : -0.01;
    }
    Rhythm coarse = Made.score(Made.slaps(0, d)).rhythm();
    // About 5 % against a floor of 3.4 %.
    assertFalse(coarse.resolved());

    List<Slap> fine =
        Made.slaps(0, d).stream()
            .map(slap -> Made.timed(slap, TimedBy.SOUND, 0.001, slap.timeS()))
            .toList();
    assertTrue(Made.score(fine).rhythm().resolved());
  }

  /** The last column is how often ± 1.96·CV/√(2(n−1)) would: too seldom. */
  @ParameterizedTest
  @CsvSource({"25, 0.92", "18, 0.91", "12, 0.87"})
  void theIntervalOfTheSteadyCvCoversTheTruthNineteenTimesInTwenty(int count, double shortForm) {
    // Slaps at 5 a second that slow by 2 % a second, lean by 8 % and scatter by 6 %.
    Random random = new Random(77);
    int rounds = 4000;
    int covered = 0;
    int coveredByShortForm = 0;
    for (int k = 0; k < rounds; k++) {
      double[] d = new double[count];
      double startS = 0;
      for (int i = 0; i < d.length; i++) {
        double turn = i % 2 == 0 ? 1.04 : 0.96;
        d[i] = 0.19 * turn * (1 + 0.02 * startS) + 0.06 * 0.2 * random.nextGaussian();
        startS += d[i];
      }
      TrialScore score =
          Scores.trial(Made.trial(TimeScale.REAL), Made.reading(Made.slaps(0, d)), 60, Made.LIMITS);
      Double mean = Stats.mean(d);
      Double cv = score.rhythm().steadyCvPct();
      assertNotNull(mean);
      assertNotNull(cv);
      assertNotNull(score.rhythm().steadyCvRangePct());
      double truth = 100 * 0.06 * 0.2 / mean;
      covered += score.rhythm().steadyCvRangePct().contains(truth) ? 1 : 0;
      double half = 1.96 * cv / Math.sqrt(2.0 * (count - 1));
      coveredByShortForm += Math.abs(cv - truth) <= half ? 1 : 0;
    }
    // Four standard errors of a proportion of 0.95 over 4000 rounds are 0.014; of 0.87, 0.021.
    assertEquals(0.95, (double) covered / rounds, 0.014);
    assertEquals(shortForm, (double) coveredByShortForm / rounds, 0.021);
  }

  private static double squaresLeft(double[][] rows, double[] y) {
    int p = rows[0].length;
    double[][] a = new double[p][p + 1];
    for (int i = 0; i < y.length; i++) {
      for (int r = 0; r < p; r++) {
        for (int c = 0; c < p; c++) {
          a[r][c] += rows[i][r] * rows[i][c];
        }
        a[r][p] += rows[i][r] * y[i];
      }
    }
    for (int r = 0; r < p; r++) {
      for (int other = 0; other < p; other++) {
        double factor = other == r ? 0 : a[other][r] / a[r][r];
        for (int c = 0; c <= p; c++) {
          a[other][c] -= factor * a[r][c];
        }
      }
    }
    double squares = 0;
    for (int i = 0; i < y.length; i++) {
      double fit = 0;
      for (int r = 0; r < p; r++) {
        fit += rows[i][r] * a[r][p] / a[r][r];
      }
      squares += (y[i] - fit) * (y[i] - fit);
    }
    return squares;
  }
}
