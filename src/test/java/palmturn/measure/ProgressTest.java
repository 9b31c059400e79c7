package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.measure.ProgressScore.Course;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;

class ProgressTest {
  private static final LocalDate SPRING = LocalDate.of(2026, 3, 14);
  private static final LocalDate SUMMER = LocalDate.of(2026, 6, 20);

  @Test
  void theNoiseIsTheTypicalErrorOfAllHistory() {
    Course speed =
        progress(
                session("H-07", SUMMER, "baseline", 5.3, 5.5, 5.7),
                session("H-07", SPRING, "baseline", 4.8, 5.0, 5.2))
            .course(Hand.RIGHT, Quality.SPEED)
            .orElseThrow();
    // Both blocks have SD 0.2, 4 degrees of freedom together: t(0.975, 4) = 2.776445, printed
    // tables of Student's t; 2.776445 × 0.2 × √(2/3) = 0.453391.
    assertEquals(0.2, speed.typicalError(), 1e-9);
    assertEquals(5.0, speed.points().get(0).mean(), 1e-9, "in order of time");
    assertNull(speed.points().get(0).noiseLow());
    assertEquals(5.0 - 0.453391, speed.points().get(1).noiseLow(), 1e-6);
    assertEquals(0.5, speed.change(), 1e-9);
    assertEquals(0.5 - 0.453391, speed.changeLow(), 1e-6);
    assertEquals(RetestScore.ChangeVerdict.BETTER, speed.verdict());
  }

  @Test
  void theBestRateIsThatOfASingleTrialOfAnySession() {
    ProgressScore score =
        progress(
            session("H-07", SPRING, "baseline", 4.8, 5.9, 5.2),
            session("H-07", SUMMER, "baseline", 5.3, 5.5, 5.7));
    assertEquals(Map.of(Hand.RIGHT, 5.9), rounded(score.bestRates()));
  }

  private static Map<Hand, Double> rounded(Map<Hand, Double> rates) {
    return rates.entrySet().stream()
        .collect(
            Collectors.toMap(Map.Entry::getKey, each -> Math.rint(1e6 * each.getValue()) / 1e6));
  }

  @Test
  void firstBlocksAreComparedAndDrillsStandBetween() {
    ProgressScore score =
        progress(
            session("H-07", SPRING, "baseline", 4.8, 5.0, 5.2),
            join(
                session("H-07", SUMMER, "baseline", 4.9, 5.0, 5.1),
                session("H-07", SUMMER, "after-1", 5.9, 6.0, 6.1)));
    Course speed = score.course(Hand.RIGHT, Quality.SPEED).orElseThrow();
    assertEquals(3, speed.points().size());
    assertEquals(0, speed.change(), 1e-9, "before the drill of either day");
    assertEquals("paced-flips", score.steps().get(2).drill().code());
    assertNull(score.steps().get(1).drill());
    assertEquals(2, score.sessions());
  }

  @Test
  void oneSessionHasACourseButNoChange() {
    Course speed =
        progress(session("H-07", SPRING, "baseline", 4.8, 5.0))
            .course(Hand.RIGHT, Quality.SPEED)
            .orElseThrow();
    assertEquals(1, speed.points().size());
    assertNull(speed.change());
    assertEquals(RetestScore.ChangeVerdict.CANNOT_TELL, speed.verdict());
  }

  @Test
  void singleTrialsHaveNoNoiseToTellAChangeBy() {
    Course speed =
        progress(session("H-07", SPRING, "baseline", 4.8), session("H-07", SUMMER, "baseline", 6.0))
            .course(Hand.RIGHT, Quality.SPEED)
            .orElseThrow();
    assertNull(speed.typicalError());
    assertNull(speed.points().get(1).noiseLow());
    assertEquals(RetestScore.ChangeVerdict.CANNOT_TELL, speed.verdict());
  }

  @Test
  void trialsToAClickTrackAreLeftOut() {
    OneSession spring = session("H-07", SPRING, "baseline", 4.8, 5.0);
    OneSession paced = session("H-07", SPRING, "baseline", 3.0, 3.0);
    List<Trial> trials = new ArrayList<>(spring.trials());
    trials.add(trial("baseline", 3, 3.0, 3.0));
    assertEquals(
        progress(spring), progress(new OneSession(paced.session(), trials)), "as without them");
  }

  @Test
  void athletesAreNotMixed() {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            progress(
                session("H-07", SPRING, "baseline", 4.8),
                session("H-08", SPRING, "baseline", 4.8)));
  }

  private record OneSession(Session session, List<Trial> trials) {}

  private static ProgressScore progress(OneSession... sessions) {
    List<Courses.Scored> scored = new ArrayList<>();
    for (OneSession each : sessions) {
      scored.add(
          new Courses.Scored(
              each.session(),
              Scores.session(each.session(), each.trials(), ReadingChoice.FIRST, Made.LIMITS)));
    }
    return Courses.of(scored, Made.LIMITS.margins());
  }

  private static OneSession session(String athlete, LocalDate date, String block, double... rates) {
    Drill drill = new Drill("paced-flips", DrillHand.RIGHT, "", null, null, Extra.NONE);
    Session session =
        Session.begin(athlete, date)
            .withBlocks(
                List.of(
                    new Block(Block.BASELINE, null, Extra.NONE),
                    new Block("after-1", drill, Extra.NONE)));
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < rates.length; i++) {
      trials.add(trial(block, i + 1, rates[i], null));
    }
    return new OneSession(session, trials);
  }

  private static OneSession join(OneSession a, OneSession b) {
    List<Trial> trials = new ArrayList<>(a.trials());
    trials.addAll(b.trials());
    assertTrue(a.session().date().equals(b.session().date()));
    return new OneSession(a.session(), trials);
  }

  private static Trial trial(String block, int repeat, double rate, @Nullable Double pace) {
    return Made.trial(Hand.RIGHT, block, repeat, TimeScale.REAL, pace)
        .withReading(Made.reading(Made.slaps(1, Made.same((int) (5 * rate + 1e-9), 1 / rate))));
  }
}
