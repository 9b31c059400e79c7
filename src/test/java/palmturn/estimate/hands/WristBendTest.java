package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Bends of made-up hands at known angles to a forearm. */
class WristBendTest {
  private static final int N = 14;

  /** Hands that point where their forearm does, but for a bend each. */
  private static HandPaths paths(List<PosedContact> touches, double... bendDeg) {
    List<HandMarks> hands = new ArrayList<>();
    for (int i = 0; i < N; i++) {
      double deg = i < bendDeg.length ? bendDeg[i] : 0;
      HandMarks straight = MadeHands.hand(280, 280, 0.2, -0.6);
      HandMarks bent = MadeHands.hand(0, 0, 0.2 + Math.toRadians(deg), -0.6);
      Registration toWrist =
          new Registration(1, 0, straight.x()[0] - bent.x()[0], straight.y()[0] - bent.y()[0]);
      hands.add(toWrist.of(bent));
    }
    return MadeHands.paths(touches, hands);
  }

  private static double[] elbow() {
    HandMarks straight = MadeHands.hand(280, 280, 0.2, -0.6);
    return new double[] {
      straight.x()[0] - 200 * Math.cos(0.2), straight.y()[0] - 200 * Math.sin(0.2)
    };
  }

  @Test
  void aBentStretchIsFoundFromHalfWayBeforeToHalfWayAfter() {
    List<PosedContact> touches = MadeHands.alternating(N);
    WristBend bend =
        WristBend.of(paths(touches, 0, 1, -1, 25, -20, 25, 22), touches, timeS -> elbow());
    assertNotNull(bend);
    assertEquals(1, bend.spans().size());
    assertEquals(1.5, bend.spans().get(0).startS(), 1e-6);
    assertEquals(2.3, bend.spans().get(0).endS(), 1e-6);
    assertEquals(25, bend.bends().get(3).deg(), 0.5);
  }

  @Test
  void oneBentContactIsNoStretch() {
    List<PosedContact> touches = MadeHands.alternating(N);
    WristBend bend = WristBend.of(paths(touches, 0, 0, 0, 30), touches, timeS -> elbow());
    assertNotNull(bend);
    assertTrue(bend.spans().isEmpty());
  }

  @Test
  void anElbowThatIsElsewhereTellsNothing() {
    List<PosedContact> touches = MadeHands.alternating(N);
    assertNull(WristBend.of(paths(touches), touches, timeS -> new double[] {elbow()[0], -400}));
  }

  @Test
  void withoutAnElbowThereIsNoBend() {
    List<PosedContact> touches = MadeHands.alternating(N);
    assertNull(WristBend.of(paths(touches), touches, timeS -> null));
  }
}
