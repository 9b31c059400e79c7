package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import palmturn.estimate.hands.HandFollower.TimedHand;

/** Turns of made-up hands, whose angles from lying open to the camera are known. */
class TurnRangeTest {
  private static final int N = 25;
  private static final int FRAMES_A_TURN = 12;
  private static final List<PosedContact> TOUCHES = MadeHands.alternating(N);
  private static final List<Boolean> CENTRAL = Collections.nCopies(N, true);

  /** Returns a hand that goes evenly from one contact's angle to the next one's. */
  private static HandPaths turning(IntToDoubleFunction degrees) {
    List<TimedHand> moving = new ArrayList<>();
    for (int i = 0; i < N; i++) {
      double to = i + 1 < N ? degrees.applyAsDouble(i + 1) : degrees.applyAsDouble(i);
      for (int frame = 0; frame < FRAMES_A_TURN; frame++) {
        double share = Math.max(0, Math.min(1, (frame - 2.5) / (FRAMES_A_TURN - 6)));
        double deg = degrees.applyAsDouble(i) * (1 - share) + to * share;
        double timeS = TOUCHES.get(i).timeS() + frame * 0.2 / FRAMES_A_TURN;
        moving.add(new TimedHand(timeS, MadeHands.moving(0, Math.cos(Math.toRadians(deg)))));
      }
    }
    return new HandPaths(true, moving, List.of(), MadeHands.TARGET);
  }

  private static double shrinking(int i, double first, double last) {
    return first + (last - first) * i / (N - 1);
  }

  @Test
  void aHalfTurnIsToldInDegreesWhateverTheCameraSeesOfIt() {
    for (double open : new double[] {20, 40, 60}) {
      TurnRange range =
          TurnRange.of(turning(i -> i % 2 == 0 ? open + 180 : open), TOUCHES, CENTRAL);
      assertNotNull(range, "open by " + open);
      assertEquals(N - 1, range.turns().size());
      assertEquals(180, range.medianDeg(), 1);
      assertNotNull(range.change());
      assertEquals(0, range.change().lastDeg() - range.change().firstDeg(), 1);
    }
  }

  @Test
  void aTurnThatShrinksIsToldWithAnIntervalUnder0() {
    HandPaths paths = turning(i -> i % 2 == 0 ? shrinking(i, 220, 200) : shrinking(i, 40, 60));
    TurnRange.Change change = TurnRange.of(paths, TOUCHES, CENTRAL).change();
    assertNotNull(change);
    // From 180 to 140 in all: the middles of the outer thirds are two thirds of that apart.
    assertEquals(180 - 40 / 6.0, change.firstDeg(), 2);
    assertEquals(140 + 40 / 6.0, change.lastDeg(), 2);
    assertTrue(change.interval().contains(-40 * 2 / 3.0) && change.interval().high() < 0);
  }

  @Test
  void whichWayRoundTheHandGoesIsSeenBetweenTheContacts() {
    // The same two looks are 150 degrees apart by the back, 210 by the palm.
    TurnRange byBack = TurnRange.of(turning(i -> i % 2 == 0 ? 205 : 55), TOUCHES, CENTRAL);
    TurnRange byPalm = TurnRange.of(turning(i -> i % 2 == 0 ? -155 : 55), TOUCHES, CENTRAL);
    assertNotNull(byBack);
    assertNotNull(byPalm);
    assertEquals(150, byBack.medianDeg(), 3);
    assertEquals(210, byPalm.medianDeg(), 3);
  }

  @Test
  void aSecondContactByTheSameSideIsNoTurn() {
    List<PosedContact> touches = new ArrayList<>(TOUCHES);
    touches.set(6, new PosedContact(touches.get(6).timeS(), touches.get(5).pose(), 0.9));
    TurnRange range = TurnRange.of(turning(i -> i % 2 == 0 && i != 6 ? 220 : 40), touches, CENTRAL);
    assertNotNull(range);
    assertEquals(N - 3, range.turns().size());
  }

  @Test
  void contactsOffTheCentreAreNoMeasureOfTheTurn() {
    List<Boolean> central = new ArrayList<>(CENTRAL);
    central.set(3, false);
    central.set(10, false);
    HandPaths paths = turning(i -> i == 3 ? 90 : i == 10 ? 150 : i % 2 == 0 ? 220 : 40);
    TurnRange range = TurnRange.of(paths, TOUCHES, central);
    assertNotNull(range);
    assertEquals(N - 5, range.turns().size());
    assertTrue(range.turns().stream().allMatch(turn -> Math.abs(turn.deg() - 180) < 2));
  }

  @Test
  void aSideThatIsSeenEdgeOnOrScattersTellsNothing() {
    assertNull(TurnRange.of(turning(i -> i % 2 == 0 ? 260 : 80), TOUCHES, CENTRAL));
    HandPaths scattered = turning(i -> i % 2 == 0 ? 220 : i % 4 == 1 ? 30 : 60);
    assertNull(TurnRange.of(scattered, TOUCHES, CENTRAL));
    assertNull(TurnRange.of(turning(i -> 40), MadeHands.alternating(3), CENTRAL));
  }

  @Test
  void aHandThatIsNotSeenBetweenItsContactsTellsNothing() {
    HandPaths paths = turning(i -> i % 2 == 0 ? 220 : 40);
    List<TimedHand> near =
        paths.moving().stream()
            .filter(
                seen ->
                    TOUCHES.stream()
                        .anyMatch(touch -> Math.abs(touch.timeS() - seen.timeS()) < 0.05))
            .toList();
    HandPaths contacts = new HandPaths(true, near, List.of(), MadeHands.TARGET);
    assertNull(TurnRange.of(contacts, TOUCHES, CENTRAL));
  }
}
