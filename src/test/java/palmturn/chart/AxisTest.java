package palmturn.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisTest {
  @ParameterizedTest
  @CsvSource({
    "0, 5, 6, '0 1 2 3 4 5'",
    "0, 3.45, 4, '0 1 2 3'",
    "0, 0.29, 4, '0 0.1 0.2'",
    "183, 512, 5, '200 300 400 500'",
    "-3, 3, 5, '−2 0 2'",
    "0, 1, 5, '0 0.2 0.4 0.6 0.8 1'",
    "0, 0.3, 3, '0 0.1 0.2 0.3'",
  })
  void ticksAreRoundAndNoMoreThanAskedFor(double from, double to, int most, String labels) {
    Axis axis = Axis.of(from, to, most, 0, 100);
    assertEquals(List.of(labels.split(" ")), axis.ticks().stream().map(Axis::label).toList());
  }

  @ParameterizedTest
  @CsvSource({"8, 8", "1.5, 1.5", "0.125, 0.125", "-0.0004, 0", "-2.5, −2.5", "100, 100"})
  void numbersHaveNoTrailingZeros(double value, String label) {
    assertEquals(label, Axis.label(value));
  }

  @Test
  void aVerticalAxisRunsUpwards() {
    Axis axis = Axis.of(0, 10, 5, 200, 100);
    assertEquals(200, axis.at(0));
    assertEquals(150, axis.at(5));
    assertEquals(100, axis.clampedAt(12));
  }
}
