package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.estimate.hands.HandFollower;
import palmturn.estimate.hands.HandMarks;
import palmturn.estimate.hands.HandPaths;
import palmturn.estimate.request.Hints;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.ElbowInSpace;
import palmturn.trial.Point;

/** A rigid arm in space, seen straight on from far away, 10 pixels to a centimetre. */
class ElbowDepthTest {
  private static final double PX_PER_CM = 10;
  private static final double UPPER_ARM_CM = 31;
  private static final double FOREARM_CM = 26;
  private static final double ELBOW_X_PX = 300;
  private static final ElbowScale GIVEN = new ElbowScale("given", 1 / PX_PER_CM, null, null);
  private static final Hints MEASURED =
      new Hints(null, new Point(ELBOW_X_PX, 200), null, null, FOREARM_CM, null, null);

  @Test
  void aShortWayOfARigidArmIsTold() {
    for (double inwardDeg : new double[] {0, 20, 35, 50}) {
      ElbowInSpace space = told(new Arm(inwardDeg), 3, MEASURED, GIVEN);
      assertNotNull(space);
      assertEquals(1 / Math.cos(Math.toRadians(inwardDeg)), space.outwardFactor(), 1e-6);
      assertEquals(3, space.maxCm(), 0.35, inwardDeg + "°");
      assertTrue(space.lowCm() <= space.maxCm() && space.maxCm() <= space.highCm());
    }
  }

  @Test
  void aLongWayOfARigidArmIsToldTooShortButBetterThanThePicture() {
    Arm arm = new Arm(35);
    ElbowInSpace space = told(arm, 8, MEASURED, GIVEN);
    assertNotNull(space);
    double[] elbow = arm.elbow(8);
    double picture = Math.hypot(elbow[0], elbow[1]);
    assertTrue(space.maxCm() > picture && space.maxCm() < 8, space + " of 8, seen " + picture);
  }

  @Test
  void anUnknownForearmIsAnAverageOneAndLeavesMoreOpen() {
    ElbowInSpace measured = told(new Arm(35), 3, MEASURED, GIVEN);
    ElbowInSpace average = told(new Arm(35), 3, Hints.NONE, GIVEN);
    assertNotNull(measured);
    assertNotNull(average);
    double seen = FOREARM_CM * Math.sin(Math.toRadians(35)) / ElbowDepth.AVERAGE_FOREARM_CM;
    assertEquals(1 / Math.sqrt(1 - seen * seen), average.outwardFactor(), 1e-6);
    assertTrue(
        average.highCm() - average.lowCm() > measured.highCm() - measured.lowCm(),
        average + " " + measured);
  }

  @Test
  void aForearmThatLiesInThePictureOrAnUnknownScaleTellsNothing() {
    assertNull(told(new Arm(75), 3, MEASURED, GIVEN));
    assertNull(told(new Arm(35), 3, MEASURED, ElbowScale.NONE));
    // A forearm taken to lie flat in the picture can't tell by how much it does not.
    assertNull(told(new Arm(35), 3, MEASURED, ElbowScale.from(MEASURED, 260.0, null)));
  }

  private static @Nullable ElbowInSpace told(Arm arm, double outCm, Hints hints, ElbowScale scale) {
    List<Double> timesS = new ArrayList<>();
    List<ElbowPath.Sample> samples = new ArrayList<>();
    for (int i = 0; i < 240; i++) {
      double share = Math.max(0, Math.min(1, (i - 150) / 60.0));
      double[] elbow = arm.elbow(outCm * share);
      timesS.add(i / 60.0);
      samples.add(ElbowPath.Sample.of(i / 60.0, PX_PER_CM * elbow[0], -PX_PER_CM * elbow[1]));
    }
    ElbowPath path =
        new ElbowPath(
            null,
            null,
            new ElbowPath.PictureScale("given", scale.cmPerPixel(), null),
            new Point(ELBOW_X_PX, 200),
            samples,
            List.of(),
            List.of());
    double wristX = ELBOW_X_PX + PX_PER_CM * arm.wrist[0];
    return ElbowDepth.of(path, hands(wristX, timesS), 1, 0.5, scale, hints);
  }

  private static HandPaths hands(double wristXPx, List<Double> timesS) {
    double[] x = new double[21];
    x[0] = wristXPx;
    HandMarks hand = new HandMarks(x, new double[21], 1);
    return new HandPaths(
        false,
        timesS.stream().map(timeS -> new HandFollower.TimedHand(timeS, hand)).toList(),
        List.of(),
        hand);
  }

  /** A left arm, cm from the elbow at rest: to the right, up, towards the camera. */
  private static final class Arm {
    private final double[] shoulder = {0, UPPER_ARM_CM, 0};
    private final double[] wrist;

    /** The forearm is level, and points inwards by an angle from straight ahead. */
    Arm(double inwardDeg) {
      double angle = Math.toRadians(inwardDeg);
      wrist = new double[] {-FOREARM_CM * Math.sin(angle), 0, FOREARM_CM * Math.cos(angle)};
    }

    /**
     * Returns where the elbow is when it is so far from its place: on the circle that it can go.
     */
    double[] elbow(double outCm) {
      double[] axis = unit(minus(wrist, shoulder));
      double[] fromShoulder = minus(new double[3], shoulder);
      double along = dot(fromShoulder, axis);
      double[] centre = plus(shoulder, times(axis, along));
      double[] spoke = minus(new double[3], centre);
      double radius = Math.sqrt(dot(spoke, spoke));
      double[] tangent = unit(cross(axis, spoke));
      double turn = (tangent[0] < 0 ? -1 : 1) * 2 * Math.asin(outCm / (2 * radius));
      return plus(
          centre, plus(times(spoke, Math.cos(turn)), times(tangent, radius * Math.sin(turn))));
    }

    private static double[] plus(double[] a, double[] b) {
      return new double[] {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
    }

    private static double[] minus(double[] a, double[] b) {
      return plus(a, times(b, -1));
    }

    private static double[] times(double[] a, double by) {
      return new double[] {by * a[0], by * a[1], by * a[2]};
    }

    private static double dot(double[] a, double[] b) {
      return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] cross(double[] a, double[] b) {
      return new double[] {
        a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
      };
    }

    private static double[] unit(double[] a) {
      return times(a, 1 / Math.sqrt(dot(a, a)));
    }
  }
}
