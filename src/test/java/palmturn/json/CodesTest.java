package palmturn.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import palmturn.advise.Caution;
import palmturn.advise.DrillAim;
import palmturn.advise.TrainedHand;
import palmturn.measure.CeilingScore;
import palmturn.measure.FaultKind;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.measure.SideScore;
import palmturn.settle.Difference;
import palmturn.trial.Coded;
import palmturn.trial.Decision;
import palmturn.trial.DrillHand;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** The words of files and printed forms, which a constant's new name must not change. */
class CodesTest {
  static Stream<Arguments> codes() {
    return Stream.of(
        of("left, right", Hand.class),
        of("palm, back, unknown", Side.class),
        of("centre, fingers, wrist, edge, unknown", Zone.class),
        of("picture, sound, motion, typed", TimedBy.class),
        of("true, false, unknown", Mirrored.class),
        of("left, right, both, none", DrillHand.class),
        of("slap, double, part-turn, missed, other", Slap.Kind.class),
        of("bent-wrist, elbow-out, target-moved, pause", Span.SpanKind.class),
        of("sound, motion, shape", Estimate.Source.class),
        of("first, second, neither, open", Decision.Choice.class),
        of("only-a, only-b, double, kind, apart, side, zone", Difference.What.class),
        of("speed, accuracy, rhythm, endurance, drift", Quality.class),
        of(
            "fingers, wrist, edge, double, part-turn, missed, other, bent-wrist, elbow-out,"
                + " target-moved",
            FaultKind.class),
        of("found, not-reached, under-filmed, cannot-tell", CeilingScore.CeilingOutcome.class),
        of(
            "balanced, weaker-left, weaker-right, unclear, cannot-tell",
            SideScore.SideVerdict.class),
        of("other-hand, rest, none", RetestScore.Control.class),
        of("better, worse, no-change, unclear, cannot-tell", RetestScore.ChangeVerdict.class),
        of("speed, accuracy, rhythm, endurance, drift, transfer", DrillAim.class),
        of("one, both, none", TrainedHand.class),
        of("no-diagnosis, urgent, pain, head-and-eyes, breath, sore, filming", Caution.class));
  }

  private static <E extends Enum<E> & Coded> Arguments of(String codes, Class<E> type) {
    return Arguments.of(codes, type);
  }

  @ParameterizedTest
  @MethodSource("codes")
  <E extends Enum<E> & Coded> void theWordsOfTheFilesStay(String codes, Class<E> type) {
    assertEquals(codes, Coded.codes(type));
  }
}
