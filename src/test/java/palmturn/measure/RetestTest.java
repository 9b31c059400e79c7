package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import palmturn.measure.RetestScore.ChangeVerdict;
import palmturn.measure.RetestScore.Control;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

class RetestTest {
  private final List<Trial> trials = new ArrayList<>();
  private final List<Block> blocks =
      new ArrayList<>(List.of(new Block(Block.BASELINE, null, Extra.NONE)));

  @Test
  void theDrillIsHeldAgainstTheOtherHand() {
    drill("after-1", "paced-flips", DrillHand.RIGHT, "");
    rates(Hand.RIGHT, "baseline", 4.8, 5.0, 5.2);
    rates(Hand.RIGHT, "after-1", 5.8, 6.0, 6.2);
    rates(Hand.LEFT, "baseline", 4.6, 4.8, 5.0);
    rates(Hand.LEFT, "after-1", 4.8, 5.0, 5.2);
    RetestScore right = speed(Hand.RIGHT, "after-1");
    assertEquals(1.0, right.difference(), 1e-9);
    assertEquals(ChangeVerdict.BETTER, right.verdict());
    assertEquals(Control.OTHER_HAND, right.control());
    // (6.0 − 5.0) − (5.0 − 4.8) = 0.8; SE² = 4 × 0.04/3; four equal variances with 2 degrees of
    // freedom each make 8; t(0.975, 8) = 2.306004, printed tables of Student's t.
    assertEquals(0.8, right.netDifference(), 1e-9);
    assertEquals(0.8 - 2.306004 * Math.sqrt(0.16 / 3), right.net95().low(), 1e-6);
    assertEquals(ChangeVerdict.BETTER, right.netVerdict());
    RetestScore left = speed(Hand.LEFT, "after-1");
    assertEquals(Control.NONE, left.control());
    assertNull(left.netDifference());
    assertEquals(ChangeVerdict.CANNOT_TELL, left.netVerdict());
  }

  @Test
  void whatBothHandsGainIsNotTheDrills() {
    drill("after-1", "paced-flips", DrillHand.LEFT, "");
    rates(Hand.RIGHT, "baseline", 4.98, 5.0, 5.02);
    rates(Hand.RIGHT, "after-1", 5.98, 6.0, 6.02);
    rates(Hand.LEFT, "baseline", 4.48, 4.5, 4.52);
    rates(Hand.LEFT, "after-1", 5.48, 5.5, 5.52);
    RetestScore left = speed(Hand.LEFT, "after-1");
    assertEquals(ChangeVerdict.BETTER, left.verdict());
    assertEquals(0, left.netDifference(), 1e-9);
    assertEquals(ChangeVerdict.NO_CHANGE, left.netVerdict());
  }

  @Test
  void swappedHandsSwapTheirVerdicts() {
    double[][] rates = {{4.8, 5.0, 5.2}, {5.8, 6.0, 6.3}, {4.6, 4.9, 5.0}, {4.2, 4.3, 4.5}};
    drill("after-1", "paced-flips", DrillHand.RIGHT, "");
    four(Hand.RIGHT, rates);
    RetestScore right = speed(Hand.RIGHT, "after-1");
    RetestScore left = speed(Hand.LEFT, "after-1");
    trials.clear();
    blocks.remove(1);
    drill("after-1", "paced-flips", DrillHand.LEFT, "");
    four(Hand.LEFT, rates);
    assertEquals(right.net95(), speed(Hand.LEFT, "after-1").net95());
    assertEquals(right.netVerdict(), speed(Hand.LEFT, "after-1").netVerdict());
    assertEquals(left.verdict(), speed(Hand.RIGHT, "after-1").verdict());
  }

  @Test
  void aDrillOfBothHandsIsHeldAgainstARestOfTheSameLength() {
    drill("after-1", Drill.REST, DrillHand.NONE, "3 min");
    drill("after-2", "gaze-circles", DrillHand.NONE, "3 min");
    rates(Hand.RIGHT, "baseline", 4.8, 5.0, 5.2);
    rates(Hand.RIGHT, "after-1", 4.9, 5.1, 5.3);
    rates(Hand.RIGHT, "after-2", 5.9, 6.1, 6.3);
    RetestScore drilled = speed(Hand.RIGHT, "after-2");
    assertEquals(Control.REST, drilled.control());
    // (6.1 − 5.1) − (5.1 − 5.0) = 6.1 − 2 × 5.1 + 5.0 = 0.9: the middle block counts twice, its
    // variance four times. Parts v, 4v, v with v = 0.04/3: SE² = 6v, freedom 36/(18/2) = 4;
    // t(0.975, 4) = 2.776445, printed tables of Student's t.
    assertEquals(0.9, drilled.netDifference(), 1e-9);
    assertEquals(0.9 - 2.776445 * Math.sqrt(0.08), drilled.net95().low(), 1e-6);
    assertEquals(Control.NONE, speed(Hand.RIGHT, "after-1").control());
  }

  @Test
  void anotherLengthOfRestIsNoControl() {
    drill("after-1", Drill.REST, DrillHand.NONE, "1 min");
    drill("after-2", "gaze-circles", DrillHand.BOTH, "3 min");
    rates(Hand.RIGHT, "baseline", 4.8, 5.0);
    rates(Hand.RIGHT, "after-1", 4.9, 5.1);
    rates(Hand.RIGHT, "after-2", 5.9, 6.1);
    assertEquals(Control.NONE, speed(Hand.RIGHT, "after-2").control());
  }

  @Test
  void aBlockThatWasNotFilmedIsNotSkipped() {
    drill("after-1", "paced-flips", DrillHand.RIGHT, "");
    rates(Hand.RIGHT, "baseline", 4.8, 5.0);
    rates(Hand.RIGHT, "after-2", 5.9, 6.1);
    RetestScore late = speed(Hand.RIGHT, "after-2");
    assertNull(late.before());
    assertEquals(ChangeVerdict.CANNOT_TELL, late.verdict());
  }

  @Test
  void practiceAloneIsSeldomReadAsTheDrills() {
    Random random = new Random(20260501);
    int athletes = 2000;
    Map<Quality, Integer> held = new EnumMap<>(Quality.class);
    Map<Quality, Integer> told = new EnumMap<>(Quality.class);
    drill("after-1", "paced-flips", DrillHand.RIGHT, "");
    for (int i = 0; i < athletes; i++) {
      trials.clear();
      for (Hand hand : Hand.values()) {
        for (int repeat = 1; repeat <= 3; repeat++) {
          add(hand, "baseline", repeat, drawn(5.0, 0.80, random));
          add(hand, "after-1", repeat, drawn(5.3, 0.86, random));
        }
      }
      for (RetestScore score : score().retest()) {
        if (score.hand() == Hand.RIGHT && score.net95() != null) {
          held.merge(score.quality(), score.net95().contains(0) ? 1 : 0, Integer::sum);
          boolean effect =
              score.netVerdict() == ChangeVerdict.BETTER
                  || score.netVerdict() == ChangeVerdict.WORSE;
          told.merge(score.quality(), effect ? 1 : 0, Integer::sum);
        }
      }
    }
    for (Quality quality : List.of(Quality.SPEED, Quality.ACCURACY, Quality.ENDURANCE)) {
      assertTrue(held.get(quality) >= 0.935 * athletes, () -> quality + " " + held);
      assertTrue(told.get(quality) <= 0.05 * athletes, () -> quality + " " + told);
    }
  }

  /**
   * Uneven slaps; the trial has a rate and a share of faults of its own, so that faults cluster.
   */
  private static List<Slap> drawn(double rate, double share, Random random) {
    double own = rate * (1 + 0.03 * random.nextGaussian());
    double clean = Math.min(1, share + 0.06 * random.nextGaussian());
    double[] d = Made.same((int) (5 * own), 1 / own);
    for (int i = 0; i < d.length; i++) {
      d[i] *= 1 + 0.05 * random.nextGaussian();
    }
    return Made.slaps(0, d).stream()
        .map(slap -> random.nextDouble() < clean ? slap : slap.withZone(Zone.EDGE))
        .toList();
  }

  private void four(Hand first, double[][] rates) {
    rates(first, "baseline", rates[0]);
    rates(first, "after-1", rates[1]);
    rates(first.other(), "baseline", rates[2]);
    rates(first.other(), "after-1", rates[3]);
  }

  private void drill(String block, String code, DrillHand hand, String dose) {
    blocks.add(new Block(block, new Drill(code, hand, dose, null, null, Extra.NONE), Extra.NONE));
  }

  private void rates(Hand hand, String block, double... rates) {
    for (int i = 0; i < rates.length; i++) {
      double d = 1 / rates[i];
      add(hand, block, i + 1, Made.slaps(1, Made.same((int) (5 * rates[i] + 1e-9), d)));
    }
  }

  private void add(Hand hand, String block, int repeat, List<Slap> slaps) {
    trials.add(
        Made.trial(hand, block, repeat, TimeScale.REAL, null).withReading(Made.reading(slaps)));
  }

  private SessionScore score() {
    Session session = Session.begin("H-07", LocalDate.of(2026, 3, 14)).withBlocks(blocks);
    return Scores.session(session, trials, ReadingChoice.FIRST, Made.LIMITS);
  }

  private RetestScore speed(Hand hand, String block) {
    return score().retest().stream()
        .filter(each -> each.hand() == hand && each.block().equals(block))
        .filter(each -> each.quality() == Quality.SPEED)
        .findFirst()
        .orElseThrow();
  }
}
