package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Palm from back by what made-up hands show. */
class ShownSidesTest {
  private static final int N = 12;

  /** Palm slaps first: they show the back of the hand. */
  private static List<HandMarks> hands(double byPalm, double byBack) {
    return IntStream.range(0, N)
        .mapToObj(i -> MadeHands.moving(0, i % 2 == 0 ? byPalm : byBack))
        .toList();
  }

  @Test
  void theHandThatShowsMoreOfItsBackCameDownWithItsPalm() {
    List<PosedContact> touches = MadeHands.alternating(N);
    ShownSides sides = ShownSides.of(MadeHands.paths(touches, hands(-0.7, 0.5)), touches, true);
    assertNotNull(sides);
    assertEquals(1, sides.palmPose());
    ShownSides other = ShownSides.of(MadeHands.paths(touches, hands(0.5, -0.7)), touches, true);
    assertNotNull(other);
    assertEquals(-1, other.palmPose());
  }

  @Test
  void oneContactThatMotionHasWrongIsSetRight() {
    List<PosedContact> touches = new ArrayList<>(MadeHands.alternating(N));
    touches.set(5, new PosedContact(touches.get(5).timeS(), 1, 0.9));
    ShownSides sides = ShownSides.of(MadeHands.paths(touches, hands(-0.7, 0.5)), touches, true);
    assertNotNull(sides);
    assertEquals(-1, sides.poses().get(5));
    assertTrue(sides.confidences().get(5) < sides.confidences().get(4));
  }

  @Test
  void withoutTurnsByMotionTheShapeAloneTellsThem() {
    List<PosedContact> touches =
        IntStream.range(0, N).mapToObj(i -> new PosedContact(1 + 0.2 * i, 1, 0.9)).toList();
    ShownSides sides = ShownSides.of(MadeHands.paths(touches, hands(-0.7, 0.5)), touches, false);
    assertNotNull(sides);
    assertEquals(1, sides.alternation());
    assertEquals(sides.poses().get(0), sides.palmPose());
    assertEquals(-sides.palmPose(), sides.poses().get(1));
  }

  @Test
  void handsThatLookAlikeOnBothSidesTellNothing() {
    List<PosedContact> touches = MadeHands.alternating(N);
    assertNull(ShownSides.of(MadeHands.paths(touches, hands(-0.3, -0.25)), touches, true));
  }

  @Test
  void aTargetThatDoesNotShowItsPalmTellsNothing() {
    List<PosedContact> touches = MadeHands.alternating(N);
    HandPaths seen = MadeHands.paths(touches, hands(-0.7, 0.5));
    HandMarks turned = MadeHands.hand(300, 300, Math.PI, -0.7);
    assertNull(ShownSides.of(new HandPaths(true, seen.moving(), List.of(), turned), touches, true));
  }

  @Test
  void contactsThatWereNotSeenKeepTheSideOfTheirMotion() {
    List<PosedContact> touches = MadeHands.alternating(N + 2);
    ShownSides sides = ShownSides.of(MadeHands.paths(touches, hands(-0.7, 0.5)), touches, true);
    assertNotNull(sides);
    assertEquals(1, sides.poses().get(N));
    assertEquals(-1, sides.poses().get(N + 1));
    assertNull(sides.shown().get(N));
  }

  @Test
  void aTurnThatIsCutShortIsToldFromFullOnes() {
    List<PosedContact> touches = MadeHands.alternating(N);
    List<HandMarks> hands = new ArrayList<>(hands(-0.7, 0.5));
    hands.set(3, MadeHands.moving(0, 0.05));
    ShownSides sides = ShownSides.of(MadeHands.paths(touches, hands), touches, true);
    assertNotNull(sides);
    assertEquals(List.of(3), IntStream.range(0, N).filter(sides.cutShort()::get).boxed().toList());
  }

  @Test
  void aSideThatIsSeenBadlyDoesNotOutweighItsMotion() {
    List<PosedContact> touches = MadeHands.alternating(2 * N);
    double[] byBack = {0.4, -0.4, 0.1, -0.6, 0.3, -0.2};
    List<HandMarks> hands =
        IntStream.range(0, 2 * N)
            .mapToObj(i -> MadeHands.moving(0, i % 2 == 0 ? -0.75 : byBack[i / 2 % byBack.length]))
            .toList();
    ShownSides sides = ShownSides.of(MadeHands.paths(touches, hands), touches, true);
    assertNotNull(sides);
    assertEquals(touches.stream().map(PosedContact::pose).toList(), sides.poses());
    assertTrue(sides.confidences().get(7) < sides.confidences().get(1));
  }
}
