package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class RobustTest {

  @Test
  void oneWildValueMovesNeitherMedianNorSpreadFar() {
    double[] values = {1, 2, 3, 4, 1000};
    assertEquals(3, Robust.median(values));
    assertEquals(1, Robust.mad(values));
    assertEquals(2, Robust.quantile(values, 0.25));
    assertEquals(1000, Robust.quantile(values, 1));
  }

  @Test
  void noValuesAreAMistakeOfTheCaller() {
    assertThrows(NullPointerException.class, () -> Robust.median(new double[0]));
  }
}
