package palmturn.lab.draw;

/** A point or direction, cm: x to the right of the picture, y up, z towards the camera. */
record Vec(double x, double y, double z) {
  Vec plus(Vec o) {
    return new Vec(x + o.x, y + o.y, z + o.z);
  }

  Vec minus(Vec o) {
    return new Vec(x - o.x, y - o.y, z - o.z);
  }

  Vec times(double k) {
    return new Vec(x * k, y * k, z * k);
  }

  double dot(Vec o) {
    return x * o.x + y * o.y + z * o.z;
  }

  Vec cross(Vec o) {
    return new Vec(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  double length() {
    return Math.sqrt(dot(this));
  }

  Vec unit() {
    return times(1 / length());
  }

  /** Returns the unit vector of what is left of this one after taking out its part along a unit. */
  Vec perpendicularUnit(Vec unit) {
    return minus(unit.times(dot(unit))).unit();
  }
}
