package palmturn.estimate.hands;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SquareTest {
  @Test
  void aSquareTurnedByAQuarterHasItsTopAtTheRight() {
    Square square = new Square(100, 200, 40, Math.PI / 2);
    double[][] corners = {{0, 0, 120, 180}, {1, 0, 120, 220}, {1, 1, 80, 220}, {0, 1, 80, 180}};
    for (double[] each : corners) {
      assertEquals(each[2], square.toX(each[0], each[1]), 1e-9);
      assertEquals(each[3], square.toY(each[0], each[1]), 1e-9);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3, 1.2, Math.PI / 2, 2.5, -0.7, -3})
  void whatIsCutLiesWhereItsPlacesLead(double turn) {
    Square square = new Square(70, 60, 50, turn);
    int n = 100;
    try (Scalar black = new Scalar(0);
        Mat picture = new Mat(120, 140, CV_8UC3, black)) {
      // A slope to the right in blue and one downwards in green: a colour tells its place.
      try (UByteIndexer at = picture.createIndexer()) {
        for (int y = 0; y < 120; y++) {
          for (int x = 0; x < 140; x++) {
            at.put(y, x, new int[] {x, 2 * y, 0});
          }
        }
      }
      try (Mat cut = square.cut(picture, n);
          UByteIndexer at = cut.createIndexer()) {
        for (int v = 0; v <= 80; v += 20) {
          for (int u = 0; u <= 80; u += 20) {
            double x = square.toX(u / 100.0, v / 100.0);
            double y = square.toY(u / 100.0, v / 100.0);
            assertEquals(x, at.get(v, u, 0), 0.6, "across at " + u + ", " + v);
            assertEquals(2 * y, at.get(v, u, 1), 0.7, "down at " + u + ", " + v);
          }
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3, -1.6, -0.4, 0.4, 1.6, 3})
  void theSquareAboutAHandTurnsAndGrowsWithIt(double turn) {
    HandMarks hand = HandMarksTest.made(true, true);
    Square still = Square.around(hand);
    Square moved = Square.around(HandMarksTest.turned(hand, turn, 3, 500, 400));
    assertEquals(3 * still.side(), moved.side(), 1e-9);
    assertEquals(0, HandMarks.angle(still.turn() + turn, moved.turn()), 1e-9);
    double cos = 3 * Math.cos(turn);
    double sin = 3 * Math.sin(turn);
    assertEquals(cos * still.x() - sin * still.y() + 500, moved.x(), 1e-9);
    assertEquals(sin * still.x() + cos * still.y() + 400, moved.y(), 1e-9);
  }

  @Test
  void theSquareAboutAHandHoldsAllOfIt() {
    HandMarks hand = HandMarksTest.turned(HandMarksTest.made(false, true), 2, 1, 300, 300);
    Square square = Square.around(hand);
    double cos = Math.cos(square.turn());
    double sin = Math.sin(square.turn());
    for (int i = 0; i < HandMarks.SIZE; i++) {
      double x = hand.x()[i] - square.x();
      double y = hand.y()[i] - square.y();
      assertTrue(Math.abs(cos * x + sin * y) < square.side() / 2, "across " + i);
      assertTrue(Math.abs(cos * y - sin * x) < square.side() / 2, "along " + i);
    }
  }

  @Test
  void aPalmIsLookedAtFromItsWristUpwards() {
    double[] x = {100, 0, 140, 0, 0, 0, 0};
    double[] y = {200, 0, 200, 0, 0, 0, 0};
    // It points to the right: the square is turned by a quarter, its centre shifted to the right.
    Square square = Square.of(new PalmDetection(0.9, 120, 200, 50, 60, x, y));
    assertEquals(Math.PI / 2, square.turn(), 1e-9);
    assertEquals(150, square.x(), 1e-9);
    assertEquals(200, square.y(), 1e-9);
    assertEquals(2.6 * 60, square.side(), 1e-9);
  }

  @Test
  void squaresOfNothingAreNotLookedAt() {
    assertTrue(new Square(10, 10, 8, 0).usable());
    assertFalse(new Square(10, 10, 7.9, 0).usable());
    assertFalse(new Square(10, 10, 1e6, 0).usable());
    assertFalse(new Square(10, 10, Double.NaN, 0).usable());
    assertFalse(new Square(Double.NaN, 10, 50, 0).usable());
    assertFalse(new Square(10, 10, 50, Double.POSITIVE_INFINITY).usable());
  }
}
