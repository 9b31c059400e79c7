package palmturn.app.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

class TrialAssignmentTest {
  private static final TrialCandidate ONE = TrialCandidate.whole(Path.of("a.mp4"));

  @Test
  void handsTakeTurnsFromTheFirst() {
    assertEquals(
        List.of("right-baseline-1", "left-baseline-1", "right-baseline-2", "left-baseline-2"),
        names(List.of(ONE, ONE, ONE, ONE), Hand.RIGHT, null, Set.of()));
    assertEquals(
        List.of("left-baseline-1", "right-baseline-1"),
        names(List.of(ONE, ONE), Hand.LEFT, null, Set.of()));
  }

  @Test
  void attemptLeftOutTakesNoTurn() {
    assertEquals(
        List.of("right-baseline-1", "-", "left-baseline-1"),
        names(List.of(ONE, ONE.withIncluded(false), ONE), Hand.RIGHT, null, Set.of()));
  }

  @Test
  void handSaidForOneGoesOnTakingTurnsFromThere() {
    assertEquals(
        List.of("right-baseline-1", "right-baseline-2", "left-baseline-1"),
        names(List.of(ONE, ONE.withHand(Hand.RIGHT), ONE), Hand.RIGHT, null, Set.of()));
  }

  @Test
  void placesThatAreTakenAreSkipped() {
    assertEquals(
        List.of("right-baseline-2", "left-baseline-1"),
        names(List.of(ONE, ONE), Hand.RIGHT, null, Set.of(TrialId.parse("right-baseline-1"))));
  }

  @Test
  void firstGoesToThePlaceItWasDroppedOn() {
    TrialId start = TrialId.parse("left-baseline-3");
    assertEquals(
        List.of("left-baseline-3", "right-baseline-1"),
        names(List.of(ONE, ONE), Hand.LEFT, start, Set.of()));
    assertEquals(List.of("right-baseline-1"), names(List.of(ONE), Hand.RIGHT, start, Set.of()));
  }

  private static List<String> names(
      List<TrialCandidate> attempts, Hand first, TrialId start, Set<TrialId> there) {
    return TrialAssignment.places(attempts, first, "baseline", start, there).stream()
        .map(id -> id == null ? "-" : id.name())
        .toList();
  }
}
