package palmturn.app.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import palmturn.trial.Extra;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class SnappingTest {
  private static final double WIDTH_S = 0.06 / 4;

  @Test
  void lagIsTakenOutAndEachMarkFindsItsOnset() {
    double[] truth = evenly(26, 0.2);
    for (int seed : new int[] {1, 2, 3, 4, 5}) {
      Random random = new Random(seed);
      double[] typed =
          DoubleStream.of(truth).map(t -> t + 0.055 + 0.012 * random.nextGaussian()).toArray();
      Snapping settling = Snapping.of(typed(typed), heard(truth), TimeScale.REAL);
      assertEquals(26, settling.snapped());
      assertEquals(0.055, settling.lagS(), 0.008);
      assertEquals(boxed(truth), times(settling));
      assertTrue(settling.moves().stream().allMatch(m -> m.to().timedBy() == TimedBy.SOUND));
    }
  }

  @Test
  void settledMarkKeepsWhatItSaysAndTakesTheEvidencesTime() {
    Slap typed = typed(1.01).get(0).withKind(Slap.Kind.OTHER).withNote("late");
    Slap to =
        Snapping.of(
                List.of(typed), List.of(ContactEvidence.heard(1.04, 0.02, 0.0005)), TimeScale.REAL)
            .moves()
            .get(0)
            .to();
    assertEquals(1.02, to.timeS(), 1e-9);
    assertEquals(1.04, to.soundS(), 1e-9);
    assertNull(to.pictureS());
    assertEquals(0.0005, to.resolutionS());
    assertEquals(Slap.Kind.OTHER, to.kind());
    assertEquals("late", to.note());
    assertEquals(typed.side(), to.side());
  }

  @Test
  void markWithoutEvidenceInReachStaysTyped() {
    List<Slap> typed = typed(1.0, 1.2, 1.4, 1.6, 1.8, 2.4);
    Snapping settling = Snapping.of(typed, heard(1.0, 1.2, 1.4, 1.6, 1.8), TimeScale.REAL);
    assertEquals(1, settling.unmatched());
    Slap last = settling.moves().get(5).to();
    assertEquals(TimedBy.TYPED, last.timedBy());
    assertEquals(2.4, last.timeS(), 1e-9);
    assertEquals(WIDTH_S, last.resolutionS());
  }

  @Test
  void noMarkMovesFurtherThanEightyMillisecondsNorTwoFifthsOfItsInterval() {
    // Alone: 80 ms.
    assertEquals(1, Snapping.of(typed(1.0), heard(1.079), TimeScale.REAL).snapped());
    assertEquals(0, Snapping.of(typed(1.0), heard(1.081), TimeScale.REAL).snapped());
    // 100 ms from its neighbour: 40 ms.
    assertEquals(1, Snapping.of(typed(1.0, 1.1), heard(1.139), TimeScale.REAL).snapped());
    assertEquals(0, Snapping.of(typed(1.0, 1.1), heard(1.141), TimeScale.REAL).snapped());
  }

  @Test
  void limitIsInRealTime() {
    // Recorded at four times the speed: 0.3 media seconds are 75 real milliseconds.
    TimeScale slowed = TimeScale.uniform(0.25);
    assertEquals(1, Snapping.of(typed(4.0), heard(4.3), slowed).snapped());
    assertEquals(0, Snapping.of(typed(4.0), heard(4.34), slowed).snapped());
  }

  @Test
  void twoMarksNeverShareEvidenceAndNeverCross() {
    for (int seed : new int[] {11, 12, 13, 14, 15, 16}) {
      Random random = new Random(seed);
      double[] marks = random.doubles(30, 0, 6).sorted().toArray();
      double[] found = random.doubles(40, 0, 6).sorted().toArray();
      Snapping settling = Snapping.of(typed(marks), heard(found), TimeScale.REAL);
      List<Double> onto =
          settling.moves().stream()
              .map(Snapping.Move::to)
              .filter(slap -> slap.timedBy() == TimedBy.SOUND)
              .map(Slap::timeS)
              .toList();
      assertEquals(settling.snapped(), onto.size());
      for (int i = 1; i < onto.size(); i++) {
        assertTrue(onto.get(i) > onto.get(i - 1), "seed " + seed);
      }
    }
  }

  @Test
  void strayOnsetsAndASkippedSlapDoNotShiftTheOthers() {
    double[] truth = evenly(20, 0.2);
    List<Double> typed = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      if (i != 7) {
        typed.add(truth[i] + 0.03);
      }
    }
    double[] all = DoubleStream.concat(DoubleStream.of(truth), DoubleStream.of(0.3, 6.1)).toArray();
    Snapping settling =
        Snapping.of(
            typed(typed.stream().mapToDouble(Double::doubleValue).toArray()),
            heard(all),
            TimeScale.REAL);
    List<Double> expected = new ArrayList<>(boxed(truth));
    expected.remove(7);
    assertEquals(expected, times(settling));
  }

  @Test
  void nothingToSettleOnLeavesAllAsTheyWere() {
    List<Slap> typed = typed(1.0, 1.2);
    Snapping settling = Snapping.of(typed, List.of(), TimeScale.REAL);
    assertEquals(typed, settling.moves().stream().map(Snapping.Move::to).toList());
    assertEquals(0, Snapping.of(List.of(), heard(1.0), TimeScale.REAL).moves().size());
  }

  private static double[] evenly(int count, double everyS) {
    return IntStream.range(0, count).mapToDouble(i -> 1 + everyS * i).toArray();
  }

  private static List<Slap> typed(double... timesS) {
    return DoubleStream.of(timesS)
        .mapToObj(
            timeS ->
                new Slap(
                    Slap.Kind.SLAP,
                    timeS,
                    Side.PALM,
                    Zone.UNKNOWN,
                    TimedBy.TYPED,
                    WIDTH_S,
                    null,
                    null,
                    true,
                    "",
                    Extra.NONE))
        .toList();
  }

  private static List<ContactEvidence> heard(double... timesS) {
    return DoubleStream.of(timesS).mapToObj(t -> ContactEvidence.heard(t, 0, 0.0005)).toList();
  }

  private static List<Double> times(Snapping settling) {
    return settling.moves().stream().map(move -> move.to().timeS()).toList();
  }

  private static List<Double> boxed(double[] values) {
    return DoubleStream.of(values).boxed().toList();
  }
}
