package palmturn.lab.draw;

/** A shape given by the signed distance to its surface, cm, negative inside. */
@FunctionalInterface
interface Solid {
  double at(double x, double y, double z);

  /** Smooth union: the smaller of two distances, blended where they differ by less than k. */
  static double smoothUnion(double a, double b, double k) {
    double h = Math.max(k - Math.abs(a - b), 0) / k;
    return Math.min(a, b) - h * h * k / 4;
  }

  /** Distance to a rounded stick whose radius goes from ra at one end to rb at the other. */
  static double roundCone(double px, double py, double pz, Vec a, Vec b, double ra, double rb) {
    double bx = b.x() - a.x();
    double by = b.y() - a.y();
    double bz = b.z() - a.z();
    double ax = px - a.x();
    double ay = py - a.y();
    double az = pz - a.z();
    double t = (ax * bx + ay * by + az * bz) / (bx * bx + by * by + bz * bz);
    t = Math.max(0, Math.min(1, t));
    double dx = ax - t * bx;
    double dy = ay - t * by;
    double dz = az - t * bz;
    return Math.sqrt(dx * dx + dy * dy + dz * dz) - ra - t * (rb - ra);
  }

  /** 0 below from, 1 above to, and smooth between. */
  static double smoothstep(double from, double to, double x) {
    double t = Math.max(0, Math.min(1, (x - from) / (to - from)));
    return t * t * (3 - 2 * t);
  }
}
