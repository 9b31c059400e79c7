package palmturn.synth;

/**
 * A camera without distortion, held a little over the hands and looking down at them.
 *
 * @param width pixels drawn, with the margin that shake needs
 * @param height pixels drawn, with the margin that shake needs
 * @param focal distance of the picture, pixels
 */
record Camera(int width, int height, double focal) {
  private static final Vec AT = new Vec(3, 43, 136);
  private static final Vec TO = new Vec(0.5, 0.5, 14);
  private static final Vec AHEAD = TO.minus(AT).unit();
  private static final Vec RIGHT = AHEAD.cross(new Vec(0, 1, 0)).unit();
  private static final Vec UP = RIGHT.cross(AHEAD);

  /** Puts picture x, picture y and depth of a point into three places. */
  void project(double x, double y, double z, float[] out, int at) {
    double dx = x - AT.x();
    double dy = y - AT.y();
    double dz = z - AT.z();
    double depth = dx * AHEAD.x() + dy * AHEAD.y() + dz * AHEAD.z();
    double scale = focal / depth;
    out[at] = (float) (width / 2.0 + scale * (dx * RIGHT.x() + dy * RIGHT.y() + dz * RIGHT.z()));
    out[at + 1] = (float) (height / 2.0 - scale * (dx * UP.x() + dy * UP.y() + dz * UP.z()));
    out[at + 2] = (float) depth;
  }

  /** Returns the point seen at a place of the picture at a depth. */
  Vec point(double px, double py, double depth) {
    Vec ray =
        AHEAD
            .plus(RIGHT.times((px - width / 2.0) / focal))
            .plus(UP.times((height / 2.0 - py) / focal));
    return AT.plus(ray.times(depth));
  }

  static Vec eye() {
    return AT;
  }

  /** Returns the way across the picture between two points, right and up, cm. */
  static double[] across(Vec from, Vec to) {
    Vec way = to.minus(from);
    return new double[] {way.dot(RIGHT), way.dot(UP)};
  }

  double cmPerPixel(Vec at) {
    return at.minus(AT).dot(AHEAD) / focal;
  }
}
