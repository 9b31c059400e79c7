package palmturn.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;
import static palmturn.advise.MadeEvidence.Figures.GOOD;
import static palmturn.advise.MadeEvidence.good;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import palmturn.json.DrillsJson;
import palmturn.measure.Quality;
import palmturn.measure.SideScore.SideVerdict;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** Each rule fires at its limit and not beside it. */
class RulesTest {
  private static final String BASE = "baseline";
  private static final DrillLibrary LIBRARY = DrillsJson.standard();

  static Stream<Arguments> cases() {
    return Stream.of(
        arguments("all is well", good(), "5 both"),
        // Rule 0.
        arguments("no left trial", good().trials(Hand.LEFT, BASE), "0 none"),
        arguments("one left trial", good().trials(Hand.LEFT, BASE, GOOD), "0 none"),
        arguments("two left trials", good().trials(Hand.LEFT, BASE, GOOD, GOOD), "5 both"),
        arguments("left not in the last block", good().hand(Hand.RIGHT, "after-1", GOOD), "0 none"),
        arguments("slow motion", right(GOOD.refused("slowed down in part")), "0 none"),
        arguments("no rate", right(GOOD.rate(null)), "0 none"),
        arguments("an unknown zone", right(GOOD.clean(null)), "0 none"),
        arguments("typed along", right(GOOD.cv(null, 0)), "0 none"),
        // √(9² − 5²) = 7.48 is within 8, √(9² − 4²) = 8.06 is over.
        arguments("over by the marks' coarseness alone", right(GOOD.cv(9.0, 5)), "0 none"),
        arguments("over without it", right(GOOD.cv(9.0, 4)), "3 right rhythm"),
        // Rule 1.
        arguments("left slower", side(Quality.SPEED, SideVerdict.WEAKER_LEFT), "1 left speed"),
        arguments("right slower", side(Quality.SPEED, SideVerdict.WEAKER_RIGHT), "1 right speed"),
        arguments("unclear", side(Quality.SPEED, SideVerdict.UNCLEAR), "5 both"),
        arguments("balanced", side(Quality.SPEED, SideVerdict.BALANCED), "5 both"),
        arguments("less even", side(Quality.RHYTHM, SideVerdict.WEAKER_RIGHT), "1 right rhythm"),
        arguments("tires", side(Quality.ENDURANCE, SideVerdict.WEAKER_LEFT), "1 left endurance"),
        arguments(
            "both of one hand",
            side(Quality.SPEED, SideVerdict.WEAKER_LEFT)
                .side(BASE, Quality.ACCURACY, SideVerdict.WEAKER_LEFT),
            "1 left speed, 1 left accuracy"),
        arguments(
            "trade-off",
            side(Quality.SPEED, SideVerdict.WEAKER_LEFT)
                .side(BASE, Quality.ACCURACY, SideVerdict.WEAKER_RIGHT),
            "1 both"),
        arguments(
            "trade-off and rhythm",
            side(Quality.SPEED, SideVerdict.WEAKER_RIGHT)
                .side(BASE, Quality.ACCURACY, SideVerdict.WEAKER_LEFT)
                .side(BASE, Quality.RHYTHM, SideVerdict.WEAKER_LEFT),
            "1 both, 1 left rhythm"),
        arguments(
            "an earlier block's difference",
            side(Quality.SPEED, SideVerdict.WEAKER_LEFT)
                .hand(Hand.LEFT, "after-1", GOOD)
                .hand(Hand.RIGHT, "after-1", GOOD),
            "5 both"),
        // Rule 2.
        arguments("just clean", right(GOOD.clean(80.0)), "5 both"),
        arguments("just not clean", right(GOOD.clean(79.9)), "2 right accuracy"),
        arguments("elbow just in", right(GOOD.elbow(3.0)), "5 both"),
        arguments("elbow just out", right(GOOD.elbow(3.01)), "2 right drift"),
        arguments("elbow not tracked", right(GOOD.elbow(null)), "5 both"),
        // Rule 3.
        arguments("fast enough", good().minRate(5.0), "5 both"),
        arguments("too slow", good().minRate(5.01), "3 left speed, 3 right speed"),
        arguments(
            "too slow, and not clean",
            right(GOOD.clean(79.0)).minRate(5.01),
            "2 right accuracy, 3 left speed"),
        arguments(
            "too slow, elbow out",
            right(GOOD.elbow(4.0)).minRate(5.01),
            "2 right drift, 3 left speed"),
        // 10 % under 5.555 is 4.9995.
        arguments("near its best", good().best(Hand.LEFT, 5.555), "5 both"),
        arguments("under its best", good().best(Hand.LEFT, 5.56), "3 left speed"),
        arguments(
            "under its own baseline",
            good()
                .hand(Hand.LEFT, "after-1", GOOD.rate(4.4))
                .hand(Hand.RIGHT, "after-1", GOOD.rate(4.6)),
            "3 left speed"),
        arguments("just even", right(GOOD.cv(8.0, 0)), "5 both"),
        arguments("just uneven", right(GOOD.cv(8.01, 0)), "3 right rhythm"),
        arguments("uneven, not clean", right(GOOD.cv(9.0, 0).clean(70.0)), "2 right accuracy"),
        // Rule 4.
        arguments("just lasting", right(GOOD.slowDown(3.0)), "5 both"),
        arguments("just not lasting", right(GOOD.slowDown(3.01)), "4 right endurance"),
        arguments("speeds up", right(GOOD.slowDown(-4.0)), "5 both"),
        arguments(
            "everything",
            right(GOOD.clean(70.0).slowDown(4.0))
                .trials(Hand.LEFT, BASE, GOOD.cv(9.0, 0))
                .side(BASE, Quality.SPEED, SideVerdict.WEAKER_RIGHT),
            "0 none, 1 right speed, 2 right accuracy, 3 left rhythm, 4 right endurance"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void firesAtItsLimitAndNotBesideIt(String name, MadeEvidence evidence, String expected) {
    assertEquals(
        expected,
        String.join(
            ", ",
            advise(evidence).stream()
                .map(
                    each ->
                        "%d %s%s"
                            .formatted(
                                each.rule(),
                                each.hand().code(),
                                each.quality() == null ? "" : " " + each.quality().code()))
                .toList()));
  }

  @Test
  void theFiguresThatFiredItAreSaid() {
    Advice slower = advise(side(Quality.SPEED, SideVerdict.WEAKER_LEFT)).get(0);
    assertEquals(
        "The left hand is slower: 4.00 slaps/s against 5.00, a difference of 1.00 slaps/s (0.50 to 1.50).",
        slower.why());
    Advice clean = advise(right(GOOD.clean(70.0))).get(0);
    assertTrue(
        clean.why().startsWith("The right hand: clean share 70 % (65 to 75), and"), clean.why());
    assertTrue(clean.why().contains("at least 80 %. Most often: edge, 90 of 300"), clean.why());
    Advice best = advise(good().best(Hand.LEFT, 6)).get(0);
    assertTrue(best.why().contains("17 % under its own best on file, 6.00"), best.why());
  }

  @Test
  void aMeanOverItsLimitWhoseIntervalHoldsTheLimitIsNotBeyondDoubt() {
    Advice scattered =
        advise(
                good()
                    .trials(
                        Hand.RIGHT,
                        BASE,
                        GOOD.slowDown(1.0),
                        GOOD.slowDown(4.0),
                        GOOD.slowDown(7.0)))
            .get(0);
    assertEquals(4, scattered.rule());
    assertFalse(scattered.sure());
    assertTrue(
        scattered.why().endsWith("The interval holds the limit, so this is not beyond doubt."));
    Advice alike = advise(right(GOOD.slowDown(4.0))).get(0);
    assertTrue(alike.sure());
    assertFalse(alike.why().contains("doubt"));
  }

  @Test
  void threeTrialsThatHappenToAgreeAreNoSurerThanTheirSlaps() {
    // 235 of 300 clean: Wilson's interval is 73.3 to 82.6, though the trials' means hardly differ.
    Advice near = advise(right(GOOD.clean(78.3))).get(0);
    assertFalse(near.sure(), near.why());
  }

  @Test
  void filmingAgainSaysWhatIsMissingAndWhatTheClipHas() {
    Advice again =
        advise(
                right(GOOD.refused("slowed down in part"))
                    .warn(new TrialId(Hand.RIGHT, BASE, 2), "the picture is dark")
                    .warn(new TrialId(Hand.LEFT, BASE, 1), "no sound"))
            .get(0);
    assertTrue(
        again
            .why()
            .startsWith(
                "No speed, rhythm or slow-down from all trials of the right hand in baseline: slowed"
                    + " down in part."),
        again.why());
    assertTrue(again.why().contains("right-baseline-2: the picture is dark."), again.why());
    Advice one = advise(good().trials(Hand.RIGHT, BASE, GOOD, GOOD.clean(null), GOOD)).get(0);
    assertEquals(
        "Where the hand touched is unknown for at least one slap in right-baseline-2.", one.why());
    assertFalse(again.why().contains("no sound"), "the left hand's clip stands in nobody's way");
    assertTrue(again.action().contains("real speed"), again.action());
  }

  @Test
  void drillsAreThoseOfTheQualityInTheLibrarysOrder() {
    assertEquals(
        List.of("paced-flips", "racket-eights", "wrist-finger-circles", "head-turns"),
        advise(right(GOOD.clean(70.0))).get(0).drills());
    assertEquals(List.of("towel-flips"), advise(right(GOOD.elbow(5.0))).get(0).drills());
    assertEquals(List.of("long-paced-sets"), advise(right(GOOD.slowDown(5.0))).get(0).drills());
    assertEquals(
        List.of("pace-steps", "near-far-focus", "gaze-circles", "paced-breathing"),
        advise(good().minRate(6)).get(0).drills());
    assertEquals(List.of("shuttle-keep-ups", "slow-strokes"), advise(good()).get(0).drills());
  }

  @Test
  void theCleanCeilingIsNamedWhereItIsKnown() {
    assertTrue(
        advise(right(GOOD.clean(70.0)).ceiling(Hand.RIGHT, 4.2)).get(0).action().contains("4.2"));
    assertTrue(advise(right(GOOD.clean(70.0))).get(0).action().contains("not known"));
  }

  private static MadeEvidence right(MadeEvidence.Figures each) {
    return good().hand(Hand.RIGHT, BASE, each);
  }

  private static MadeEvidence side(Quality quality, SideVerdict verdict) {
    return good().side(BASE, quality, verdict);
  }

  private static List<Advice> advise(MadeEvidence evidence) {
    return Training.of(evidence.made(), LIBRARY).advice();
  }
}
