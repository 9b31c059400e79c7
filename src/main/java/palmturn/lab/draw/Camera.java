package palmturn.lab.draw;

/**
 * A camera without distortion, held a little over the hands and looking down at them. A phone held
 * upright has the hands in its upper part, so that the head stays out of the picture.
 *
 * @param width pixels drawn, with the margin that shake needs
 * @param height pixels drawn, with the margin that shake needs
 * @param focal distance of the picture, pixels
 */
record Camera(int width, int height, double focal) {
  /** A phone on a stand 1.4 m away, at the height of the chest; the hands fill the picture. */
  private static final Vec POSITION = new Vec(3, 43, 136);

  private static final Vec VIEWED_POINT = new Vec(0.5, 0.5, 14);
  private static final Vec AHEAD = VIEWED_POINT.minus(POSITION).unit();
  private static final Vec RIGHT = AHEAD.cross(new Vec(0, 1, 0)).unit();
  private static final Vec UP = RIGHT.cross(AHEAD);

  /** The optical axis at a third of an upright picture's height, so that the head stays out. */
  private static final double MIDDLE_OF_UPRIGHT = 0.33;

  /** Returns a camera that has both elbows in its picture. */
  static Camera of(Filming filming, int margin) {
    double widths = filming.isUpright() ? 2.15 : 1.78;
    return new Camera(
        filming.width() + 2 * margin, filming.height() + 2 * margin, widths * filming.width());
  }

  private double middleY() {
    return height * (height > width ? MIDDLE_OF_UPRIGHT : 0.5);
  }

  /** Puts picture x, picture y and depth of a point into three places. */
  void project(double x, double y, double z, float[] out, int at) {
    double dx = x - POSITION.x();
    double dy = y - POSITION.y();
    double dz = z - POSITION.z();
    double depth = dx * AHEAD.x() + dy * AHEAD.y() + dz * AHEAD.z();
    double scale = focal / depth;
    out[at] = (float) (width / 2.0 + scale * (dx * RIGHT.x() + dy * RIGHT.y() + dz * RIGHT.z()));
    out[at + 1] = (float) (middleY() - scale * (dx * UP.x() + dy * UP.y() + dz * UP.z()));
    out[at + 2] = (float) depth;
  }

  /** Returns the point seen at a place of the picture at a depth. */
  Vec point(double px, double py, double depth) {
    Vec ray =
        AHEAD
            .plus(RIGHT.times((px - width / 2.0) / focal))
            .plus(UP.times((middleY() - py) / focal));
    return POSITION.plus(ray.times(depth));
  }

  static Vec position() {
    return POSITION;
  }

  double cmPerPixel(Vec at) {
    return at.minus(POSITION).dot(AHEAD) / focal;
  }
}
