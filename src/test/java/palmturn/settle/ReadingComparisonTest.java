package palmturn.settle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.settle.Samples.at;
import static palmturn.settle.Samples.changed;
import static palmturn.settle.Samples.compare;
import static palmturn.settle.Samples.even;
import static palmturn.settle.Samples.palm;
import static palmturn.settle.Samples.reading;
import static palmturn.settle.Samples.span;
import static palmturn.settle.Samples.trial;
import static palmturn.settle.Samples.with;
import static palmturn.settle.Samples.without;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import palmturn.settle.Difference.What;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

class ReadingComparisonTest {

  @Test
  void equalReadingsDifferNowhere() throws SettleException {
    ReadingComparison comparison = compare(reading("JM", even(20)), reading("TK", even(20)));
    assertEquals(0, comparison.differences());
    assertEquals(1.0, comparison.matching().f());
    assertEquals(0.025, comparison.tolerance().seconds());
  }

  @Test
  void eachWayToDifferIsListedWorstFirst() throws SettleException {
    List<Slap> a = with(even(20), palm(4.65).withKind(Slap.Kind.DOUBLE));
    List<Slap> b = even(20);
    b = changed(b, 2, slap -> slap.withZone(Zone.EDGE));
    b = changed(b, 5, slap -> slap.withSide(Side.PALM));
    b = changed(b, 8, slap -> at(slap, slap.timeS() + 0.06));
    b = changed(b, 11, slap -> slap.withKind(Slap.Kind.DOUBLE));
    b = changed(b, 13, slap -> slap.withKind(Slap.Kind.PART_TURN));
    b = without(b, 15);
    b = with(b, palm(4.9));
    ReadingComparison comparison = compare(reading("JM", a), reading("TK", b));
    assertEquals(
        List.of(
            Set.of(What.ONLY_A),
            Set.of(What.ONLY_A),
            Set.of(What.ONLY_B),
            Set.of(What.DOUBLE),
            Set.of(What.KIND),
            Set.of(What.APART),
            Set.of(What.SIDE),
            Set.of(What.ZONE)),
        comparison.slaps().stream().map(Difference::what).toList());
    assertEquals(4.0, comparison.slaps().get(0).timeS(), 1e-9);
    assertEquals(0.06, comparison.slaps().get(5).gapS(), 1e-9);
  }

  @Test
  void aSlapSwappedForAnotherIsTwoDifferencesNotOneMoved() throws SettleException {
    // The first misses the slap at 2.0, the second the one at 2.2: no slap was 0.2 s late.
    ReadingComparison comparison =
        compare(reading("JM", without(even(20), 5)), reading("TK", without(even(20), 6)));
    assertEquals(
        List.of(Set.of(What.ONLY_A), Set.of(What.ONLY_B)),
        comparison.slaps().stream()
            .map(Difference::what)
            .sorted((x, y) -> x.toString().compareTo(y.toString()))
            .toList());
  }

  @Test
  void aReadingThatTellsNoSidesIsNotComparedByThem() throws SettleException {
    Trial trial = trial(reading("JM", even(3)));
    Trial estimated = trial.withEstimate(Samples.estimate("0".repeat(64), 1, 1.21, 1.4));
    ReadingComparison comparison =
        ReadingComparison.of(estimated, Settlement.begin("JM", Settlement.ESTIMATE));
    assertEquals(0, comparison.differences());
    assertTrue(comparison.b().independent());
    // One side told makes the silence about the others a difference.
    ReadingComparison half =
        compare(
            reading("JM", even(3)),
            reading("TK", changed(even(3), 1, slap -> slap.withSide(Side.UNKNOWN))));
    assertEquals(Set.of(What.SIDE), half.slaps().get(0).what());
  }

  @Test
  void spansOfOneKindAreTheSameFromHalfOverlapOn() throws SettleException {
    Span.SpanKind wrist = Span.SpanKind.BENT_WRIST;
    Reading a =
        reading(
            "JM", even(20), span(wrist, 1, 2), span(wrist, 3, 4), span(Span.SpanKind.PAUSE, 5, 6));
    Reading b =
        reading(
            "TK",
            even(20),
            span(wrist, 1.2, 2.2),
            span(wrist, 3.8, 5),
            span(Span.SpanKind.ELBOW_OUT, 5, 6));
    assertEquals(
        List.of(Set.of(What.ONLY_A), Set.of(What.ONLY_B), Set.of(What.APART)),
        compare(a, b).spans().stream().map(Difference::what).toList());
  }

  @Test
  void aConstantBetweenTheClocksIsTakenOffOnRequestOnly() throws SettleException {
    List<Slap> late = even(20).stream().map(slap -> at(slap, slap.timeS() + 0.07)).toList();
    Trial trial = trial(reading("JM", even(20)), reading("TK", late));
    Settlement terms = Settlement.begin("JM", "TK");
    assertEquals(20, ReadingComparison.of(trial, terms).differences());
    ReadingComparison removed = ReadingComparison.of(trial, terms.withTerms(null, true));
    assertEquals(0, removed.differences());
    assertEquals(0.07, removed.removedS(), 1e-9);
    Agreement agreement = Agreement.of(removed);
    assertEquals(0.07, agreement.offset().bias(), 1e-9);
  }

  @Test
  void toleranceIsInRealSecondsOfASlowedClip() throws SettleException {
    // Eight times slower: 0.16 media seconds are 20 ms.
    List<Slap> a = IntStream.range(0, 10).mapToObj(i -> palm(1 + 1.6 * i)).toList();
    List<Slap> b = a.stream().map(slap -> at(slap, slap.timeS() + 0.16)).toList();
    Trial trial = trial(TimeScale.uniform(0.125), null, reading("JM", a), reading("TK", b));
    ReadingComparison comparison = ReadingComparison.of(trial, Settlement.begin("JM", "TK"));
    assertEquals(1.0, comparison.matching().f());
    assertEquals(0.02, comparison.matching().pairs().get(3).differenceS(), 1e-9);
    assertEquals(
        0,
        ReadingComparison.of(trial, Settlement.begin("JM", "TK").withTerms(0.019, false))
            .matching()
            .pairs()
            .size());
  }

  @Test
  void marksOutsideTheStretchAreLeftOutAndCounted() throws SettleException {
    Trial trial =
        trial(TimeScale.REAL, 2.0, reading("JM", even(20)), reading("TK", without(even(20), 19)));
    ReadingComparison comparison = ReadingComparison.of(trial, Settlement.begin("JM", "TK"));
    assertEquals(6, comparison.a().slaps().size());
    assertEquals(14, comparison.a().outside());
    assertEquals(13, comparison.b().outside());
    assertEquals(0, comparison.differences());
  }

  @Test
  void anEmptyReadingMissesEverything() throws SettleException {
    ReadingComparison comparison = compare(reading("JM", even(4)), reading("TK", List.of()));
    assertEquals(4, comparison.differences());
    assertEquals(0.0, comparison.matching().f());
    ReadingComparison none = compare(reading("JM", List.of()), reading("TK", List.of()));
    assertEquals(0, none.differences());
    assertFalse(none.tolerance().tooFewFrames());
  }

  @Test
  void whatCannotBeComparedIsRefusedInOneLine() {
    Trial trial =
        trial(reading("JM", even(4))).withEstimate(Samples.estimate("1".repeat(64), 1, 1.2));
    assertEquals(
        "right-baseline-1: JM can't be compared with itself; name two readers",
        refusal(trial, "JM", "JM"));
    assertEquals("right-baseline-1: no reading by TK; there are JM", refusal(trial, "JM", "TK"));
    assertEquals(
        "right-baseline-1: the clip has changed since its estimate; estimate it again",
        refusal(trial, "JM", Settlement.ESTIMATE));
    assertEquals(
        "right-baseline-1: no estimate yet; make one first",
        refusal(trial(reading("JM", even(4))), "JM", Settlement.ESTIMATE));
  }

  @Test
  void aMatchedPairTellsWhetherItsLabelsAgree() throws SettleException {
    List<Slap> b = changed(even(3), 0, slap -> slap.withSide(Side.UNKNOWN));
    b = changed(b, 1, slap -> slap.withZone(Zone.EDGE));
    ReadingComparison comparison = compare(reading("JM", even(3)), reading("TK", b));
    List<Matching.Pair> pairs = comparison.matching().pairs();
    assertNull(comparison.sideAgrees(pairs.get(0)));
    assertEquals(true, comparison.sideAgrees(pairs.get(1)));
    assertEquals(false, comparison.zoneAgrees(pairs.get(1)));
    assertEquals(true, comparison.zoneAgrees(pairs.get(2)));
  }

  @ParameterizedTest
  @MethodSource("palmturn.settle.Samples#seeds")
  void theOtherWayRoundTheSameDifferencesAreFound(long seed) throws SettleException {
    Random random = new Random(seed);
    Reading a = reading("JM", Samples.anything(random));
    Reading b = reading("TK", Samples.anything(random));
    assertEquals(
        told(compare(a, b).slaps(), false),
        told(compare(b, a).slaps(), true),
        () -> "seed " + seed);
  }

  private static List<String> told(List<Difference<Slap>> differences, boolean turned) {
    return differences.stream()
        .map(each -> turned ? each.b() + " / " + each.a() : each.a() + " / " + each.b())
        .sorted()
        .toList();
  }

  @Test
  void threeThousandMarksInTenMinutesCompareWithinASecond() {
    Random random = new Random(71);
    List<Slap> a = even(3000);
    List<Slap> b =
        a.stream()
            .filter(slap -> random.nextInt(20) > 0)
            .map(slap -> at(slap, slap.timeS() + 0.012 * random.nextGaussian()))
            .toList();
    Trial trial = trial(reading("JM", a), reading("TK", b));
    ReadingComparison comparison =
        assertTimeout(
            Duration.ofSeconds(1), () -> ReadingComparison.of(trial, Settlement.begin("JM", "TK")));
    assertTrue(comparison.differences() > 100);
  }

  private static String refusal(Trial trial, String a, String b) {
    return assertThrows(
            SettleException.class, () -> ReadingComparison.of(trial, Settlement.begin(a, b)))
        .getMessage();
  }
}
