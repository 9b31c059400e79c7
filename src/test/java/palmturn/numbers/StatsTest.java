package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StatsTest {

  /**
   * Certified values of NIST StRD, univariate summary statistics. The SD of NumAcc3 and NumAcc4
   * can't be had to more digits in doubles: their data are not exact in binary.
   */
  @ParameterizedTest
  @CsvSource({
    "PiDigits,  5000, 4.53480000000000, 2.86733906028871,     -0.00355099287237972, 1e-13",
    "Lottery,    218, 518.958715596330, 291.699727470969,     -0.120948622967393,   1e-13",
    "Lew,        200, -177.435000000000, 277.332168044316,    -0.307304800605679,   1e-13",
    "Mavro,       50, 2.00185600000000, 0.000429123454003053, 0.937989183438248,    1e-13",
    "Michelso,   100, 299.852400000000, 0.0790105478190518,   0.535199668621283,    1e-13",
    "NumAcc1,      3, 10000002,         1,                    -0.5,                 1e-14",
    "NumAcc2,   1001, 1.2,              0.1,                  -0.999,               1e-13",
    "NumAcc3,   1001, 1000000.2,        0.1,                  -0.999,               1e-9",
    "NumAcc4,   1001, 10000000.2,       0.1,                  -0.999,               1e-7"
  })
  void nistStrd(String name, int n, double mean, double sd, double r1, double tolerance)
      throws IOException {
    double[] data = nist(name);

    assertEquals(n, data.length);
    assertEquals(mean, Stats.mean(data), 1e-14 * Math.abs(mean));
    assertEquals(sd, Stats.sd(data), tolerance * sd);
    assertEquals(r1, Signals.autocorrelation(data, 1), tolerance * Math.abs(r1) + 1e-14);
  }

  /**
   * Published cases: Toussaint 2012, Livingstone 2011, Condit-Schultz 2019, Daniele and Patel 2013.
   */
  @ParameterizedTest
  @CsvSource({
    "2 5 1 3,   106.3,   0.05,   Toussaint 2012 A",
    "1 3 6 2 5, 88.1,    0.05,   Toussaint 2012 B",
    "1 2 3,     53.3333, 0.00005, Livingstone 2011",
    "3 3 6,     33.3333, 0.00005, Livingstone 2011",
    "4 6 8,     34.2857, 0.00005, Livingstone 2011",
    "4 7 7,     27.2727, 0.00005, Livingstone 2011",
    "1 1 1 1,   0,       0,       Condit-Schultz 2019 Fig. 1",
    "6 3 3 6 3 3 2 2 2 12 2 2 2 2 2 2 9 6 3, 42.2, 0.05, Daniele and Patel 2013 in sixths"
  })
  void npviOfPublishedCases(String durations, double published, double rounding, String source) {
    assertEquals(published, Stats.npvi(numbers(durations)), rounding, source);
  }

  @Test
  void npviOfStrictTwoToOneAlternationIsTwoThirds() {
    assertEquals(200.0 / 3, Stats.npvi(numbers("2 1 2 1 2 1")), 1e-12);
  }

  @Test
  void npviDoesNotLookAcrossABreak() {
    assertEquals(0.0, Stats.npvi(numbers("2 2"), numbers("5 5 5")));
    assertNull(Stats.npvi(numbers("2"), numbers("5")));
  }

  @Test
  void shortInputHasNoAnswer() {
    double[] none = {};
    double[] one = {3};
    assertNull(Stats.mean(none));
    assertNull(Stats.median(none));
    assertNull(Stats.max(none));
    assertNull(Stats.sd(one));
    assertNull(Stats.cvPct(one));
    assertNull(Stats.pooledSd(one, one));
  }

  @Test
  void percentilesInterpolateBetweenOrderStatistics() {
    double[] values = numbers("40 10 30 20");
    assertEquals(25, Stats.median(values), 1e-12);
    // Type 7 of Hyndman and Fan 1996: position 1 + 3 × 0.95 = 3.85.
    assertEquals(38.5, Stats.percentile(values, 95), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void pooledSdOfGroupsIsTheWithinGroupPartOfTheVariance(long seed) {
    Random random = new Random(seed);
    double[] a = random.doubles(5).toArray();
    double[] b = random.doubles(9, 40, 60).toArray();
    double squares = 0;
    for (double[] group : new double[][] {a, b}) {
      double mean = Arrays.stream(group).average().orElseThrow();
      squares += Arrays.stream(group).map(v -> (v - mean) * (v - mean)).sum();
    }
    assertEquals(Math.sqrt(squares / 12), Stats.pooledSd(a, b), 1e-12);
  }

  /** Bland and Altman 1996, BMJ 313:744: first four children as printed, SDs from their table. */
  @Test
  void pooledSdOfTheFirstFourChildrenOfBlandAndAltman1996() {
    Double pooled =
        Stats.pooledSd(
            numbers("190 220 200 200"),
            numbers("220 200 240 230"),
            numbers("260 260 240 280"),
            numbers("210 300 280 265"));
    double expected =
        Math.sqrt((12.58 * 12.58 + 17.08 * 17.08 + 16.33 * 16.33 + 38.60 * 38.60) / 4);
    assertEquals(expected, pooled, 0.01);
  }

  static double[] numbers(String spaced) {
    return Arrays.stream(spaced.trim().split(" +")).mapToDouble(Double::parseDouble).toArray();
  }

  private static double[] nist(String name) throws IOException {
    try (InputStream in = StatsTest.class.getResourceAsStream(name + ".txt")) {
      assertNotNull(in, name);
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .map(String::trim)
          .filter(line -> line.matches("-?[0-9]+(\\.[0-9]+)?"))
          .mapToDouble(Double::parseDouble)
          .toArray();
    }
  }
}
