package palmturn.lab.draw;

/**
 * The pose of an arm, as a right arm; a left one is its mirror image.
 *
 * @param elbow where the elbow is
 * @param heightCm of the hand's axis over the middle of the target
 * @param twistDeg turn about the forearm, 0 with the palm down, 180 with the palm up
 * @param bendDeg of the hand at the wrist, down towards the target: with the palm down that is to
 *     the palm (flexion), with the palm up to the back of the hand (extension)
 * @param slideCm how far the hand is drawn back from where its palm's middle meets {@code place}
 * @param place the place on the target that is aimed at
 */
record Pose(
    Vec elbow,
    double heightCm,
    double twistDeg,
    double bendDeg,
    double slideCm,
    TargetPlace place) {
  /** Straight up from the target palm: both forearms lie across it. */
  static final Vec UP = up();

  private static Vec up() {
    Vec along = Body.TARGET.minus(Body.ELBOW);
    Vec mirrored = new Vec(-along.x(), along.y(), along.z());
    return mirrored.cross(along).unit();
  }

  /** Returns this pose at another height. */
  Pose at(double otherHeightCm) {
    return new Pose(elbow, otherHeightCm, twistDeg, bendDeg, slideCm, place);
  }

  /** Returns the middle of the palm, on the hand's axis. */
  Vec palm() {
    Frames frames = frames();
    return frames.wrist.plus(frames.hx.times(Arm.ELBOW_TO_PALM_CM - Arm.FOREARM_CM));
  }

  /**
   * Returns how far the hand is bent at the wrist, degrees: to the palm over 0, to the back under.
   */
  double flexionDeg() {
    Frames frames = frames();
    Vec toPalm =
        frames.fy.times(-Math.cos(frames.twist)).minus(frames.fz.times(Math.sin(frames.twist)));
    return Math.toDegrees(Math.atan2(frames.hx.dot(toPalm), frames.hx.dot(frames.fx)));
  }

  /**
   * Returns where the points and normals of an arm's mesh come to lie, as one array of six each.
   */
  float[] apply(Mesh arm, boolean mirror) {
    Frames frames = frames();
    double sign = mirror ? -1 : 1;
    double[] out = new double[6];
    float[] placed = new float[6 * arm.size()];
    for (int v = 0; v < arm.size(); v++) {
      frames.place(arm, v, out);
      placed[6 * v] = (float) (sign * out[0]);
      placed[6 * v + 1] = (float) out[1];
      placed[6 * v + 2] = (float) out[2];
      placed[6 * v + 3] = (float) (sign * out[3]);
      placed[6 * v + 4] = (float) out[4];
      placed[6 * v + 5] = (float) out[5];
    }
    return placed;
  }

  private Frames frames() {
    Vec aim = Body.TARGET.plus(place.offset());
    Vec flat = aim.minus(elbow).perpendicularUnit(UP);
    Vec forearm = flat;
    Vec hand = flat;
    Vec wrist = elbow;
    // A hand that isn't bent keeps a little flatter than its forearm.
    double flatter = 0.4 * (1 - Solid.smoothstep(0, 12, bendDeg));
    // The wrist hangs on the hand's direction and that on the forearm's: three rounds settle it.
    for (int round = 0; round < 3; round++) {
      hand = flat.times(flatter).plus(forearm.times(1 - flatter)).unit();
      double bend = Math.toRadians(bendDeg);
      Vec down = UP.perpendicularUnit(hand).times(-1);
      hand = hand.times(Math.cos(bend)).plus(down.times(Math.sin(bend)));
      double back = Arm.ELBOW_TO_PALM_CM - Arm.FOREARM_CM + slideCm;
      wrist = aim.plus(UP.times(heightCm)).minus(hand.times(back));
      forearm = wrist.minus(elbow).unit();
    }
    return new Frames(elbow, wrist, forearm, hand, Math.toRadians(twistDeg));
  }

  /** The two rigid parts, forearm and hand, between which the wrist's skin is blended. */
  private static final class Frames {
    private final Vec elbow;
    private final Vec wrist;
    private final Vec fx;
    private final Vec fy;
    private final Vec fz;
    private final Vec hx;
    private final Vec hy;
    private final Vec hz;
    private final double stretch;
    private final double twist;

    Frames(Vec elbow, Vec wrist, Vec forearm, Vec hand, double twist) {
      this.elbow = elbow;
      this.wrist = wrist;
      this.twist = twist;
      fx = forearm;
      fy = UP.perpendicularUnit(fx);
      fz = fx.cross(fy);
      hx = hand;
      hy = UP.perpendicularUnit(hx);
      hz = hx.cross(hy);
      stretch = wrist.minus(elbow).length() / Arm.FOREARM_CM;
    }

    void place(Mesh arm, int v, double[] out) {
      double x = arm.points()[3 * v];
      double turned = twist * Solid.smoothstep(4, 23, x);
      double cos = Math.cos(turned);
      double sin = Math.sin(turned);
      double w = Solid.smoothstep(Arm.FOREARM_CM - 3, Arm.FOREARM_CM + 2, x);
      put(arm.points(), v, cos, sin, w, x * stretch, x - Arm.FOREARM_CM, out, 0);
      for (int i = 0; i < 3; i++) {
        out[i] += (1 - w) * coordinate(elbow, i) + w * coordinate(wrist, i);
      }
      double along = arm.normals()[3 * v];
      put(arm.normals(), v, cos, sin, w, along, along, out, 3);
    }

    private void put(
        float[] from,
        int v,
        double cos,
        double sin,
        double w,
        double alongForearm,
        double alongHand,
        double[] out,
        int at) {
      double y = from[3 * v + 1] * cos - from[3 * v + 2] * sin;
      double z = from[3 * v + 1] * sin + from[3 * v + 2] * cos;
      double f = (1 - w) * alongForearm;
      double h = w * alongHand;
      double fn = (1 - w) * y;
      double hn = w * y;
      double fl = (1 - w) * z;
      double hl = w * z;
      out[at] = fx.x() * f + hx.x() * h + fy.x() * fn + hy.x() * hn + fz.x() * fl + hz.x() * hl;
      out[at + 1] = fx.y() * f + hx.y() * h + fy.y() * fn + hy.y() * hn + fz.y() * fl + hz.y() * hl;
      out[at + 2] = fx.z() * f + hx.z() * h + fy.z() * fn + hy.z() * hn + fz.z() * fl + hz.z() * hl;
    }

    private static double coordinate(Vec v, int i) {
      return i == 0 ? v.x() : i == 1 ? v.y() : v.z();
    }
  }
}
