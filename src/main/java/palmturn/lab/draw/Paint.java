package palmturn.lab.draw;

/** The colour of every surface, in linear light, from its place at rest. */
final class Paint {
  /** Colours chosen by eye, sRGB made linear. */
  private static final float[] BACK = linear(0xB98565);

  private static final float[] PALM = linear(0xE8B49C);
  private static final float[] CREASE = linear(0xA9654E);
  private static final float[] NAIL = linear(0xE6B7A6);
  private static final float[] KNUCKLE = linear(0x9C6349);
  private static final float[] SHIRT = linear(0x2F6A73);
  private static final float[] STRIPE = linear(0xE3DFD2);
  private static final float[] TROUSERS = linear(0x2A2D38);
  private static final float[] WALL = linear(0xB9B4A8);
  private static final float[] FLOOR = linear(0x8A6B4C);
  private static final float[] BOARD = linear(0xDAD7CE);
  private static final float[] SHELF = linear(0x9A7350);
  private static final float[] FRAME = linear(0x7A2E2A);
  private static final int[] BOOKS = {0x5C3A4E, 0x3E5B4B, 0x8C7A3C, 0x35506E, 0x8A4A38, 0x6B6B72};

  private Paint() {}

  private static float[] linear(int rgb) {
    float[] out = new float[3];
    for (int i = 0; i < 3; i++) {
      out[i] = (float) Math.pow((rgb >> 16 - 8 * i & 255) / 255.0, 2.2);
    }
    return out;
  }

  /**
   * Puts a colour into {@code out}.
   *
   * @param kept what a raster keeps of the pixel, from {@code at} on
   */
  static void colour(Material material, float[] kept, int at, float[] out) {
    double x = kept[at];
    double y = kept[at + 1];
    double z = kept[at + 2];
    switch (material) {
      case SKIN -> skin(x, y, z, kept[at + 3], out);
      case UPPER_ARM -> {
        copy(BACK, out);
        dim(out, 0.95 + 0.1 * grain(x * 0.7, z * 0.7 + y * 0.5));
      }
      case SHIRT -> {
        copy(SHIRT, out);
        double stripe = Solid.smoothstep(2.3, 2.1, Math.abs(y - 19));
        blend(out, STRIPE, 0.85 * stripe);
        dim(out, 0.94 + 0.06 * weave(x, y));
      }
      case SLEEVE -> {
        copy(SHIRT, out);
        blend(out, STRIPE, 0.85 * Solid.smoothstep(15, 15.3, x));
        dim(out, 0.94 + 0.06 * weave(x, z));
      }
      case TROUSERS -> copy(TROUSERS, out);
      case WALL -> wall(x, y, out);
      case FLOOR -> {
        copy(FLOOR, out);
        double plank = Math.abs(z / 11 - Math.rint(z / 11));
        dim(out, (plank < 0.02 ? 0.6 : 1) * (0.93 + 0.09 * grain(x * 0.06, z * 1.3)));
      }
      case BOARD -> copy(BOARD, out);
      case SHELF -> {
        copy(SHELF, out);
        dim(out, 0.92 + 0.1 * grain(x * 0.08, y * 1.1 + z * 0.9));
      }
      case BOOKS -> {
        int book = (int) Math.floor((x + 100) / 3.3);
        copy(linear(BOOKS[Math.floorMod(book * 7 + 3, BOOKS.length)]), out);
        double edge = (x + 100) / 3.3 - book;
        dim(out, edge < 0.06 || edge > 0.94 ? 0.45 : 1);
      }
      case NOTHING -> copy(new float[3], out);
    }
  }

  private static void skin(double x, double y, double z, double up, float[] out) {
    double u = x - Arm.FOREARM_CM;
    double palm = Solid.smoothstep(0.25, -0.25, up) * Solid.smoothstep(-1.5, 1.5, u);
    double under = 0.12 * Solid.smoothstep(0.4, -0.4, up) * Solid.smoothstep(4, 12, x);
    copy(BACK, out);
    blend(out, PALM, Math.max(palm, under));
    dim(out, 0.95 + 0.1 * grain(x * 0.7, z * 0.7 + y * 0.5));
    if (u > 0.5) {
      double dark = palm * creases(u, z);
      blend(out, CREASE, 0.6 * dark);
      fingers(x, z, up, palm, out);
      // Heels of the palm and fingertips carry more blood.
      blend(
          out,
          CREASE,
          0.16 * palm * Math.max(Solid.smoothstep(4, 1, u), Solid.smoothstep(14.5, 16.5, u)));
    }
  }

  /** The three lines of a palm. */
  private static double creases(double u, double z) {
    double heart = u - (8.0 - 0.22 * z - 0.09 * (z - 1) * (z - 1));
    double head = u - (5.9 - 0.42 * z - 0.05 * z * z);
    double life = Math.hypot(u - 2.2, (z + 3.9) * 0.95) - 3.9;
    double dark = z > -2.4 ? line(heart) : 0;
    dark = Math.max(dark, z > -3.2 && z < 2.6 ? line(head) : 0);
    return Math.max(dark, u < 6.4 && u > 0.3 && z > -3.6 ? line(life) : 0);
  }

  private static double line(double distance) {
    return Math.exp(-distance * distance / 0.022);
  }

  private static void fingers(double x, double z, double up, double palm, float[] out) {
    for (Arm.Finger finger : Arm.FINGERS) {
      double a = Math.toRadians(finger.spreadDeg());
      double dx = x - Arm.FOREARM_CM - finger.fromX();
      double dz = z - finger.fromZ();
      double along = dx * Math.cos(a) + dz * Math.sin(a);
      double side = -dx * Math.sin(a) + dz * Math.cos(a);
      if (Math.abs(side) > 1 || along < -1 || along > finger.lengthCm() + 0.5) {
        continue;
      }
      double length = finger.lengthCm() - 0.6;
      for (int i = 0; i < 3; i++) {
        double from = along - Arm.JOINTS[i] * length - (i == 0 ? 0.9 : 0);
        blend(out, CREASE, 0.55 * palm * line(from));
        double knuckle = Math.exp(-from * from / 0.25 - side * side / 0.4);
        blend(out, KNUCKLE, 0.5 * (1 - palm) * knuckle);
      }
      double nail = Math.max(Math.abs(along - length + 0.15) / 0.72, Math.abs(side) / 0.5);
      if (up > 0.35) {
        blend(out, NAIL, 0.9 * Solid.smoothstep(1.1, 0.9, nail));
      }
    }
  }

  /** A wall with a racket painted where it hangs. */
  private static void wall(double x, double y, float[] out) {
    copy(WALL, out);
    dim(out, 0.97 + 0.04 * grain(x * 0.35, y * 0.35));
    double rx = (x - 47) * 0.985 + (y + 22) * 0.17;
    double ry = -(x - 47) * 0.17 + (y + 22) * 0.985;
    double ring = Math.abs(Math.hypot(rx / 10, ry / 13) - 1) * 11;
    boolean inside = Math.hypot(rx / 10, ry / 13) < 1;
    double gridX = Math.abs(rx / 1.7 - Math.rint(rx / 1.7)) * 1.7;
    double gridY = Math.abs(ry / 1.7 - Math.rint(ry / 1.7)) * 1.7;
    if (inside && Math.min(gridX, gridY) < 0.16) {
      blend(out, STRIPE, 0.7);
    }
    if (ring < 0.7 || Math.abs(rx) < 0.5 && ry < -13 && ry > -36) {
      copy(FRAME, out);
    }
    if (Math.abs(rx) < 1.3 && ry <= -36 && ry > -50) {
      copy(TROUSERS, out);
    }
  }

  private static double weave(double a, double b) {
    return 0.5 * Math.sin(a * 9) * Math.sin(b * 9) + grain(a * 0.5, b * 0.5);
  }

  /** Smooth noise, about -1 to 1. */
  private static double grain(double a, double b) {
    double n = Math.sin(a * 1.7 + 2.3 * Math.sin(b * 1.1)) + Math.sin(b * 2.9 + 1.9 * Math.sin(a));
    return 0.35 * (n + 0.6 * Math.sin(a * 5.3 + b * 6.1) + 0.4 * Math.sin(a * 11 - b * 9));
  }

  private static void copy(float[] from, float[] out) {
    System.arraycopy(from, 0, out, 0, 3);
  }

  private static void blend(float[] out, float[] with, double share) {
    for (int i = 0; i < 3; i++) {
      out[i] += (float) (share * (with[i] - out[i]));
    }
  }

  private static void dim(float[] out, double by) {
    for (int i = 0; i < 3; i++) {
      out[i] *= (float) by;
    }
  }
}
