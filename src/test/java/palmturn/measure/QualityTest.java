package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;
import palmturn.numbers.Range;

/** How far the headline measures reach. */
class QualityTest {
  @Test
  void anIntervalEndsWhereTheMeasureDoes() {
    assertEquals(new Range(80, 100), Quality.ACCURACY.possible(new Range(80, 112)));
    assertEquals(new Range(0, 4), Quality.DRIFT.possible(new Range(-1, 4)));
    assertEquals(new Range(0, 9), Quality.RHYTHM.possible(new Range(-2, 9)));
  }

  @Test
  void aHandMayBecomeFaster() {
    assertEquals(new Range(-3, 2), Quality.ENDURANCE.possible(new Range(-3, 2)));
  }

  @Test
  void withoutAnIntervalThereIsNone() {
    assertNull(Quality.SPEED.possible(null));
  }
}
