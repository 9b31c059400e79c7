package palmturn.lab.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import palmturn.trial.Curve;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Zone;

class TurnComparisonTest {
  /** Ten contacts, one a second; the turns are of 170° and from the seventh on of 130°. */
  private static ClipTruth truth() {
    List<ClipTruth.TrueContact> contacts = new ArrayList<>();
    double[] deg = new double[11];
    for (int i = 1; i <= 10; i++) {
      Side side = i % 2 == 0 ? Side.BACK : Side.PALM;
      contacts.add(new ClipTruth.TrueContact(i, side, Zone.CENTRE, false));
      deg[i] = i % 2 == 0 ? i < 7 ? 175 : 135 : 5;
    }
    contacts.add(new ClipTruth.TrueContact(10.1, Side.BACK, Zone.CENTRE, true));
    return new ClipTruth(
        Hand.RIGHT, false, contacts, List.of(), null, new ClipTruth.AngleSeries(0, 1, deg), null);
  }

  private static Estimate estimate(Estimate.TurnRange range) {
    return ShapeComparisonTest.estimate(
        Set.of(Estimate.Source.SHAPE),
        List.of(),
        List.of(),
        new Estimate.Shape(Curve.EMPTY, range, null, null));
  }

  @Test
  void theTurnAndItsChangeAreComparedWithTheTrueOnes() {
    TurnComparison turn =
        TurnComparison.of(
            truth(),
            estimate(
                new Estimate.TurnRange(
                    Curve.EMPTY, 166, new Estimate.TurnChange(168, 131, -40, -34))));
    assertEquals(170, turn.trueDeg());
    assertEquals(-40, turn.trueChangeDeg());
    assertEquals(-4, turn.errorDeg());
    assertEquals(3, turn.changeErrorDeg());
  }

  @Test
  void whatIsNotToldHasNoError() {
    TurnComparison without =
        TurnComparison.of(truth(), estimate(new Estimate.TurnRange(Curve.EMPTY, 166, null)));
    assertEquals(-4, without.errorDeg());
    assertNull(without.changeErrorDeg());
    assertNull(TurnComparison.of(truth(), estimate(null)).errorDeg());
  }
}
