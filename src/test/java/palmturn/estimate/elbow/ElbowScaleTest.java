package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.estimate.request.Hints;
import palmturn.trial.KnownLength;
import palmturn.trial.Point;

class ElbowScaleTest {
  private static final KnownLength RULER = new KnownLength(new Point(0, 0), new Point(30, 40), 10);

  @Test
  void twoPlacesAKnownLengthApartComeFirst() {
    ElbowScale scale = ElbowScale.from(hints(RULER, 25.0, 170.0), 200.0, null);
    assertEquals("given", scale.source());
    assertEquals(0.2, scale.cmPerPixel(), 1e-12);
    assertNull(scale.caution());
  }

  @Test
  void measuredForearmComesNext() {
    ElbowScale scale = ElbowScale.from(hints(null, 25.0, 170.0), 200.0, null);
    assertEquals("forearm", scale.source());
    assertEquals(0.125, scale.cmPerPixel(), 1e-12);
    assertNotNull(scale.caution());
  }

  @Test
  void measuredHandComesAfterTheForearmAndBeforeStature() {
    Hints both = new Hints(null, null, null, null, 25.0, 18.0, 170.0);
    assertEquals("forearm", ElbowScale.from(both, 200.0, 100.0).source());

    Hints hand = new Hints(null, null, null, null, null, 18.0, 170.0);
    ElbowScale scale = ElbowScale.from(hand, 200.0, 100.0);
    assertEquals("hand length, by landmarks", scale.source());
    assertEquals(0.18, scale.cmPerPixel(), 1e-12);
    assertEquals(200.0, scale.forearmPx());
    assertTrue(scale.caution().contains("the hand's length in the picture"), scale.caution());
    assertEquals("stature, estimated", ElbowScale.from(hand, 200.0, null).source());
  }

  @Test
  void aLengthThatCanNotBeIsLeftOutAndSaid() {
    Hints metres = new Hints(null, null, null, null, 26.0, 18.0, 1.72);
    assertEquals(
        List.of("The height of 1.72 cm was not used: it should be from 50 to 300 cm."),
        metres.warnings());
    assertEquals(new Hints(null, null, null, null, 26.0, 18.0, null), metres.plausible());
    Hints usual = new Hints(null, null, null, RULER, 26.0, 18.0, 172.0);
    assertEquals(List.of(), usual.warnings());
    assertEquals(usual, usual.plausible());
  }

  @Test
  void handGivesAScaleWhereNoForearmIsInThePicture() {
    Hints lengths = new Hints(null, null, null, null, 25.0, 18.0, 170.0);
    ElbowScale scale = ElbowScale.from(lengths, null, 90.0);
    assertEquals(0.2, scale.cmPerPixel(), 1e-12);
    assertNull(scale.forearmPx());
  }

  @Test
  void statureIsSaidToBeEstimated() {
    ElbowScale scale = ElbowScale.from(hints(null, null, 170.0), 200.0, null);
    assertEquals("stature, estimated", scale.source());
    // Gordon et al. (2014), Natick/TR-15/007: elbow to wrist is 0.1634 of men's and 0.1589 of
    // women's stature.
    assertTrue(scale.cmPerPixel() > 0.1589 * 170 / 200 && scale.cmPerPixel() < 0.1634 * 170 / 200);
    assertTrue(scale.spreadPct() > ElbowScale.FOREARM_OF_STATURE_SPREAD_PCT);
  }

  @Test
  void withoutLengthsThereAreForearmsOnly() {
    ElbowScale scale = ElbowScale.from(Hints.NONE, 200.0, null);
    assertNull(scale.cmPerPixel());
    assertEquals(200.0, scale.forearmPx());
  }

  @Test
  void withoutAForearmInThePictureLengthsDoNotHelp() {
    assertNull(ElbowScale.from(hints(null, 25.0, 170.0), null, null).cmPerPixel());
  }

  private static Hints hints(KnownLength scale, Double forearmCm, Double statureCm) {
    return new Hints(null, null, null, scale, forearmCm, null, statureCm);
  }
}
