package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.trial.Zone;

/** Zones of made-up hands that land at known places of the target's palm. */
class ContactZonesTest {
  private static final int N = 12;

  private static List<Zone> zones(double... along) {
    List<PosedContact> touches = MadeHands.alternating(N);
    List<HandMarks> hands = new ArrayList<>();
    for (int i = 0; i < N; i++) {
      double at = i < along.length ? along[i] : 0;
      hands.add(MadeHands.moving(at, i % 2 == 0 ? -0.7 : 0.5));
    }
    return ContactZones.of(MadeHands.paths(touches, hands), touches).stream()
        .map(ContactZones.ZoneEstimate::zone)
        .toList();
  }

  @Test
  void theFingersTheMiddleAndTheWristAreToldApart() {
    assertEquals(
        List.of(Zone.CENTRE, Zone.FINGERS, Zone.WRIST, Zone.CENTRE),
        zones(0, 1, -0.9).subList(0, 4));
  }

  @Test
  void betweenTwoZonesItStaysOpen() {
    assertEquals(Zone.UNKNOWN, zones(0.5).get(0));
    assertEquals(Zone.UNKNOWN, zones(-0.45).get(0));
  }

  @Test
  void aHandThatAlwaysLandsOnTheFingersIsNotTakenForOneThatNeverDoes() {
    double[] all = new double[N];
    java.util.Arrays.fill(all, 1);
    assertTrue(zones(all).stream().allMatch(zone -> zone == Zone.FINGERS));
  }

  @Test
  void aContactThatWasNotSeenStaysOpen() {
    List<PosedContact> touches = MadeHands.alternating(N);
    List<HandMarks> hands = List.of(MadeHands.moving(0, -0.7));
    List<ContactZones.ZoneEstimate> landed =
        ContactZones.of(MadeHands.paths(touches, hands), touches);
    assertEquals(Zone.UNKNOWN, landed.get(1).zone());
    assertEquals(0, landed.get(1).confidence());
  }
}
