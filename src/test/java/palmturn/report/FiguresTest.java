package palmturn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FiguresTest {
  @Test
  void minusIsAMinusAndNothingHasNoSign() {
    assertEquals("−0.5", Figures.number(-0.46, 1));
    assertEquals("+0.5", Figures.signed(0.46, 1));
    assertEquals("0.0", Figures.signed(-0.04, 1));
    assertEquals("0.0", Figures.number(-0.04, 1));
  }

  @Test
  void percentStandsApartAndStaysOnTheLine() {
    assertEquals("74\u00A0%", Figures.pct(74.2, 0));
  }

  @Test
  void oneIsSingular() {
    assertEquals("1\u00A0slap", Figures.count(1, "slap", "slaps"));
    assertEquals("2\u00A0slaps", Figures.count(2, "slap", "slaps"));
    assertEquals("once", Figures.times(1));
  }

  @Test
  void limitsCarryNoNeedlessZeros() {
    assertEquals("80", Figures.plain(80.0));
    assertEquals("2.5", Figures.plain(2.50));
    assertEquals("0", Figures.plain(0.0));
  }
}
