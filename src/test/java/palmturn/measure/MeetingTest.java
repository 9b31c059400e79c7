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

class MeetingTest {
  private static final double EPS = 1e-9;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void atTheSamePaceEverySlapMeetsTheOneOfItsNumber(long seed) {
    Random random = new Random(seed);
    Meeting all = new Meeting(made(random), made(random), 1, random.nextInt(3) - 1, true);
    for (int number = all.first(); number <= all.last(); number++) {
      double here = all.one().slaps().get(number - 1).timeS();
      double there = all.other().slaps().get(number - 1 + all.shift()).timeS();
      assertEquals(there, all.there(here), EPS);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void inRealTimeTheChosenSlapMeetsAndRealTimePassesAlike(long seed) {
    Random random = new Random(seed);
    HandClock one = made(random);
    HandClock other = made(random);
    int slap = 1 + random.nextInt(Math.min(one.slaps().size(), other.slaps().size()));
    Meeting meeting = new Meeting(one, other, slap, 0, false);
    double here = one.slaps().get(slap - 1).timeS();
    double there = other.slaps().get(slap - 1).timeS();
    assertEquals(there, meeting.there(here), EPS);
    for (int i = 0; i < 50; i++) {
      double at = random.nextDouble() * 8 - 1;
      assertEquals(
          one.scale().realBetween(here, at),
          other.scale().realBetween(there, meeting.there(at)),
          EPS);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void everyMomentRisesWithTheOtherAndComesBackToItself(long seed) {
    Random random = new Random(seed);
    for (boolean samePace : new boolean[] {false, true}) {
      Meeting meeting = new Meeting(made(random), made(random), 2, random.nextInt(3) - 1, samePace);
      double before = Double.NEGATIVE_INFINITY;
      for (double at = -1; at < 9; at += 0.01) {
        double there = meeting.there(at);
        assertTrue(there > before, "at " + at);
        assertEquals(at, meeting.back().there(there), EPS);
        before = there;
      }
    }
  }

  @Test
  void slowMotionMeetsRealTimeInRealSeconds() {
    HandClock real = beats(TimeScale.REAL, 1.0, 1.2, 1.4);
    HandClock slow = beats(TimeScale.uniform(0.125), 8.0, 9.6, 11.2);
    assertEquals(8.8, new Meeting(real, slow, 1, 0, false).there(1.1), EPS);
    assertEquals(1.1, new Meeting(slow, real, 1, 0, false).there(8.8), EPS);
  }

  @Test
  void halfAnIntervalMeetsHalfAnIntervalAtTheSamePace() {
    HandClock quick = beats(TimeScale.REAL, 1.0, 1.2, 1.4);
    HandClock slow = beats(TimeScale.REAL, 2.0, 2.5, 2.7);
    Meeting meeting = new Meeting(quick, slow, 1, 0, true);
    assertEquals(2.25, meeting.there(1.1), EPS);
    assertEquals(2.6, meeting.there(1.3), EPS);
    assertEquals(1.9, meeting.there(0.9), EPS);
    assertEquals(3.0, meeting.there(1.7), EPS);
  }

  @Test
  void withoutSlapsTheTwoMeetWhereTheirClocksBegin() {
    HandClock none = new HandClock(TimeScale.REAL, 0.5, List.of(), List.of(), List.of());
    Meeting meeting = new Meeting(beats(TimeScale.REAL, 1.0, 1.2), none, 1, 0, true);
    assertFalse(meeting.onSlap());
    assertEquals(0.5, meeting.there(1.0), EPS);
    assertEquals(0.7, meeting.there(1.2), EPS);
  }

  private static HandClock made(Random random) {
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

  static HandClock beats(TimeScale scale, double... timesS) {
    List<Slap> slaps = new ArrayList<>();
    for (double timeS : timesS) {
      Side side = slaps.size() % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(Slap.onFrame(Slap.Kind.SLAP, timeS, 0.01, side, Zone.CENTRE));
    }
    return new HandClock(scale, timesS[0], slaps, slaps, List.of());
  }
}
