package palmturn.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.advise.MadeEvidence.Figures.GOOD;
import static palmturn.advise.MadeEvidence.good;

import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.json.DrillsJson;
import palmturn.measure.Quality;
import palmturn.measure.SideScore.SideVerdict;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;

class PlanTest {
  private static final String BASE = "baseline";
  private static final DrillLibrary LIBRARY = DrillsJson.standard();

  @Test
  void aHandIsMadeCleanBeforeItIsMadeFast() {
    Plan plan =
        plan(
            good()
                .hand(Hand.LEFT, BASE, GOOD.clean(70.0).rate(4.4))
                .side(BASE, Quality.SPEED, SideVerdict.WEAKER_LEFT));
    assertEquals(List.of("paced-flips", "pace-steps", "shuttle-keep-ups"), codes(plan));
    assertEquals("left hand, accuracy", plan.weeks().get(0).aim());
    assertEquals(DrillHand.LEFT, plan.weeks().get(0).hand());
    assertTrue(plan.weeks().get(0).control().startsWith("The right hand rests"));
  }

  @Test
  void oneAimTakesTwoDrills() {
    assertEquals(
        List.of("paced-flips", "racket-eights", "shuttle-keep-ups"),
        codes(plan(good().hand(Hand.LEFT, BASE, GOOD.clean(70.0)))));
  }

  @Test
  void whatADrillServesTooIsNotPlannedAgain() {
    Plan plan =
        plan(
            good()
                .side(BASE, Quality.SPEED, SideVerdict.WEAKER_LEFT)
                .side(BASE, Quality.RHYTHM, SideVerdict.WEAKER_LEFT)
                .side(BASE, Quality.ENDURANCE, SideVerdict.WEAKER_LEFT));
    assertEquals("left hand, rhythm and speed", plan.weeks().get(0).aim());
    assertEquals(List.of("pace-steps", "long-paced-sets", "shuttle-keep-ups"), codes(plan));
    assertFalse(plan.note().contains("later"), plan.note());
  }

  @Test
  void whatFindsNoWeekIsLeftForLater() {
    Plan plan =
        plan(
            good()
                .hand(Hand.LEFT, BASE, GOOD.clean(70.0).slowDown(5.0))
                .hand(Hand.RIGHT, BASE, GOOD.slowDown(5.0)));
    assertEquals(List.of("paced-flips", "long-paced-sets", "shuttle-keep-ups"), codes(plan));
    assertTrue(plan.note().contains("Left for later: right hand, endurance;"), plan.note());
  }

  @Test
  void withoutFiguresThereIsNoPlan() {
    Plan plan =
        plan(
            good()
                .trials(Hand.LEFT, BASE)
                .hand(Hand.RIGHT, BASE, GOOD.refused("slow motion").clean(null)));
    assertTrue(plan.weeks().isEmpty());
    assertTrue(plan.note().startsWith("First film again"));
  }

  @Test
  void theRacketIsForAHandWithNothingToTrain() {
    assertEquals(List.of("shuttle-keep-ups", "slow-strokes"), codes(plan(good())));
  }

  @Test
  void theClickStartsBelowTheCleanCeiling() {
    LibraryDrill flips = LIBRARY.drill("paced-flips").orElseThrow();
    Evidence known = good().ceiling(Hand.LEFT, 4.5).ceiling(Hand.RIGHT, 5.0).made();
    assertEquals(3.6, pace(known, flips, DrillHand.LEFT), 1e-9);
    assertEquals(3.6, pace(known, flips, DrillHand.BOTH), 1e-9);
    assertEquals(4.0, pace(known, flips, DrillHand.RIGHT), 1e-9);
    // Rounded down, never up: 0.8 × 4.55 is 3.64, 0.8 × 4.6 is 3.68.
    assertEquals(3.6, pace(good().ceiling(Hand.LEFT, 4.6).made(), flips, DrillHand.LEFT), 1e-9);
  }

  @Test
  void withoutACeilingTheOwnRateStandsForItAndLessOfItWhereItIsNotClean() {
    LibraryDrill flips = LIBRARY.drill("paced-flips").orElseThrow();
    Evidence made = good().hand(Hand.LEFT, BASE, GOOD.clean(70.0)).made();
    assertEquals(4.0, pace(made, flips, DrillHand.RIGHT), 1e-9);
    assertEquals(3.0, pace(made, flips, DrillHand.LEFT), 1e-9);
    assertNull(StartingPace.of(made, LIBRARY.drill("racket-eights").orElseThrow(), DrillHand.LEFT));
    assertNull(StartingPace.of(good().trials(Hand.LEFT, BASE).made(), flips, DrillHand.BOTH));
  }

  private static double pace(Evidence evidence, LibraryDrill drill, DrillHand hand) {
    StartingPace pace = StartingPace.of(evidence, drill, hand);
    assertNotNull(pace);
    return pace.slapsPerS();
  }

  private static List<String> codes(Plan plan) {
    return plan.weeks().stream().map(week -> week.drill().code()).toList();
  }

  private static Plan plan(MadeEvidence evidence) {
    return Training.of(evidence.made(), LIBRARY).plan();
  }
}
