package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Zone;

class TrialAlignmentTest {
  private static final double EPS = 1e-9;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void atTheSamePaceEverySlapMeetsTheOneOfItsNumber(long seed) {
    Random random = new Random(seed);
    TrialAlignment all =
        new TrialAlignment(made(random), made(random), 1, random.nextInt(3) - 1, true);
    for (int number = all.first(); number <= all.last(); number++) {
      double here = all.one().slaps().get(number - 1).timeS();
      double there = all.other().slaps().get(number - 1 + all.shift()).timeS();
      assertEquals(there, all.toOther(here), EPS);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void inRealTimeTheChosenSlapMeetsAndRealTimePassesAlike(long seed) {
    Random random = new Random(seed);
    TrialClock one = made(random);
    TrialClock other = made(random);
    int slap = 1 + random.nextInt(Math.min(one.slaps().size(), other.slaps().size()));
    TrialAlignment meeting = new TrialAlignment(one, other, slap, 0, false);
    double here = one.slaps().get(slap - 1).timeS();
    double there = other.slaps().get(slap - 1).timeS();
    assertEquals(there, meeting.toOther(here), EPS);
    for (int i = 0; i < 50; i++) {
      double at = random.nextDouble() * 8 - 1;
      assertEquals(
          one.scale().realBetween(here, at),
          other.scale().realBetween(there, meeting.toOther(at)),
          EPS);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void everyMomentRisesWithTheOtherAndComesBackToItself(long seed) {
    Random random = new Random(seed);
    for (boolean samePace : new boolean[] {false, true}) {
      TrialAlignment meeting =
          new TrialAlignment(made(random), made(random), 2, random.nextInt(3) - 1, samePace);
      double before = Double.NEGATIVE_INFINITY;
      for (double at = -1; at < 9; at += 0.01) {
        double there = meeting.toOther(at);
        assertTrue(there > before, "at " + at);
        assertEquals(at, meeting.inverse().toOther(there), EPS);
        before = there;
      }
    }
  }

  @Test
  void slowMotionMeetsRealTimeInRealSeconds() {
    TrialClock real = beats(TimeScale.REAL, 1.0, 1.2, 1.4);
    TrialClock slow = beats(TimeScale.uniform(0.125), 8.0, 9.6, 11.2);
    assertEquals(8.8, new TrialAlignment(real, slow, 1, 0, false).toOther(1.1), EPS);
    assertEquals(1.1, new TrialAlignment(slow, real, 1, 0, false).toOther(8.8), EPS);
  }

  @Test
  void halfAnIntervalMeetsHalfAnIntervalAtTheSamePace() {
    TrialClock quick = beats(TimeScale.REAL, 1.0, 1.2, 1.4);
    TrialClock slow = beats(TimeScale.REAL, 2.0, 2.5, 2.7);
    TrialAlignment meeting = new TrialAlignment(quick, slow, 1, 0, true);
    assertEquals(2.25, meeting.toOther(1.1), EPS);
    assertEquals(2.6, meeting.toOther(1.3), EPS);
    assertEquals(1.9, meeting.toOther(0.9), EPS);
    assertEquals(3.0, meeting.toOther(1.7), EPS);
  }

  @Test
  void withoutSlapsTheTwoMeetWhereTheirClocksBegin() {
    TrialClock none = new TrialClock(TimeScale.REAL, 0.5, List.of(), List.of(), List.of());
    TrialAlignment meeting = new TrialAlignment(beats(TimeScale.REAL, 1.0, 1.2), none, 1, 0, true);
    assertFalse(meeting.onSlap());
    assertEquals(0.5, meeting.toOther(1.0), EPS);
    assertEquals(0.7, meeting.toOther(1.2), EPS);
  }

  private static TrialClock made(Random random) {
    List<Double> times = new ArrayList<>();
    double at = random.nextDouble();
    for (int i = 0; i < 8 + random.nextInt(20); i++) {
      times.add(at);
      at += 0.1 + random.nextDouble() / 4;
    }
    TimeScale scale =
        new TimeScale(
            List.of(
                new TimeScale.Piece(0, 0.1 + random.nextDouble()),
                new TimeScale.Piece(1.5, 0.1 + random.nextDouble())),
            "");
    return beats(scale, times.stream().mapToDouble(Double::doubleValue).toArray());
  }

  static TrialClock beats(TimeScale scale, double... timesS) {
    List<Slap> slaps = new ArrayList<>();
    for (double timeS : timesS) {
      Side side = slaps.size() % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(Slap.onFrame(Slap.Kind.SLAP, timeS, 0.01, side, Zone.CENTRE));
    }
    return new TrialClock(scale, timesS[0], slaps, slaps, List.of());
  }
}
