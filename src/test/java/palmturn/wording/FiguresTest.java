package palmturn.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import palmturn.measure.Decimals;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.numbers.Range;

class FiguresTest {
  @Test
  void minusIsAMinusAndNothingHasNoSign() {
    assertEquals("−0.5", Decimals.fixed(-0.46, 1));
    assertEquals("+0.5", Decimals.signed(0.46, 1));
    assertEquals("−0.5", Decimals.signed(-0.46, 1));
    assertEquals("0.0", Decimals.signed(-0.04, 1));
    assertEquals("0.0", Decimals.fixed(-0.04, 1));
  }

  @Test
  void halvesAreRoundedAwayFromZero() {
    assertEquals("0.13", Decimals.fixed(0.125, 2));
    assertEquals("−0.13", Decimals.fixed(-0.125, 2));
  }

  @Test
  void limitsCarryNoNeedlessZeros() {
    assertEquals("80", Decimals.plain(80.0));
    assertEquals("2.5", Decimals.plain(2.50));
    assertEquals("0", Decimals.plain(0.0));
    assertEquals("100", Decimals.plain(1e2));
  }

  @Test
  void everyMeasureIsWrittenInItsOwnForm() {
    assertEquals("25", Measures.SLAPS.text(25));
    assertEquals("4.91", Measures.RATE.text(4.9083));
    assertEquals("84", Measures.CLEAN_SHARE.text(84.2));
    assertEquals("3.9", Measures.STEADY_CV.text(3.94));
    assertEquals("+1.2", Measures.SLOW_DOWN.text(1.2));
    assertEquals("−12", Measures.LATE_FAULTS.text(-12.3));
  }

  @Test
  void differenceHasASignAndItsSizeNone() {
    assertEquals("+0.35", Measure.Form.HUNDREDTHS.difference(0.35));
    assertEquals(
        "−0.35 (−0.80 to +0.10)", Figures.difference(Quality.SPEED, -0.35, new Range(-0.8, 0.1)));
    assertEquals("0.35", Measure.Form.HUNDREDTHS.size(-0.35));
    assertEquals("−0.10 to 0.80", Measure.Form.HUNDREDTHS.size(-0.35, new Range(-0.8, 0.1)));
    assertEquals("0.10 to 0.80", Measure.Form.HUNDREDTHS.size(0.35, new Range(0.1, 0.8)));
  }

  @Test
  void headlineFigureIsNamedAndHasItsUnit() {
    assertEquals("4.91 slaps/s", Quality.SPEED.figure(4.9083));
    assertEquals("clean share 84 %", Quality.ACCURACY.figure(84.2));
    assertEquals("steady CV 3.9 %", Quality.RHYTHM.figure(3.94));
    assertEquals("slow-down −0.5 %/s", Quality.ENDURANCE.figure(-0.52));
    assertEquals("elbow drift 2.1 cm", Quality.DRIFT.figure(2.13));
  }

  @Test
  void whatCannotBeToldIsADash() {
    assertEquals("–", Figures.number(null, 2));
    assertEquals("–", Figures.of(Measures.RATE, (Double) null));
    assertEquals("–", Figures.difference(Quality.SPEED, null, new Range(0, 1)));
    assertEquals("–", Figures.ms(null));
  }

  @Test
  void unitStandsApartAndStaysOnTheLine() {
    assertEquals("74\u00A0%", Figures.percent(74.2, 0));
    assertEquals("1.50\u00A0s", Figures.seconds(1.5, 2));
    assertEquals("12.0", Figures.ms(0.012));
  }

  @Test
  void oneIsSingular() {
    assertEquals("1\u00A0slap", Figures.count(1, "slap"));
    assertEquals("2\u00A0slaps", Figures.count(2, "slap"));
    assertEquals("25\u00A0slaps, 1\u00A0double", Figures.slaps(25, 1));
    assertEquals("25\u00A0slaps", Figures.slaps(25, 0));
    assertEquals("once", Figures.times(1));
    assertEquals("twice", Figures.times(2));
    assertEquals("3\u00A0times", Figures.times(3));
  }
}
