package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.measure.CeilingScore.CeilingOutcome;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

class CeilingTest {
  private final List<Trial> trials = new ArrayList<>();

  @Test
  void itLiesWhereFaultsBegin() {
    ladder(Hand.RIGHT, 4.0);
    CeilingScore ceiling = right();
    assertEquals(CeilingOutcome.FOUND, ceiling.outcome());
    assertTrue(Math.abs(ceiling.cleanCeilingSlapsPerS() - 4.0) < 0.5, ceiling::toString);
    assertTrue(ceiling.highSlapsPerS() > ceiling.cleanCeilingSlapsPerS(), ceiling::toString);
    assertEquals(6, ceiling.trials());
    assertEquals(3, ceiling.paced());
    assertEquals(ceiling, right(), "the same marks and seed");
  }

  @Test
  void itIsNeverOutsideTheRatesFilmed() {
    ladder(Hand.RIGHT, 99);
    CeilingScore clean = right();
    assertEquals(CeilingOutcome.NOT_REACHED, clean.outcome());
    assertNull(clean.cleanCeilingSlapsPerS());
    assertEquals(0, clean.faulty());
    trials.clear();
    ladder(Hand.RIGHT, 0);
    assertEquals(CeilingOutcome.UNDER_FILMED, right().outcome());
  }

  @Test
  void aFewFaultsAtOnePaceTellNothing() {
    for (int repeat = 1; repeat <= 3; repeat++) {
      add(Hand.RIGHT, "baseline", repeat, null, faulty(5, repeat, 9, 17));
    }
    assertEquals(CeilingOutcome.CANNOT_TELL, right().outcome());
  }

  @Test
  void twoTrialsAreTooFew() {
    add(Hand.RIGHT, "baseline", 1, null, faulty(3));
    add(Hand.RIGHT, "baseline", 2, null, faulty(5));
    CeilingScore ceiling = right();
    assertEquals(CeilingOutcome.CANNOT_TELL, ceiling.outcome());
    assertEquals(2, ceiling.trials());
  }

  @Test
  void thePaceLadderChangesNothingElse() {
    for (Hand hand : Hand.values()) {
      for (int repeat = 1; repeat <= 3; repeat++) {
        add(hand, "baseline", repeat, null, faulty(4.8 + 0.1 * repeat, 3));
        add(hand, "after-1", repeat, null, faulty(5 + 0.1 * repeat, 5));
      }
    }
    SessionScore without = score();
    ladder(Hand.RIGHT, 4.0);
    trials.removeIf(trial -> trial.id().repeat() > 3 && trial.paceSlapsPerS() == null);
    SessionScore with = score();
    assertEquals(without.hands(), with.hands());
    assertEquals(without.sides(), with.sides());
    assertEquals(without.retest(), with.retest());
    assertEquals(PaceLadder.of(without), PaceLadder.of(with));
    assertNotEquals(without.ceilings().get(0), with.ceilings().get(0));
    assertEquals(without.trials().size() + 3, with.trials().size());
  }

  @Test
  void theLadderIsOfOwnBest() {
    add(Hand.LEFT, "baseline", 1, null, faulty(4));
    add(Hand.LEFT, "baseline", 2, null, faulty(5.2));
    add(Hand.LEFT, "baseline", 3, 6.0, faulty(6));
    PaceLadder ladder = PaceLadder.of(score()).get(0);
    assertEquals(5.2, ladder.bestSlapsPerS(), 1e-9);
    assertEquals(List.of(3.1, 3.9, 4.7), ladder.pacesSlapsPerS());
  }

  @Test
  void anAttemptHasThePaceOfTheTurnsAroundIt() {
    // Intervals 0.2, 0.3, 0.2 s, a pause of 1 s, 0.2, 0.2 s; a double after the second slap.
    List<Slap> slaps = new ArrayList<>(Made.slaps(1, 0.2, 0.3, 0.2, 1, 0.2, 0.2));
    slaps.add(Made.mark(Slap.Kind.DOUBLE, 1.28, Side.BACK, Zone.CENTRE));
    List<TimedAttempt> attempts = Made.score(slaps).attempts();
    // 2/0.5 for the second slap and its double, 2/0.5, then only the last slap but one: 2/0.4.
    assertEquals(4, attempts.size());
    assertEquals(4, attempts.get(0).slapsPerS(), 1e-9);
    assertEquals(new TimedAttempt(attempts.get(0).slapsPerS(), true), attempts.get(1));
    assertEquals(4, attempts.get(2).slapsPerS(), 1e-9);
    assertEquals(5, attempts.get(3).slapsPerS(), 1e-9);
  }

  @Test
  void aMissedTurnIsATurnWithAPace() {
    List<Slap> slaps = new ArrayList<>(Made.slaps(1, 0.2, 0.4, 0.2));
    slaps.add(Made.mark(Slap.Kind.MISSED, 1.4, Side.BACK, Zone.UNKNOWN));
    List<TimedAttempt> attempts = Made.score(slaps).attempts();
    assertEquals(3, attempts.size());
    assertTrue(attempts.stream().allMatch(each -> Math.abs(each.slapsPerS() - 5) < 1e-9));
    assertTrue(attempts.get(1).faulty());
  }

  @Test
  void unknownZonesAndTypedMarksHaveNoPace() {
    List<Slap> slaps = Made.slaps(1, Made.same(20, 0.2));
    List<Slap> unknown = new ArrayList<>(slaps);
    unknown.set(3, unknown.get(3).withZone(Zone.UNKNOWN));
    assertTrue(Made.score(unknown).attempts().isEmpty());
    List<Slap> typed =
        slaps.stream().map(slap -> Made.timed(slap, TimedBy.TYPED, 0.06, null)).toList();
    assertTrue(Made.score(typed).attempts().isEmpty());
  }

  /** Three free trials about 5.2 and three to a click, every third slap over a pace faulty. */
  private void ladder(Hand hand, double from) {
    double[] rates = {5.1, 5.2, 5.3, 3.1, 3.9, 4.7};
    for (int i = 0; i < rates.length; i++) {
      int[] faults = new int[9];
      for (int k = 0; k < faults.length; k++) {
        faults[k] = rates[i] > from ? 3 * k : rates[i] + 0.3 > from ? 12 : -1;
      }
      add(hand, "baseline", 4 + i, i < 3 ? null : rates[i], faulty(rates[i], faults));
    }
  }

  private static List<Slap> faulty(double rate, int... faults) {
    List<Slap> slaps = new ArrayList<>();
    double[] d = Made.same((int) (5 * rate + 1e-9), 1 / rate);
    for (int i = 0; i < d.length; i++) {
      d[i] *= i % 2 == 0 ? 1.03 : 0.97;
    }
    slaps.addAll(Made.slaps(1, d));
    for (int at : faults) {
      if (at >= 0 && at < slaps.size()) {
        slaps.set(at, slaps.get(at).withZone(Zone.EDGE));
      }
    }
    return slaps;
  }

  private void add(Hand hand, String block, int repeat, @Nullable Double pace, List<Slap> slaps) {
    trials.add(
        Made.trial(hand, block, repeat, TimeScale.REAL, pace).withReading(Made.reading(slaps)));
  }

  private CeilingScore right() {
    return score().ceilings().get(0);
  }

  private SessionScore score() {
    Drill drill = new Drill("paced-flips", DrillHand.RIGHT, "", null, null, Extra.NONE);
    Session session =
        Session.begin("H-07", LocalDate.of(2026, 3, 14))
            .withBlocks(
                List.of(
                    new Block(Block.BASELINE, null, Extra.NONE),
                    new Block("after-1", drill, Extra.NONE)));
    return Scores.session(session, trials, ReadingChoice.FIRST, Made.LIMITS)
        .withCeilings(new Random(7));
  }
}
