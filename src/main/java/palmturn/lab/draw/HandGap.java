package palmturn.lab.draw;

import java.util.Arrays;

/** The distance of the moving hand from the target hand, straight up from the target palm. */
final class HandGap {
  /** Finer than a finger is wide. */
  private static final double CELL_CM = 0.25;

  /** 40 cm a side: the whole target hand with its wrist. */
  private static final int CELLS = 160;

  private final Mesh arm;
  private final float[] top = new float[CELLS * CELLS];
  private final Vec right;
  private final Vec ahead;

  /**
   * @param arm the moving arm's mesh, a right arm
   * @param target the target arm's points as they lie for a right moving arm, six numbers each
   */
  HandGap(Mesh arm, float[] target) {
    this.arm = arm;
    right = new Vec(1, 0, 0).perpendicularUnit(Pose.UP);
    ahead = right.cross(Pose.UP);
    Arrays.fill(top, Float.NEGATIVE_INFINITY);
    for (int at = 0; at < target.length; at += 6) {
      int i = cell(target, at, right);
      int j = cell(target, at, ahead);
      float height = (float) along(target, at, Pose.UP);
      for (int dj = -1; dj <= 1; dj++) {
        for (int di = -1; di <= 1; di++) {
          if (inside(i + di) && inside(j + dj)) {
            int cell = (j + dj) * CELLS + i + di;
            top[cell] = Math.max(top[cell], height);
          }
        }
      }
    }
  }

  /** Returns the gap, cm, negative where the hands would lie in each other. */
  double gapCm(Pose pose) {
    float[] hand = pose.apply(arm, false);
    double gap = Double.POSITIVE_INFINITY;
    for (int at = 0; at < hand.length; at += 6) {
      int i = cell(hand, at, right);
      int j = cell(hand, at, ahead);
      if (arm.points()[at / 2] > Arm.FOREARM_CM - 8 && inside(i) && inside(j)) {
        gap = Math.min(gap, along(hand, at, Pose.UP) - top[j * CELLS + i]);
      }
    }
    return gap;
  }

  /** Returns the pose at the height at which the hands just touch. */
  Pose poseTouching(Pose pose) {
    double low = -4;
    double high = 14;
    for (int round = 0; round < 22; round++) {
      double middle = (low + high) / 2;
      if (gapCm(pose.at(middle)) > 0) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return pose.at(high);
  }

  private static int cell(float[] points, int at, Vec direction) {
    return (int) Math.floor(along(points, at, direction) / CELL_CM) + CELLS / 2;
  }

  private static double along(float[] points, int at, Vec direction) {
    Vec from = Body.TARGET;
    return (points[at] - from.x()) * direction.x()
        + (points[at + 1] - from.y()) * direction.y()
        + (points[at + 2] - from.z()) * direction.z();
  }

  private static boolean inside(int cell) {
    return cell >= 0 && cell < CELLS;
  }
}
