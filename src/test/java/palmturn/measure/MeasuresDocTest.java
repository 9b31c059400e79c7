package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import palmturn.numbers.Confidence;
import palmturn.numbers.Quantiles;
import palmturn.numbers.Range;

/** Holds docs/measures.md to the declarations, so that neither can change alone. */
class MeasuresDocTest {
  private static final Path DOC = Path.of("docs", "measures.md");

  @TestFactory
  Stream<DynamicTest> everyMeasureHasItsRow() throws IOException {
    List<String> lines = Files.readAllLines(DOC, StandardCharsets.UTF_8);
    return Measures.ALL.stream()
        .map(
            measure ->
                DynamicTest.dynamicTest(
                    measure.id(),
                    () -> assertTrue(lines.contains(row(measure)), () -> row(measure))));
  }

  @Test
  void noRowIsOfAMeasureThatIsGone() throws IOException {
    long rows =
        Files.readAllLines(DOC, StandardCharsets.UTF_8).stream()
            .filter(line -> line.startsWith("| `"))
            .count();
    assertEquals(Measures.ALL.size() + 1, rows, "one more is a hand's");
  }

  @Test
  void theCleanCeilingHasItsRow() throws IOException {
    HandMeasure ceiling = HandMeasure.CLEAN_CEILING;
    String row =
        String.join(
            " | ",
            "| `" + ceiling.id() + "`",
            ceiling.name(),
            ceiling.unit(),
            ceiling.help(),
            ceiling.formula(),
            "higher",
            ceiling.source() + " |");
    assertTrue(Files.readAllLines(DOC, StandardCharsets.UTF_8).contains(row), row);
  }

  @Test
  void everyIdIsItsOwn() {
    assertEquals(
        Measures.ALL.size(), new HashSet<>(Measures.ALL.stream().map(Measure::id).toList()).size());
  }

  @Test
  void whatThreeTrialsCanTellIsPrintedAsComputed() throws IOException {
    List<String> lines = Files.readAllLines(DOC, StandardCharsets.UTF_8);
    for (String row : reach()) {
      assertTrue(lines.contains(row), () -> row);
    }
  }

  /** By t(0.975, 4)·s·√(2/3) for means, by Newcombe's interval of equal hands for shares. */
  private static List<String> reach() {
    List<String> rows = new ArrayList<>();
    for (double sdPct : new double[] {2, 4, 6}) {
      rows.add(reach("rate, spread %.0f %% of the mean", sdPct, half(sdPct), 10, "%"));
    }
    for (int clean : new int[] {62, 70, 74}) {
      Range range = Confidence.newcombe(clean, 78, clean, 78);
      double half = range == null ? 0 : 100 * range.high();
      rows.add(
          reach("clean share, about %.0f %% of 78 slaps", 100 * clean / 78.0, half, 10, "points"));
    }
    for (double sd : new double[] {0.5, 1, 1.5}) {
      rows.add(reach("steady CV, spread %.1f points", sd, half(sd), 2, "points"));
    }
    for (double sd : new double[] {0.5, 1, 1.5}) {
      rows.add(reach("slow-down, spread %.1f %%/s", sd, half(sd), 2.5, "%/s"));
    }
    return rows;
  }

  private static String reach(String what, double spread, double half, double margin, String unit) {
    String balanced =
        half < margin
            ? String.format(Locale.ROOT, "if they differ by under %.1f %s", margin - half, unit)
            : "never";
    return String.format(
        Locale.ROOT, "| " + what + " | ± %.1f %s | %s |", spread, half, unit, balanced);
  }

  private static double half(double sd) {
    return Quantiles.t(0.975, 4) * sd * Math.sqrt(2.0 / 3);
  }

  private static String row(Measure measure) {
    String better =
        switch (measure.better()) {
          case HIGHER -> "higher";
          case LOWER -> "lower";
          case ZERO -> "nearer 0";
          case NEITHER -> "–";
        };
    return Stream.of(
            "`" + measure.id() + "`",
            measure.name(),
            measure.unit().isEmpty() ? "–" : measure.unit(),
            measure.help(),
            measure.formula().replace("|", "\\|"),
            better,
            measure.source())
        .reduce("|", (line, cell) -> line + " " + cell + " |");
  }
}
