package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.measure.SideScore.SideVerdict;
import palmturn.numbers.Confidence;
import palmturn.numbers.Quantiles;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

class SessionScoreTest {
  private final List<Trial> trials = new ArrayList<>();

  @Test
  void handsHaveMeanSpreadBestAndTypicalError() {
    rates(Hand.RIGHT, "baseline", 4.8, 5.0, 5.2);
    rates(Hand.RIGHT, "after-1", 5.5, 5.7);
    SessionScore score = score();

    HandScore hand = hand(score, Hand.RIGHT, "baseline", Quality.SPEED);
    assertEquals(3, hand.n());
    assertEquals(5.0, hand.mean(), 1e-9);
    assertEquals(0.2, hand.sd(), 1e-9);
    assertEquals(5.2, hand.best(), 1e-9);
    // Within blocks: (2 × 0.04 + 1 × 0.02)/3.
    assertEquals(Math.sqrt(0.1 / 3), hand.typicalError(), 1e-9);
    assertNotNull(hand.mean95());
    // t(0.975, 2) = 4.3027, printed tables of Student's t.
    assertEquals(4.3027 * 0.2 / Math.sqrt(3), hand.mean95().high() - 5.0, 1e-4);
    assertTrue(score.sides().isEmpty());
  }

  @Test
  void theBestOfAMeasureThatShouldBeLowIsTheLowest() {
    rates(Hand.LEFT, "baseline", 4, 5, 6);
    HandScore hand = hand(score(), Hand.LEFT, "baseline", Quality.RHYTHM);
    assertEquals(0, hand.best(), 1e-9);
    assertNull(
        score().hands().stream()
            .filter(each -> each.quality() == Quality.DRIFT)
            .findFirst()
            .orElse(null));
  }

  @Test
  void aSlowerHandIsTheWeakerOne() {
    rates(Hand.RIGHT, "baseline", 5.4, 5.5, 5.6);
    rates(Hand.LEFT, "baseline", 4.4, 4.5, 4.6);
    SideScore speed = side(score(), Quality.SPEED);
    assertEquals(SideVerdict.WEAKER_LEFT, speed.verdict());
    assertEquals(1.0, speed.difference(), 1e-9);
    assertEquals(20.0, speed.differencePct(), 1e-9);
    assertEquals(0, speed.furtherTrials());
    assertEquals(
        Confidence.welch(new double[] {5.4, 5.5, 5.6}, new double[] {4.4, 4.5, 4.6}).low(),
        speed.difference95().low(),
        1e-9);
  }

  @Test
  void handsWithinTheMarginAreBalancedEvenWhereTheyDiffer() {
    rates(Hand.RIGHT, "baseline", 5.19, 5.20, 5.21);
    rates(Hand.LEFT, "baseline", 4.99, 5.00, 5.01);
    assertEquals(SideVerdict.BALANCED, side(score(), Quality.SPEED).verdict());
  }

  @Test
  void scatteredTrialsAreUnclearAndSayHowManyMoreItTakes() {
    rates(Hand.RIGHT, "baseline", 5.3, 5.6, 5.9);
    rates(Hand.LEFT, "baseline", 4.9, 5.2, 5.5);
    SideScore speed = side(score(), Quality.SPEED);
    assertEquals(SideVerdict.UNCLEAR, speed.verdict());
    // s = 0.3, difference 0.4, margin 0.54: 6 trials a hand give 0.386, 5 give 0.438.
    assertEquals(2.228139 * 0.3 * Math.sqrt(2.0 / 6), half(6, 0.3), 1e-5);
    assertTrue(half(5, 0.3) > 0.4 && half(6, 0.3) < 0.4);
    assertEquals(3, speed.furtherTrials());
  }

  @Test
  void moreThanTwentyFurtherTrialsIsNoPlan() {
    rates(Hand.RIGHT, "baseline", 4.0, 5.3, 6.6);
    rates(Hand.LEFT, "baseline", 3.75, 5.05, 6.35);
    SideScore speed = side(score(), Quality.SPEED);
    assertEquals(SideVerdict.UNCLEAR, speed.verdict());
    assertNull(speed.furtherTrials());
  }

  @Test
  void oneTrialOnASideCannotTell() {
    rates(Hand.RIGHT, "baseline", 5.0, 5.1, 5.2);
    rates(Hand.LEFT, "baseline", 4.0);
    SideScore speed = side(score(), Quality.SPEED);
    assertEquals(SideVerdict.CANNOT_TELL, speed.verdict());
    assertNull(speed.difference());
    assertNull(speed.furtherTrials());
    assertEquals(4.0, speed.left(), 1e-9);
  }

  @Test
  void sharesTakeTheWiderOfTheTwoIntervals() {
    // The same share in every trial: Welch alone would be sure to the last digit.
    for (int repeat = 1; repeat <= 3; repeat++) {
      add(Hand.RIGHT, "baseline", repeat, null, withFaults(even(5.0), 2));
      add(Hand.LEFT, "baseline", repeat, null, withFaults(even(5.0), 4));
    }
    SideScore accuracy = side(score(), Quality.ACCURACY);
    // 26 slaps a trial.
    assertEquals(100 * 2 / 26.0, accuracy.difference(), 1e-9);
    assertNotNull(accuracy.difference95());
    assertEquals(
        100 * Confidence.newcombe(72, 78, 66, 78).low(), accuracy.difference95().low(), 1e-9);
    assertEquals(SideVerdict.UNCLEAR, accuracy.verdict());
  }

  @Test
  void lessIsBetterForRhythm() {
    for (int repeat = 1; repeat <= 3; repeat++) {
      add(Hand.RIGHT, "baseline", repeat, null, scattered(0.12 + 0.001 * repeat, TimedBy.PICTURE));
      add(Hand.LEFT, "baseline", repeat, null, scattered(0.02 + 0.001 * repeat, TimedBy.PICTURE));
    }
    assertEquals(SideVerdict.WEAKER_RIGHT, side(score(), Quality.RHYTHM).verdict());
  }

  @Test
  void rhythmTimedByOtherMeansIsNotCompared() {
    for (int repeat = 1; repeat <= 3; repeat++) {
      add(Hand.RIGHT, "baseline", repeat, null, scattered(0.12 + 0.001 * repeat, TimedBy.SOUND));
      add(Hand.LEFT, "baseline", repeat, null, scattered(0.02 + 0.001 * repeat, TimedBy.PICTURE));
    }
    SessionScore score = score();
    assertEquals(SideVerdict.CANNOT_TELL, side(score, Quality.RHYTHM).verdict());
    assertEquals(SideVerdict.BALANCED, side(score, Quality.SPEED).verdict());
  }

  @Test
  void everyRowNamesTheReadingsItRestsOnOnce() {
    rates(Hand.RIGHT, "baseline", 5.0, 5.1);
    rates(Hand.LEFT, "baseline", 5.0, 5.1);
    rates(Hand.LEFT, "after-1", 5.0);
    trials.add(
        Made.trial(Hand.LEFT, "baseline", 3, TimeScale.REAL, null)
            .withReading(
                new Reading(
                    "B",
                    true,
                    Made.reading(List.of()).startedFrom(),
                    even(4),
                    List.of(),
                    Made.reading(List.of()).extra())));
    SessionScore score = score();
    assertEquals(List.of("QM", "B"), hand(score, Hand.LEFT, "baseline", Quality.SPEED).readings());
    assertEquals(List.of("QM"), hand(score, Hand.RIGHT, "baseline", Quality.SPEED).readings());
    assertEquals(List.of("QM", "B"), side(score, Quality.SPEED).readings());
    assertEquals(List.of("QM", "B"), score.retest().get(0).readings());
  }

  @Test
  void aPacedTrialIsScoredButUsedForNothingElse() {
    rates(Hand.RIGHT, "baseline", 5.0, 5.1);
    add(Hand.RIGHT, "baseline", 9, 3.0, even(3.0));
    SessionScore score = score();
    assertEquals(3, score.trials().size());
    assertEquals(2, hand(score, Hand.RIGHT, "baseline", Quality.SPEED).n());
  }

  @Test
  void aTrialWithoutAReadingHasNoScore() {
    trials.add(Made.trial(TimeScale.REAL));
    assertTrue(score().trials().isEmpty());
  }

  @Test
  void theFinishedReadingIsChosenBeforeAnOpenOne() {
    Reading open =
        new Reading(
            "A",
            false,
            Made.reading(List.of()).startedFrom(),
            even(4),
            List.of(),
            Made.reading(List.of()).extra());
    Trial trial = Made.trial(TimeScale.REAL).withReading(open).withReading(Made.reading(even(5)));
    assertEquals("QM", ReadingChoice.FIRST.of(trial).reader());
    assertEquals("A", ReadingChoice.named("A").of(trial).reader());
    assertNull(ReadingChoice.named("B").of(trial));
  }

  private SessionScore score() {
    Session session = Session.begin("H-07", LocalDate.of(2026, 3, 14));
    return Scores.session(session, trials, ReadingChoice.FIRST, Made.LIMITS);
  }

  private void rates(Hand hand, String block, double... rates) {
    for (int i = 0; i < rates.length; i++) {
      add(hand, block, i + 1, null, even(rates[i]));
    }
  }

  private void add(
      Hand hand, String block, int repeat, @Nullable Double paceSlapsPerS, List<Slap> slaps) {
    trials.add(
        Made.trial(hand, block, repeat, TimeScale.REAL, paceSlapsPerS)
            .withReading(Made.reading(slaps)));
  }

  private static List<Slap> even(double rate) {
    return Made.slaps(1, Made.same((int) (5 * rate + 1e-9), 1 / rate));
  }

  private static List<Slap> withFaults(List<Slap> slaps, int count) {
    List<Slap> marked = new ArrayList<>(slaps);
    for (int i = 0; i < count; i++) {
      marked.set(i, marked.get(i).withZone(Zone.EDGE));
    }
    return marked;
  }

  private static List<Slap> scattered(double scatter, TimedBy timedBy) {
    double[] d = Made.same(24, 0.2);
    for (int i = 0; i < d.length; i++) {
      d[i] += (i / 2) % 2 == 0 ? scatter * 0.2 : -scatter * 0.2;
    }
    return Made.slaps(0, d).stream()
        .map(slap -> Made.timed(slap, timedBy, 0.002, slap.timeS()))
        .map(
            slap ->
                timedBy == TimedBy.SOUND ? slap : Made.timed(slap, TimedBy.PICTURE, 0.002, null))
        .toList();
  }

  private static double half(int n, double sd) {
    return Quantiles.t(0.975, 2.0 * n - 2) * sd * Math.sqrt(2.0 / n);
  }

  private static HandScore hand(SessionScore score, Hand hand, String block, Quality quality) {
    return score.hands().stream()
        .filter(
            each -> each.hand() == hand && each.block().equals(block) && each.quality() == quality)
        .findFirst()
        .orElseThrow();
  }

  private static SideScore side(SessionScore score, Quality quality) {
    return score.sides().stream()
        .filter(each -> each.quality() == quality)
        .findFirst()
        .orElseThrow();
  }
}
