package palmturn.app.stage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Estimate;

class FramingTest {
  /** A picture half as large again as the pane. */
  private static final Framing.Sizes ROOM = new Framing.Sizes(640, 480, 960, 720);

  @Test
  void wholePictureFitsAndLiesInTheMiddle() {
    Framing.Placement lie = Framing.WHOLE.place(new Framing.Sizes(1000, 480, 960, 720));
    assertEquals(480 / 720.0, lie.scale());
    assertEquals(180, lie.left());
    assertEquals(0, lie.top());
  }

  @Test
  void pixelUnderThePointerStaysThereWhileZooming() {
    Framing.Placement before = Framing.WHOLE.place(ROOM);
    Framing close = Framing.WHOLE.zoomed(4, 200, 300, ROOM);
    Framing.Placement after = close.place(ROOM);
    assertEquals(4 * before.scale(), after.scale(), 1e-12);
    // The picture begins on a whole pixel of the screen.
    assertEquals(before.pictureX(200), after.pictureX(200), 0.5 / after.scale());
    assertEquals(before.pictureY(300), after.pictureY(300), 0.5 / after.scale());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void roomThatCanBeFilledIsNeverLeftEmpty(long seed) {
    Random random = new Random(seed);
    Framing framing = Framing.WHOLE;
    for (int i = 0; i < 200; i++) {
      framing =
          random.nextBoolean()
              ? framing.zoomed(0.3 + 2 * random.nextDouble(), any(random), any(random), ROOM)
              : framing.shifted(any(random) - 320, any(random) - 240, ROOM);
      Framing.Placement lie = framing.place(ROOM);
      assertTrue(lie.left() <= 0 && lie.left() + 960 * lie.scale() >= 640 - 1, lie.toString());
      assertTrue(lie.top() <= 0 && lie.top() + 720 * lie.scale() >= 480 - 1, lie.toString());
      assertTrue(framing.zoom() >= 1 && framing.zoom() <= 32);
    }
  }

  @Test
  void aShiftAtTheEdgeLeavesNothingToBeShiftedBackFirst() {
    Framing edge = Framing.WHOLE.zoomed(2, 320, 240, ROOM).shifted(100_000, 0, ROOM);
    assertEquals(0, edge.place(ROOM).left());
    assertEquals(-50, edge.shifted(-50, 0, ROOM).place(ROOM).left());
  }

  @Test
  void handsAreShownWholeWithRoomAround() {
    Estimate.Region hands = new Estimate.Region(300, 400, 120, 60);
    Framing.Placement lie = Framing.zoomedTo(hands, ROOM).place(ROOM);
    assertEquals(640 / 180.0, lie.scale(), 1e-9);
    assertEquals(360, lie.pictureX(320), 0.5);
    assertEquals(430, lie.pictureY(240), 0.5);
  }

  private static double any(Random random) {
    return random.nextDouble() * 640;
  }
}
