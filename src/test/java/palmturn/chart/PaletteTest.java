package palmturn.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the colours of a theme are for, held against what they contrast by. */
class PaletteTest {
  private static final List<String> TEXT = List.of("ink", "ink2", "ink3", "clay", "sea", "iris");
  private static final List<String> OTHER = List.of("edge", "wave");

  @Test
  void blackOnWhiteContrastsBy21() {
    assertEquals(21, Wcag.contrast(Color.BLACK, Color.WHITE), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"light", "dark", "print"})
  void textAndOutlinesCanBeReadOnPaperAndSheet(String theme) {
    Palette palette = palette(theme);
    Map<String, Color> named = palette.named();
    for (Color ground : List.of(palette.paper(), palette.sheet())) {
      for (String name : TEXT) {
        assertContrast(named, name, ground, 4.5);
      }
      for (String name : OTHER) {
        assertContrast(named, name, ground, 3);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"light", "dark", "print"})
  void faultWordsCanBeReadOnTheirWash(String theme) {
    Palette palette = palette(theme);
    assertContrast(palette.named(), "clay", palette.clayWash(), 4.5);
  }

  @Test
  void everyColourHasANameAndNoTwoAreTheSame() {
    assertEquals(
        Palette.class.getRecordComponents().length,
        new HashSet<>(Palette.LIGHT.named().values()).size());
    assertEquals(Palette.LIGHT.named().keySet(), Palette.DARK.named().keySet());
  }

  private static Palette palette(String theme) {
    return switch (theme) {
      case "light" -> Palette.LIGHT;
      case "dark" -> Palette.DARK;
      default -> Palette.PRINT;
    };
  }

  private static void assertContrast(
      Map<String, Color> named, String name, Color ground, double least) {
    double ratio = Wcag.contrast(named.get(name), ground);
    assertTrue(ratio >= least, () -> "%s on %s: %.2f".formatted(name, ground, ratio));
  }
}
