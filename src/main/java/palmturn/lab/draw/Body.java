package palmturn.lab.draw;

/** The shapes of the trunk and of the upper arm in its sleeve, cm. */
final class Body {
  /** The right shoulder; the left one mirrors it. */
  static final Vec SHOULDER = new Vec(-20.5, 34, -2);

  /** The right elbow at rest. */
  static final Vec ELBOW = new Vec(-24, 3, 3);

  /** The middle of the target palm. */
  static final Vec TARGET = new Vec(0, -5, 21.8);

  static final double UPPER_ARM_CM = ELBOW.minus(SHOULDER).length();

  /** A short sleeve, which leaves the elbow bare. */
  private static final double SLEEVE_CM = 17;

  private Body() {}

  /**
   * Returns the right elbow so far from its place, cm: on the circle that it can go while shoulder
   * and wrist stay, since no arm stretches. That is outwards, forwards and a little up.
   */
  static Vec elbowOut(double cm) {
    Vec wrist = ELBOW.plus(TARGET.minus(ELBOW).unit().times(Arm.FOREARM_CM));
    Vec axis = wrist.minus(SHOULDER).unit();
    Vec centre = SHOULDER.plus(axis.times(ELBOW.minus(SHOULDER).dot(axis)));
    Vec spoke = ELBOW.minus(centre);
    Vec onwards = spoke.cross(axis);
    // Stretches that overlap add up, and beyond half a turn there is nothing.
    double turn = 2 * Math.asin(Math.min(1, cm / (2 * spoke.length())));
    return centre.plus(spoke.times(Math.cos(turn))).plus(onwards.times(Math.sin(turn)));
  }

  static Mesh shirt() {
    Vec from = new Vec(-32, -27, -18);
    Vec to = new Vec(32, 46, 18);
    return Mesh.of(Body::shirtDistance, from, to, 0.55, Material.SHIRT);
  }

  static Mesh trousers() {
    Vec from = new Vec(-27, -101, -16);
    Vec to = new Vec(27, -20, 17);
    return Mesh.of(Body::trousersDistance, from, to, 0.7, Material.TROUSERS);
  }

  /** Returns the upper arm at rest: the shoulder at 0, the elbow along x. */
  static Mesh upperArm() {
    Vec elbow = new Vec(UPPER_ARM_CM, 0, 0);
    Vec muscle = new Vec(12, 0, 0);
    return Mesh.of(
        (x, y, z) ->
            Solid.smoothUnion(
                Solid.roundCone(x, y, z, new Vec(4, 0, 0), muscle, 4.9, 5),
                Solid.roundCone(x, y, z, muscle, elbow, 5, 4.15),
                1),
        new Vec(-2, -6, -6),
        new Vec(UPPER_ARM_CM + 5, 6, 6),
        0.45,
        Material.UPPER_ARM);
  }

  /** Returns the sleeve at rest, in the upper arm's place. */
  static Mesh sleeve() {
    return Mesh.of(
        Body::sleeveDistance,
        new Vec(-8, -9, -9),
        new Vec(SLEEVE_CM + 2, 9, 9),
        0.5,
        Material.SLEEVE);
  }

  private static double sleeveDistance(double x, double y, double z) {
    double fold = 0.16 * Math.sin(0.9 * x + 1.3 * Math.sin(0.5 * y + 0.3 * z));
    double d =
        Solid.roundCone(x, y, z, new Vec(0, 0, 0), new Vec(SLEEVE_CM + 8, 0, 0), 6.4, 6.3) + fold;
    double cut = x - SLEEVE_CM - 0.05 * y;
    return -Solid.smoothUnion(-d, -cut, 0.6);
  }

  private static double shirtDistance(double x, double y, double z) {
    double up = Solid.smoothstep(-25, 25, y);
    double width = 17.2 + 2.3 * up + 1.2 * Solid.smoothstep(0, -26, y);
    double depth = 10.4 + 1.3 * up;
    double zz = z / depth;
    double xx = x / width;
    double power = 2.5;
    double round =
        Math.pow(Math.pow(Math.abs(xx), power) + Math.pow(Math.abs(zz), power), 1 / power);
    double d = (round - 1) * depth;
    d = Math.max(d, y - 34);
    Vec left = new Vec(-17.5, 34.5, -2);
    Vec right = new Vec(17.5, 34.5, -2);
    d = Solid.smoothUnion(d, Solid.roundCone(x, y, z, left, right, 7.2, 7.2), 5);
    d += folds(x, y, z);
    return -Solid.smoothUnion(-d, y + 25.5 + 0.4 * Math.sin(0.4 * x), 0.7);
  }

  /** Folds run down from the shoulders and gather above the hem. */
  private static double folds(double x, double y, double z) {
    double side = Math.abs(x) * 0.8;
    double slant = 0.36 * y + 0.30 * side + 0.9 * Math.sin(0.11 * x + 0.07 * y);
    double soft = 0.5 + 0.5 * Math.sin(0.13 * y - 0.21 * x + 1.1);
    double across = 0.34 * Math.sin(slant * 1.25 + 0.8 * Math.sin(0.17 * x)) * soft;
    double down = 0.22 * Math.sin(0.42 * x + 0.9 * Math.sin(0.09 * y) + 0.05 * z);
    return across + down * Solid.smoothstep(10, -22, y);
  }

  private static double trousersDistance(double x, double y, double z) {
    double xx = x / 17.2;
    double zz = z / 9.4;
    double round = Math.pow(Math.pow(Math.abs(xx), 2.4) + Math.pow(Math.abs(zz), 2.4), 1 / 2.4);
    double hips = (round - 1) * 11 + 0.15 * Math.sin(0.5 * x + 0.6 * Math.sin(0.3 * y));
    double leg =
        Solid.roundCone(Math.abs(x), y, z, new Vec(8.6, -52, 0), new Vec(9.5, -101, 0), 9, 5.4);
    return Solid.smoothUnion(Math.max(hips, -50 - y), leg, 3);
  }
}
