package palmturn.settle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class MatchingTest {

  /** Onset cases 05, 07 and 08 of mir_eval's tests/data/onset (MIT licence), window 50 ms. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.194467 1.128639 2.023878 4.079728"
            + "|0.243810 1.190023 2.086893 4.130249 4.612063"
            + "|1|0.2|0.25|0.222222222222",
        "0.0 0.330 0.496 0.650 0.960 1.116 1.278 1.613 1.933 2.109 2.250"
            + "|0.312154 0.454376 0.605306 0.947800 1.072608 1.252562 1.568934 1.888209 2.065261"
            + " 2.248118"
            + "|10|1.0|0.909090909091|0.952380952381",
        "0.150 0.628 0.694 1.141 1.179 1.299 1.632 2.105"
            + "|0.177052 0.208980 0.484717 0.690794 0.812698 1.198730 1.253878 1.367075 1.689252"
            + " 2.162358 3.059229"
            + "|4|0.363636363636|0.5|0.421052631579"
      })
  void casesOfMirEval(
      String reference, String estimated, int pairs, double precision, double recall, double f) {
    Matching matching = Matching.of(numbers(reference), numbers(estimated), 0.05);
    assertEquals(pairs, matching.pairs().size());
    assertEquals(precision, matching.counts().precision(), 1e-11);
    assertEquals(recall, matching.counts().recall(), 1e-11);
    assertEquals(f, matching.f(), 1e-11);
  }

  /** All six published onset cases of mir_eval by their counts alone. */
  @ParameterizedTest
  @CsvSource({
    "22, 27, 13, 0.481481481481, 0.590909090909, 0.530612244898",
    "15, 25, 10, 0.4, 0.666666666667, 0.5",
    "4, 5, 1, 0.2, 0.25, 0.222222222222",
    "12, 10, 1, 0.1, 0.083333333333, 0.090909090909",
    "11, 10, 10, 1.0, 0.909090909091, 0.952380952381",
    "8, 11, 4, 0.363636363636, 0.5, 0.421052631579"
  })
  void sharesOfMirEval(
      int reference, int estimated, int pairs, double precision, double recall, double f) {
    MatchCounts counts = new MatchCounts(pairs, reference - pairs, estimated - pairs);
    assertEquals(precision, counts.precision(), 1e-11);
    assertEquals(recall, counts.recall(), 1e-11);
    assertEquals(f, counts.f(), 1e-11);
  }

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 300);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void isAsGoodAsTryingEveryWay(long seed) {
    Random random = new Random(seed);
    double[] a = onGrid(random, random.nextInt(7));
    double[] b = onGrid(random, random.nextInt(7));
    double tolerance = random.nextInt(6) * 0.01;
    Matching matching = Matching.of(a, b, tolerance);
    double[] best = everyWay(a, b, 0, 0, tolerance);
    assertEquals(best[0], matching.pairs().size());
    assertEquals(best[1], costS(matching), 1e-9);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void isOneToOneNeverCrossesAndForgetsNothing(long seed) {
    Random random = new Random(seed);
    double[] a = onGrid(random, random.nextInt(30));
    double[] b = onGrid(random, random.nextInt(30));
    Matching matching = Matching.of(a, b, 0.03);
    boolean[] seenA = new boolean[a.length];
    boolean[] seenB = new boolean[b.length];
    int lastB = -1;
    int lastA = -1;
    for (Matching.Pair pair : matching.pairs()) {
      assertTrue(pair.a() > lastA && pair.b() > lastB);
      lastA = pair.a();
      lastB = pair.b();
      seenA[lastA] = true;
      seenB[lastB] = true;
      assertEquals(b[lastB] - a[lastA], pair.differenceS());
      assertTrue(Math.abs(pair.differenceS()) <= 0.03 + 2e-6);
    }
    matching.onlyA().forEach(i -> seenA[i] = !seenA[i]);
    matching.onlyB().forEach(i -> seenB[i] = !seenB[i]);
    for (boolean seen : seenA) {
      assertTrue(seen);
    }
    for (boolean seen : seenB) {
      assertTrue(seen);
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void isTheSameFromEitherSide(long seed) {
    Random random = new Random(seed);
    double[] a = onGrid(random, 25);
    double[] b = onGrid(random, 20 + random.nextInt(10));
    Matching there = Matching.of(a, b, 0.04);
    Matching back = Matching.of(b, a, 0.04);
    assertEquals(there.onlyA(), back.onlyB());
    assertEquals(there.onlyB(), back.onlyA());
    assertEquals(
        there.pairs(),
        back.pairs().stream()
            .map(pair -> new Matching.Pair(pair.b(), pair.a(), 0 - pair.differenceS()))
            .toList());
    assertEquals(there.counts().precision(), back.counts().recall());
  }

  @Test
  void morePairsWinOverNearerOnes() {
    Matching matching = Matching.of(new double[] {0, 0.03}, new double[] {0.028, 0.06}, 0.03);
    assertEquals(2, matching.pairs().size());
  }

  @Test
  void marksExactlyOneFrameApartArePaired() {
    // 1/60 s, both times rounded to microseconds.
    Matching matching = Matching.of(new double[] {0.366667}, new double[] {0.383334}, 1.0 / 60);
    assertEquals(1, matching.pairs().size());
  }

  @Test
  void emptyListsHaveNoShares() {
    Matching none = Matching.of(new double[0], new double[0], 1);
    assertNull(none.f());
    assertNull(none.counts().precision());
    assertNull(none.counts().recall());
    Matching missed = Matching.of(new double[] {1, 2}, new double[0], 1);
    assertEquals(List.of(0, 1), missed.onlyA());
    assertEquals(0.0, missed.f());
    assertEquals(0.0, missed.counts().recall());
    assertNull(missed.counts().precision());
  }

  @Test
  void aListThatRunsBackwardsIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Matching.of(new double[] {2, 1}, new double[] {1}, 0.1));
  }

  @Test
  void threeThousandMarksAreMatchedWellWithinASecond() {
    Random random = new Random(51);
    double[] a = new double[3000];
    double[] b = new double[3000];
    for (int i = 0; i < a.length; i++) {
      a[i] = i * 0.2 + 0.01 * random.nextGaussian();
      b[i] = i * 0.2 + 0.01 * random.nextGaussian();
    }
    Arrays.sort(a);
    Arrays.sort(b);
    Matching near = assertTimeout(Duration.ofSeconds(1), () -> Matching.of(a, b, 0.025));
    assertNotNull(near.f());
    // Everything in reach of everything: 9 million cells.
    Matching all = assertTimeout(Duration.ofSeconds(5), () -> Matching.of(a, b, 1e9));
    assertEquals(1.0, all.f());
  }

  private static double costS(Matching matching) {
    return Arrays.stream(matching.differencesS()).map(Math::abs).sum();
  }

  /** Returns most pairs and least cost by trying every partner for every moment of a. */
  private static double[] everyWay(double[] a, double[] b, int i, int used, double tolerance) {
    if (i == a.length) {
      return new double[2];
    }
    double[] best = everyWay(a, b, i + 1, used, tolerance);
    for (int j = 0; j < b.length; j++) {
      double difference = Math.abs(a[i] - b[j]);
      if ((used & 1 << j) == 0 && difference <= tolerance + 1e-9) {
        double[] rest = everyWay(a, b, i + 1, used | 1 << j, tolerance);
        double pairs = rest[0] + 1;
        double cost = rest[1] + difference;
        if (pairs > best[0] || pairs == best[0] && cost < best[1]) {
          best = new double[] {pairs, cost};
        }
      }
    }
    return best;
  }

  /** A coarse grid, so that many ways are equally good. */
  private static double[] onGrid(Random random, int n) {
    return random.ints(n, 0, 40).sorted().mapToDouble(i -> i * 0.01).toArray();
  }

  static double[] numbers(String spaced) {
    return Arrays.stream(spaced.trim().split(" +")).mapToDouble(Double::parseDouble).toArray();
  }
}
