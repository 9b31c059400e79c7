package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.estimate.image.Similarity;
import palmturn.trial.Point;

class HingeTest {
  private static final Point JOINT = new Point(12, -5);

  @Test
  void placeThatTheTurningLeavesAtRestIsTheJoint() {
    Point found = Hinge.of(times(), turning(0.1), 50);
    assertEquals(JOINT.x(), found.x(), 0.3);
    assertEquals(JOINT.y(), found.y(), 0.3);
  }

  @Test
  void aSwingOfTheWholeArmNowAndThenDoesNotPullTheJointAway() {
    List<Similarity> arm = new ArrayList<>(turning(0.1));
    double[] timesS = times();
    for (int i = 0; i < timesS.length; i++) {
      // Where the hand comes down off the centre.
      if (timesS[i] % 1.5 < 0.06) {
        Similarity at = arm.get(i);
        double shift = 12 * Math.sin(Math.PI * (timesS[i] % 1.5) / 0.06);
        arm.set(i, new Similarity(at.a(), at.b() + 0.008 * shift, at.dx(), at.dy() + shift));
      }
    }
    Point found = Hinge.of(timesS, arm, 50);
    assertEquals(JOINT.x(), found.x(), 2);
    assertEquals(JOINT.y(), found.y(), 2);
  }

  @Test
  void armThatDoesNotTurnKeepsThePlaceThatWasGiven() {
    Point found = Hinge.of(times(), turning(0), 50);
    assertEquals(0, found.x(), 0.3);
    assertEquals(0, found.y(), 0.3);
  }

  @Test
  void jointIsNeverFartherThanAllowed() {
    Point found = Hinge.of(times(), turning(0.1), 4);
    assertEquals(4, Math.hypot(found.x(), found.y()), 1e-9);
  }

  private static double[] times() {
    double[] timesS = new double[300];
    for (int i = 0; i < timesS.length; i++) {
      timesS[i] = i / 60.0 + (i % 3) * 0.002;
    }
    return timesS;
  }

  /** An arm that turns five times a second about a joint that wanders slowly. */
  private static List<Similarity> turning(double radians) {
    List<Similarity> arm = new ArrayList<>();
    for (double t : times()) {
      double angle = radians * Math.sin(2 * Math.PI * 5 * t);
      double a = Math.cos(angle);
      double b = Math.sin(angle);
      double wander = 8 * Math.sin(2 * Math.PI * 0.2 * t);
      arm.add(
          new Similarity(
              a,
              b,
              wander + JOINT.x() - a * JOINT.x() + b * JOINT.y(),
              JOINT.y() - b * JOINT.x() - a * JOINT.y()));
    }
    return arm;
  }
}
