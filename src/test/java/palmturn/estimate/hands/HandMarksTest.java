package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HandMarksTest {
  /**
   * Returns a flat hand of a person who faces the camera, fingers up: with its palm shown, a left
   * hand has its thumb, and so its index finger, at the left of the picture.
   */
  static HandMarks made(boolean left, boolean palm) {
    double mirror = left == palm ? 1 : -1;
    double[] x = new double[HandMarks.SIZE];
    double[] y = new double[HandMarks.SIZE];
    double[] knuckleX = {-70, -42, -14, 14, 42};
    double[] knuckleY = {-50, -96, -100, -98, -90};
    for (int finger = 0; finger < 5; finger++) {
      for (int joint = 0; joint < 4; joint++) {
        x[1 + 4 * finger + joint] = mirror * knuckleX[finger] * (1 + 0.1 * joint);
        y[1 + 4 * finger + joint] = knuckleY[finger] - 28 * joint;
      }
    }
    return new HandMarks(x, y, 1);
  }

  static HandMarks turned(HandMarks hand, double turn, double size, double dx, double dy) {
    double[] x = new double[HandMarks.SIZE];
    double[] y = new double[HandMarks.SIZE];
    double cos = size * Math.cos(turn);
    double sin = size * Math.sin(turn);
    for (int i = 0; i < HandMarks.SIZE; i++) {
      x[i] = cos * hand.x()[i] - sin * hand.y()[i] + dx;
      y[i] = sin * hand.x()[i] + cos * hand.y()[i] + dy;
    }
    return new HandMarks(x, y, hand.presence());
  }

  @Test
  void aLeftPalmAndARightBackFaceOneWayTheOthersTheOther() {
    double face = made(true, true).face();
    // Knuckles at (−42, −96) and (42, −90) as seen from the wrist.
    assertEquals((42 * 90 + 96 * 42) / (Math.hypot(42, 96) * Math.hypot(42, 90)), face, 1e-12);
    assertEquals(face, made(false, false).face(), 1e-12);
    assertEquals(-face, made(true, false).face(), 1e-12);
    assertEquals(-face, made(false, true).face(), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3, -1.5, -0.2, 0.7, 2, 3.1})
  void whereAHandLiesAndHowItIsTurnedAndHowLargeItIsDoesNotChangeItsFace(double turn) {
    HandMarks hand = made(true, true);
    assertEquals(hand.face(), turned(hand, turn, 0.4, 300, -20).face(), 1e-12);
  }

  @Test
  void edgeOnAHandFacesNeitherWay() {
    HandMarks hand = made(true, true);
    HandMarks thin = new HandMarks(new double[HandMarks.SIZE], hand.y(), 1);
    assertEquals(0, thin.face(), 1e-12);
    HandMarks point = new HandMarks(new double[HandMarks.SIZE], new double[HandMarks.SIZE], 1);
    assertEquals(0, point.face(), 0);
  }

  @Test
  void thePalmsMiddleLiesHalfWayFromTheWristToTheKnuckles() {
    HandMarks hand = turned(made(true, true), 0, 1, 200, 300);
    assertEquals(200, hand.palmX(), 1e-9);
    assertEquals(300 - (96 + 100 + 98 + 90) / 8.0, hand.palmY(), 1e-9);
  }

  @Test
  void distancesAreInPalmLengthsOfTheHandThatAsks() {
    HandMarks hand = made(true, true);
    HandMarks away = turned(made(true, true), 0, 1, 0, 3 * hand.palmLength());
    assertEquals(Math.hypot(14, 100), hand.palmLength(), 1e-12);
    assertEquals(3, hand.palmsTo(away), 1e-9);
    assertEquals(6, turned(hand, 0, 0.5, hand.palmX() / 2, hand.palmY() / 2).palmsTo(away), 1e-9);
  }

  @Test
  void anglesBetweenHandsGoTheShortWayRound() {
    HandMarks hand = made(true, true);
    for (double from : new double[] {0, 1.6, 3.1, -3.1}) {
      HandMarks one = turned(hand, from, 1, 0, 0);
      assertEquals(0.2, one.angleTo(turned(hand, from + 0.2, 1, 50, 0)), 1e-9);
      assertEquals(3, one.angleTo(turned(hand, from - 3, 1, 0, 9)), 1e-9);
    }
  }

  @Test
  void theMedianOfHandsIsNotMovedByOneThatIsFarOff() {
    HandMarks hand = made(true, true);
    HandMarks near = turned(hand, 0, 1, 2, -2);
    HandMarks off = turned(hand, 1, 1, 900, 900);
    HandMarks median = HandMarks.median(List.of(hand, off, near));
    for (int i = 0; i < HandMarks.SIZE; i++) {
      assertEquals(near.x()[i], median.x()[i], 1e-9);
      assertEquals(hand.y()[i], median.y()[i], 1e-9);
    }
  }
}
