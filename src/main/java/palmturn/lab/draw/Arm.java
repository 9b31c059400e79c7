package palmturn.lab.draw;

/**
 * The shape of a right forearm and hand at rest, cm: the elbow at 0, the forearm along x, the back
 * of the hand towards +y, the thumb towards −z.
 */
final class Arm {
  /** Elbow to wrist. */
  static final double FOREARM_CM = 26;

  /** Elbow to the middle of the palm. */
  static final double ELBOW_TO_PALM_CM = FOREARM_CM + 5.6;

  /** The four fingers, from the index finger to the little one, as an adult hand has them. */
  static final Finger[] FINGERS = {
    new Finger(8.7, -2.95, -6, 7.0, 0.86),
    new Finger(9.3, -0.98, -1, 7.8, 0.9),
    new Finger(9.0, 0.98, 4, 7.2, 0.86),
    new Finger(8.0, 2.75, 11, 5.7, 0.74)
  };

  /** Joints of a finger, as shares of its length. */
  static final double[] JOINTS = {0, 0.52, 0.8, 1};

  /**
   * A finger.
   *
   * @param fromX its knuckle, from the wrist
   * @param fromZ its knuckle, across
   * @param spreadDeg from straight ahead towards the little finger
   * @param lengthCm knuckle to tip
   * @param radiusCm at the knuckle
   */
  record Finger(double fromX, double fromZ, double spreadDeg, double lengthCm, double radiusCm) {
    /** Returns a point at a share of the length; fingers are curled a little to the palm. */
    Vec at(double share) {
      double s = share * (lengthCm - 0.6);
      double a = Math.toRadians(spreadDeg);
      double sag = -0.012 * s * s;
      return new Vec(FOREARM_CM + fromX + s * Math.cos(a), sag, fromZ + s * Math.sin(a));
    }

    double radius(double share) {
      return radiusCm * (1 - 0.24 * share);
    }
  }

  /** The thumb's joints, read off an adult hand that lies flat. */
  private static final Vec THUMB_ROOT = hand(2.0, -0.55, -1.9);

  private static final Vec THUMB_BASE = hand(5.0, -0.9, -4.3);
  private static final Vec THUMB_MID = hand(7.7, -0.8, -5.9);
  private static final Vec THUMB_TIP = hand(9.9, -0.5, -6.7);

  private Arm() {}

  private static Vec hand(double x, double y, double z) {
    return new Vec(FOREARM_CM + x, y, z);
  }

  static Mesh mesh() {
    Vec from = new Vec(-6, -5.5, -8.5);
    Vec to = new Vec(FOREARM_CM + 18.5, 5.5, 6);
    return Mesh.of(Arm::distance, from, to, 0.34, Material.SKIN);
  }

  static double distance(double x, double y, double z) {
    double forearm = x < FOREARM_CM + 6 ? forearm(x, y, z) : 99;
    if (x < FOREARM_CM - 6) {
      return forearm;
    }
    double palm = Solid.smoothUnion(palm(x, y, z), forearm, 2.2);
    double hand = palm;
    for (Finger finger : FINGERS) {
      hand = Math.min(hand, Solid.smoothUnion(palm, finger(finger, x, y, z), 0.55));
    }
    double thumb = Solid.roundCone(x, y, z, THUMB_BASE, THUMB_MID, 1.08, 0.92);
    thumb =
        Solid.smoothUnion(thumb, Solid.roundCone(x, y, z, THUMB_MID, THUMB_TIP, 0.92, 0.68), 0.25);
    return Solid.smoothUnion(hand, thumb, 0.9);
  }

  private static double forearm(double x, double y, double z) {
    double flat = 1 - 0.27 * Solid.smoothstep(6, FOREARM_CM, x);
    double ys = y / flat;
    Vec elbow = new Vec(-0.3, 0, 0);
    Vec belly = new Vec(7, 0, 0);
    Vec low = new Vec(18, 0, 0);
    Vec wrist = new Vec(FOREARM_CM + 0.5, 0, 0);
    double d = Solid.roundCone(x, ys, z, elbow, belly, 4.1, 4.35);
    d = Solid.smoothUnion(d, Solid.roundCone(x, ys, z, belly, low, 4.35, 3.2), 1);
    d = Solid.smoothUnion(d, Solid.roundCone(x, ys, z, low, wrist, 3.2, 2.6), 1);
    return d * flat;
  }

  private static double palm(double x, double y, double z) {
    double d = 99;
    double[] acrossWrist = {-1.5, -0.5, 0.5, 1.4};
    for (int i = 0; i < 4; i++) {
      Vec knuckle = FINGERS[i].at(0);
      Vec root = hand(0.8, 0, acrossWrist[i]);
      d =
          Solid.smoothUnion(
              d, Solid.roundCone(x, y, z, root, knuckle, 1.15, FINGERS[i].radius(0) + 0.06), 0.9);
    }
    d = Solid.smoothUnion(d, Solid.roundCone(x, y, z, THUMB_ROOT, THUMB_BASE, 1.5, 1.2), 1.2);
    return Solid.smoothUnion(
        d, Solid.roundCone(x, y, z, hand(1.8, -0.55, 1.7), hand(6.2, -0.4, 2.8), 1.15, 0.95), 1);
  }

  private static double finger(Finger finger, double x, double y, double z) {
    double d = 99;
    for (int i = 0; i + 1 < JOINTS.length; i++) {
      double a = JOINTS[i];
      double b = JOINTS[i + 1];
      double stick =
          Solid.roundCone(x, y, z, finger.at(a), finger.at(b), finger.radius(a), finger.radius(b));
      d = Solid.smoothUnion(d, stick, 0.2);
    }
    return d;
  }
}
