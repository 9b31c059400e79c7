package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.estimate.motion.Blob;
import palmturn.estimate.motion.MovingRegions;
import palmturn.trial.Point;

class ElbowFinderTest {
  private static final int WIDTH = 160;
  private static final int HEIGHT = 90;
  private static final double PX_PER_CELL = 4;
  private static final int HAND_X = 90;
  private static final int ELBOW_X = 50;
  private static final int ARM_Y = 45;

  @Test
  void elbowIsWhereTheForearmsMotionEnds() {
    Point found = find(map(false), skin());
    assertNotNull(found);
    assertEquals(ELBOW_X * PX_PER_CELL, found.x(), 8 * PX_PER_CELL);
    assertEquals(ARM_Y * PX_PER_CELL, found.y(), 2 * PX_PER_CELL);
  }

  @Test
  void mirroredMapGivesTheMirroredPlace() {
    Point plain = find(map(false), skin());
    Point mirrored = find(map(true), skin());
    assertNotNull(plain);
    assertNotNull(mirrored);
    assertEquals(WIDTH * PX_PER_CELL - plain.x(), mirrored.x(), PX_PER_CELL);
    assertEquals(plain.y(), mirrored.y(), PX_PER_CELL);
  }

  @Test
  void handWithoutAForearmCanNotTell() {
    float[] round = new float[WIDTH * HEIGHT];
    for (int i = 0; i < round.length; i++) {
      double d = Math.hypot(i % WIDTH - HAND_X, i / WIDTH - ARM_Y);
      round[i] = (float) Math.max(0, 400 * (1 - d / 18) * (1 - d / 18) * (d < 18 ? 1 : 0));
    }
    assertNull(find(round, skin()));
  }

  @Test
  void pictureWithoutSkinCanNotTell() {
    byte[] gray = new byte[3 * WIDTH * HEIGHT];
    Arrays.fill(gray, (byte) 90);
    assertNull(find(map(false), gray));
  }

  @Test
  void noiseEverywhereCanNotTell() {
    float[] noise = new float[WIDTH * HEIGHT];
    Arrays.fill(noise, 100);
    assertNull(find(noise, skin()));
  }

  @Test
  void whatMovesBesideTheElbowDoesNotLeadAstrayWhereItIsKnownAbout() {
    float[] map = map(false);
    for (int y = ARM_Y; y < ARM_Y + 30; y++) {
      for (int x = ELBOW_X + 6; x < ELBOW_X + 12; x++) {
        map[y * WIDTH + x] = Math.max(map[y * WIDTH + x], 10);
      }
    }
    Point astray = find(map, skin());
    assertNotNull(astray);
    assertTrue(astray.y() > (ARM_Y + 20) * PX_PER_CELL);
    Point about = new Point((ELBOW_X + 4) * PX_PER_CELL, (ARM_Y - 5) * PX_PER_CELL);
    Point found = find(map, skin(), new ElbowFinder.SearchArea(about, 12 * PX_PER_CELL));
    assertNotNull(found);
    assertEquals(ELBOW_X * PX_PER_CELL, found.x(), 10 * PX_PER_CELL);
    assertEquals(ARM_Y * PX_PER_CELL, found.y(), 6 * PX_PER_CELL);
  }

  @Test
  void motionThatEndsElsewhereThanTheElbowIsKnownAboutCanNotTell() {
    Point about = new Point((ELBOW_X - 10) * PX_PER_CELL, (ARM_Y - 30) * PX_PER_CELL);
    assertNull(find(map(false), skin(), new ElbowFinder.SearchArea(about, 12 * PX_PER_CELL)));
  }

  private static @Nullable Point find(float[] map, byte[] bgr) {
    return find(map, bgr, null);
  }

  private static @Nullable Point find(
      float[] map, byte[] bgr, ElbowFinder.@Nullable SearchArea about) {
    Blob hand = MovingRegions.blobs(map, WIDTH).get(0);
    return ElbowFinder.find(map, WIDTH, PX_PER_CELL, bgr, hand, about);
  }

  /** Speed falls off from the hand to the elbow, in proportion to the way from there. */
  private static float[] map(boolean mirrored) {
    float[] map = new float[WIDTH * HEIGHT];
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        double speed = Math.max(0, 20.0 * (x - ELBOW_X) / (HAND_X - ELBOW_X));
        boolean arm = Math.abs(y - ARM_Y) <= 6 && x <= HAND_X + 10;
        int at = mirrored ? WIDTH - 1 - x : x;
        map[y * WIDTH + at] = arm ? (float) (speed * speed) : 0;
      }
    }
    return map;
  }

  private static byte[] skin() {
    byte[] bgr = new byte[3 * WIDTH * HEIGHT];
    for (int i = 0; i < bgr.length; i += 3) {
      bgr[i] = 90;
      bgr[i + 1] = 120;
      bgr[i + 2] = (byte) 180;
    }
    return bgr;
  }
}
