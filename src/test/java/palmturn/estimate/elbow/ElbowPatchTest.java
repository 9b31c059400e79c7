package palmturn.estimate.elbow;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.function.ToDoubleBiFunction;
import org.bytedeco.opencv.opencv_core.Mat;
import org.junit.jupiter.api.Test;
import palmturn.estimate.image.Similarity;
import palmturn.trial.Point;

class ElbowPatchTest {
  private static final int WIDTH = 240;
  private static final int HEIGHT = 180;
  private static final Point AT = new Point(119, 90);
  private static final double RADIUS_PX = 30;

  @Test
  void turnSizeAndShiftAreFound() {
    Similarity found = follow(new Similarity(1.02, 0.08, 3.3, -2.6));
    assertNotNull(found);
    assertEquals(1.02, found.a(), 0.01);
    assertEquals(0.08, found.b(), 0.01);
    assertEquals(3.3, found.dx(), 0.1);
    assertEquals(-2.6, found.dy(), 0.1);
  }

  @Test
  void mirroredPictureGivesTheMirroredWay() {
    Similarity moved = new Similarity(1, 0.06, 4, 1.5);
    Similarity plain = follow(moved);
    Similarity mirrored = follow(moved, true);
    assertNotNull(plain);
    assertNotNull(mirrored);
    assertEquals(plain.dx(), -mirrored.dx(), 0.05);
    assertEquals(plain.dy(), mirrored.dy(), 0.05);
    assertEquals(plain.b(), -mirrored.b(), 0.005);
  }

  @Test
  void coveredElbowIsLostAndFoundAgain() {
    try (Mat first = picture(ElbowPatchTest::texture);
        Mat covered = picture((x, y) -> 128 + 60 * Math.sin(x * 0.9 + 1));
        Mat again = picture((x, y) -> texture(x - 2, y))) {
      ElbowPatch patch = new ElbowPatch(first, AT, RADIUS_PX, all());
      assertNull(patch.follow(covered, how -> true));
      Similarity found = patch.follow(again, how -> true);
      assertNotNull(found);
      assertEquals(2, found.dx(), 0.1);
    }
  }

  @Test
  void elbowThatMovedWhileCoveredIsSearchedFor() {
    try (Mat first = picture(ElbowPatchTest::texture);
        Mat covered = picture((x, y) -> 30.0);
        Mat again = picture((x, y) -> texture(x - 17, y + 11))) {
      ElbowPatch patch = new ElbowPatch(first, AT, RADIUS_PX, all());
      assertNull(patch.follow(covered, how -> true));
      assertNull(patch.find(again, 12, how -> Math.hypot(how.dx(), how.dy()) <= 12));
      Similarity found = patch.find(again, 30, how -> true);
      assertNotNull(found);
      assertEquals(17, found.dx(), 0.1);
      assertEquals(-11, found.dy(), 0.1);
    }
  }

  @Test
  void whatIsOnlySomewhatLikeItIsFollowedButNotFound() {
    ToDoubleBiFunction<Integer, Integer> faded =
        (x, y) -> texture(x, y) + 25 * Math.sin(0.5 * x) * Math.sin(0.4 * y);
    try (Mat first = picture(ElbowPatchTest::texture);
        Mat covered = picture((x, y) -> 30.0);
        Mat alike = picture(faded)) {
      ElbowPatch patch = new ElbowPatch(first, AT, RADIUS_PX, all());
      assertNotNull(patch.follow(first, how -> true));
      assertNotNull(patch.follow(alike, how -> true));
      for (int frame = 0; frame < 20; frame++) {
        assertNotNull(patch.follow(first, how -> true));
      }
      assertNull(patch.follow(covered, how -> true));
      assertNull(patch.find(alike, 12, how -> true));
      assertNotNull(patch.find(first, 12, how -> true));
    }
  }

  @Test
  void evenSurfaceCanNotBeFollowed() {
    try (Mat even = picture((x, y) -> 100.0)) {
      assertFalse(new ElbowPatch(even, AT, RADIUS_PX, all()).usable());
    }
  }

  @Test
  void elbowThatLeavesThePictureIsLost() {
    try (Mat first = picture(ElbowPatchTest::texture)) {
      ElbowPatch patch = new ElbowPatch(first, new Point(40, 90), RADIUS_PX, all());
      boolean seen = true;
      for (int step = 0; step <= 60 && seen; step += 2) {
        int by = step;
        try (Mat next = picture((x, y) -> x + by < 70 + by ? texture(x + by, y) : 30)) {
          seen = patch.follow(next, how -> true) != null;
        }
      }
      assertFalse(seen);
    }
  }

  private static Similarity follow(Similarity moved) {
    return follow(moved, false);
  }

  private static Similarity follow(Similarity moved, boolean mirrored) {
    Similarity back = moved.inverse();
    try (Mat first = picture((x, y) -> texture(mirrored ? WIDTH - 2 - x : x, y));
        Mat second =
            picture(
                (x, y) -> {
                  double seenX = mirrored ? WIDTH - 2 - x : x;
                  Point from = back.apply(new Point(seenX - AT.x(), y - AT.y()));
                  return texture(from.x() + AT.x(), from.y() + AT.y());
                })) {
      return new ElbowPatch(first, AT, RADIUS_PX, all()).follow(second, how -> true);
    }
  }

  private static double texture(double x, double y) {
    return 128
        + 30 * Math.sin(0.09 * x + 0.05 * y)
        + 25 * Math.sin(0.06 * x - 0.11 * y + 1)
        + 15 * Math.sin(0.21 * x + 2);
  }

  private static boolean[] all() {
    boolean[] all = new boolean[WIDTH * HEIGHT];
    Arrays.fill(all, true);
    return all;
  }

  private static Mat picture(ToDoubleBiFunction<Integer, Integer> gray) {
    byte[] bytes = new byte[WIDTH * HEIGHT];
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        bytes[y * WIDTH + x] = (byte) Math.round(gray.applyAsDouble(x, y));
      }
    }
    Mat mat = new Mat(HEIGHT, WIDTH, CV_8UC1);
    ByteBuffer buffer = mat.createBuffer();
    buffer.put(bytes);
    return mat;
  }
}
