package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.estimate.hands.HandFollower.TimedHand;

/** Lengths of made-up hands, which reach 2.05 palm lengths from the wrist to the middle tip. */
class HandLengthTest {
  private static final double STRETCHED_PX = 2.05 * MadeHands.PALM_PX;

  /** A hand that points to the right, shortened as if it pointed towards the camera. */
  private static HandMarks shortened(double by, double presence) {
    HandMarks hand = MadeHands.hand(300, 300, 0, 0);
    double[] x = hand.x().clone();
    for (int i = 0; i < x.length; i++) {
      x[i] *= by;
    }
    return new HandMarks(x, hand.y(), presence);
  }

  private static HandPaths paths(List<HandMarks> hands) {
    List<TimedHand> moving = new ArrayList<>();
    for (HandMarks hand : hands) {
      moving.add(new TimedHand(moving.size() / 60.0, hand));
    }
    return new HandPaths(true, moving, List.of(), MadeHands.TARGET);
  }

  @Test
  void theLongestLooksCount() {
    List<HandMarks> hands = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      hands.add(shortened(i % 3 == 0 ? 1 : 0.6, 0.97));
    }
    assertEquals(STRETCHED_PX, HandLength.px(paths(hands)), 1e-9);
  }

  @Test
  void aFewMistakenLooksDoNotCount() {
    List<HandMarks> hands = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      hands.add(shortened(i < 2 ? 1.5 : 1, 0.97));
    }
    assertEquals(STRETCHED_PX, HandLength.px(paths(hands)), 1e-9);
  }

  @Test
  void blurredLooksDoNotCount() {
    List<HandMarks> hands = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      hands.add(i % 2 == 0 ? shortened(1, 0.97) : shortened(1.5, 0.8));
    }
    assertEquals(STRETCHED_PX, HandLength.px(paths(hands)), 1e-9);
  }

  @Test
  void bentFingersAreMeasuredAlongTheirJoints() {
    HandMarks straight = shortened(1, 0.97);
    double[] x = straight.x().clone();
    double[] y = straight.y().clone();
    // The two outer joints are turned by a right angle in the picture: no shorter along them.
    x[12] = x[11] = x[10];
    y[11] = y[10] + 0.35 * MadeHands.PALM_PX;
    y[12] = y[11] + 0.35 * MadeHands.PALM_PX;
    HandMarks bent = new HandMarks(x, y, 0.97);
    assertEquals(STRETCHED_PX, HandLength.px(paths(Collections.nCopies(60, bent))), 1e-9);
  }

  @Test
  void aHandHardlySeenHasNoLength() {
    assertNull(HandLength.px(paths(Collections.nCopies(60, shortened(1, 0.85)))));
    assertNull(HandLength.px(paths(Collections.nCopies(5, shortened(1, 0.97)))));
    assertNull(HandLength.px(paths(List.of())));
  }
}
