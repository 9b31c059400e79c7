package palmturn.lab.draw;

import java.util.Arrays;

/** The shadows under a far lamp: a blurred map of depths seen from the lamp. */
final class ShadowMap {
  /** Cells on each side: enough for trunk and arms. */
  private static final int SIZE = 420;

  /** Finer than a finger, coarser than the meshes' triangles. */
  private static final double CELL_CM = 0.3;

  /** Over a cell's diagonal, so that no surface shades itself. */
  private static final double BIAS_CM = 0.55;

  private final Vec lamp;
  private final Vec right;
  private final Vec up;
  private final int soft;
  private final float[] depth = new float[SIZE * SIZE];
  private float nearest = Float.NEGATIVE_INFINITY;
  private int fromI = SIZE;
  private int toI = -1;
  private int fromJ = SIZE;
  private int toJ = -1;

  /**
   * @param lamp direction towards the lamp, unit
   * @param soft half width of the blur, cells
   */
  ShadowMap(Vec lamp, int soft) {
    this.lamp = lamp;
    this.soft = soft;
    right = new Vec(1, 0, 0).perpendicularUnit(lamp);
    up = lamp.cross(right);
    clear();
  }

  void clear() {
    Arrays.fill(depth, Float.NEGATIVE_INFINITY);
    nearest = Float.NEGATIVE_INFINITY;
    fromI = SIZE;
    toI = -1;
    fromJ = SIZE;
    toJ = -1;
  }

  /** Adds a mesh, each triangle as the points on it: cells are coarser than triangles. */
  void add(Mesh mesh, float[] placed) {
    int[] corners = mesh.corners();
    for (int t = 0; t < corners.length; t += 3) {
      int a = 6 * corners[t];
      int b = 6 * corners[t + 1];
      int c = 6 * corners[t + 2];
      splat(placed[a], placed[a + 1], placed[a + 2]);
      splat(
          (placed[a] + placed[b] + placed[c]) / 3,
          (placed[a + 1] + placed[b + 1] + placed[c + 1]) / 3,
          (placed[a + 2] + placed[b + 2] + placed[c + 2]) / 3);
      splat(
          (placed[b] + placed[c]) / 2,
          (placed[b + 1] + placed[c + 1]) / 2,
          (placed[b + 2] + placed[c + 2]) / 2);
      splat(
          (placed[a] + placed[b]) / 2,
          (placed[a + 1] + placed[b + 1]) / 2,
          (placed[a + 2] + placed[b + 2]) / 2);
    }
  }

  private void splat(double x, double y, double z) {
    int i = column(x, y, z);
    int j = row(x, y, z);
    if (i < 0 || j < 0 || i >= SIZE || j >= SIZE) {
      return;
    }
    float d = (float) (x * lamp.x() + y * lamp.y() + z * lamp.z());
    depth[j * SIZE + i] = Math.max(depth[j * SIZE + i], d);
    nearest = Math.max(nearest, d);
    fromI = Math.min(fromI, i);
    toI = Math.max(toI, i);
    fromJ = Math.min(fromJ, j);
    toJ = Math.max(toJ, j);
  }

  private int column(double x, double y, double z) {
    return (int) Math.floor((x * right.x() + y * right.y() + z * right.z()) / CELL_CM) + SIZE / 2;
  }

  private int row(double x, double y, double z) {
    return (int) Math.floor((x * up.x() + y * up.y() + z * up.z()) / CELL_CM) + SIZE / 2;
  }

  /** Returns the share of the lamp's light that reaches a point, 0 to 1. */
  float lightShare(double x, double y, double z) {
    double u = (x * right.x() + y * right.y() + z * right.z()) / CELL_CM + SIZE / 2 - 0.5;
    double v = (x * up.x() + y * up.y() + z * up.z()) / CELL_CM + SIZE / 2 - 0.5;
    int i = (int) Math.floor(u);
    int j = (int) Math.floor(v);
    if (i < fromI - soft - 1 || i > toI + soft || j < fromJ - soft - 1 || j > toJ + soft) {
      return 1;
    }
    float d = (float) (x * lamp.x() + y * lamp.y() + z * lamp.z() + BIAS_CM);
    if (d >= nearest) {
      return 1;
    }
    float fu = (float) (u - i);
    float fv = (float) (v - j);
    float dark = 0;
    for (int dj = -soft; dj <= soft + 1; dj++) {
      float wv = dj == -soft ? 1 - fv : dj == soft + 1 ? fv : 1;
      for (int di = -soft; di <= soft + 1; di++) {
        float wu = di == -soft ? 1 - fu : di == soft + 1 ? fu : 1;
        int ii = i + di;
        int jj = j + dj;
        if (ii >= 0 && jj >= 0 && ii < SIZE && jj < SIZE && depth[jj * SIZE + ii] > d) {
          dark += wu * wv;
        }
      }
    }
    int side = 2 * soft + 1;
    return 1 - dark / (side * side);
  }
}
