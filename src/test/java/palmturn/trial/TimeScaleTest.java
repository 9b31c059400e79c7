package palmturn.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimeScaleTest {
  private static final double EPS = 1e-12;

  @Test
  void captureAtTheNominalRateIsRealTime() {
    assertEquals(TimeScale.REAL, TimeScale.ofCapture(1 / 60.0, 60));
    assertEquals(TimeScale.REAL, TimeScale.ofCapture(1 / 59.94, 60));
  }

  @Test
  void aClipCapturedEightTimesFasterRunsEightTimesSlower() {
    TimeScale scale = TimeScale.ofCapture(1 / 30.0, 240);
    assertEquals(1.0, scale.realBetween(2, 10), EPS);
    assertEquals(10.0, scale.mediaAfter(2, 1), 1e-9);
  }

  @Test
  void eachPieceHasItsOwnFactor() {
    TimeScale scale =
        new TimeScale(List.of(new TimeScale.Piece(1, 1), new TimeScale.Piece(2, 0.25)), "");
    assertEquals(2.0, scale.realBetween(0, 2), EPS);
    assertEquals(2.5, scale.realBetween(0, 4), EPS);
    assertEquals(-2.5, scale.realBetween(4, 0), EPS);
    assertEquals(0.25, scale.factorAt(2), EPS);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void mediaAfterUndoesRealBetween(long seed) {
    Random random = new Random(seed);
    TimeScale scale =
        new TimeScale(
            List.of(
                new TimeScale.Piece(0, 0.1 + random.nextDouble()),
                new TimeScale.Piece(1.5, 0.1 + random.nextDouble()),
                new TimeScale.Piece(4, 0.1 + random.nextDouble())),
            "");
    for (int i = 0; i < 100; i++) {
      double from = random.nextDouble() * 6 - 0.5;
      double to = random.nextDouble() * 12 - 3;
      assertEquals(to, scale.mediaAfter(from, scale.realBetween(from, to)), 1e-9);
    }
  }

  @Test
  void aRefusedScaleSaysWhy() {
    assertFalse(TimeScale.refused("slowed in part").known());
    assertTrue(TimeScale.REAL.known());
    assertThrows(IllegalArgumentException.class, () -> TimeScale.uniform(0));
  }
}
