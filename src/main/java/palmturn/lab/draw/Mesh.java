package palmturn.lab.draw;

import java.util.Arrays;

/** A surface of triangles at rest: points, outward normals, and three corners a triangle. */
record Mesh(float[] points, float[] normals, int[] corners, Material material) {

  int size() {
    return points.length / 3;
  }

  /** Returns the surface of a solid inside a box, by surface nets on cubes of edge {@code step}. */
  static Mesh of(Solid solid, Vec from, Vec to, double step, Material material) {
    return new SurfaceNets(solid, from, to, step).mesh(material);
  }

  /** Returns a box with straight edges. */
  static Mesh box(Vec from, Vec to, Material material) {
    float[] points = new float[72];
    float[] normals = new float[72];
    int[] corners = new int[36];
    double[] lo = {from.x(), from.y(), from.z()};
    double[] hi = {to.x(), to.y(), to.z()};
    int v = 0;
    int c = 0;
    for (int face = 0; face < 6; face++) {
      int axis = face / 2;
      int one = (axis + 1) % 3;
      int two = (axis + 2) % 3;
      for (int k = 0; k < 4; k++) {
        double[] p = new double[3];
        p[axis] = face % 2 == 0 ? lo[axis] : hi[axis];
        p[one] = (k & 1) == 0 ? lo[one] : hi[one];
        p[two] = (k & 2) == 0 ? lo[two] : hi[two];
        for (int i = 0; i < 3; i++) {
          points[3 * (v + k) + i] = (float) p[i];
        }
        normals[3 * (v + k) + axis] = face % 2 == 0 ? -1 : 1;
      }
      for (int k : new int[] {0, 1, 2, 1, 2, 3}) {
        corners[c++] = v + k;
      }
      v += 4;
    }
    return new Mesh(points, normals, corners, material);
  }

  /** Naive surface nets: one point in each cube that the surface passes. */
  private static final class SurfaceNets {
    private final Solid solid;
    private final Vec from;
    private final double step;
    private final int nx;
    private final int ny;
    private final int nz;
    private final float[] field;
    private float[] points = new float[3000];
    private int count;
    private int[] corners = new int[6000];
    private int used;

    SurfaceNets(Solid solid, Vec from, Vec to, double step) {
      this.solid = solid;
      this.from = from;
      this.step = step;
      nx = (int) Math.ceil((to.x() - from.x()) / step) + 1;
      ny = (int) Math.ceil((to.y() - from.y()) / step) + 1;
      nz = (int) Math.ceil((to.z() - from.z()) / step) + 1;
      field = new float[nx * ny * nz];
      for (int k = 0; k < nz; k++) {
        for (int j = 0; j < ny; j++) {
          for (int i = 0; i < nx; i++) {
            field[at(i, j, k)] =
                (float) solid.at(from.x() + i * step, from.y() + j * step, from.z() + k * step);
          }
        }
      }
    }

    private int at(int i, int j, int k) {
      return (k * ny + j) * nx + i;
    }

    Mesh mesh(Material material) {
      int[] point = new int[field.length];
      Arrays.fill(point, -1);
      for (int k = 0; k + 1 < nz; k++) {
        for (int j = 0; j + 1 < ny; j++) {
          for (int i = 0; i + 1 < nx; i++) {
            place(i, j, k, point);
          }
        }
      }
      for (int k = 1; k + 1 < nz; k++) {
        for (int j = 1; j + 1 < ny; j++) {
          for (int i = 1; i + 1 < nx; i++) {
            int here = at(i, j, k);
            join(here, here + 1, point, here, here - nx, here - nx * ny, here - nx - nx * ny);
            join(here, here + nx, point, here, here - 1, here - nx * ny, here - 1 - nx * ny);
            join(here, here + nx * ny, point, here, here - 1, here - nx, here - 1 - nx);
          }
        }
      }
      float[] normals = new float[3 * count];
      for (int v = 0; v < count; v++) {
        normal(v, normals);
      }
      return new Mesh(
          Arrays.copyOf(points, 3 * count), normals, Arrays.copyOf(corners, used), material);
    }

    private void place(int i, int j, int k, int[] point) {
      double sx = 0;
      double sy = 0;
      double sz = 0;
      int crossings = 0;
      for (int edge = 0; edge < 12; edge++) {
        int axis = edge / 4;
        int u = edge & 1;
        int v = edge >> 1 & 1;
        int ai = axis == 0 ? 0 : u;
        int aj = axis == 1 ? 0 : axis == 0 ? u : v;
        int ak = axis == 2 ? 0 : v;
        float a = field[at(i + ai, j + aj, k + ak)];
        int bi = axis == 0 ? 1 : ai;
        int bj = axis == 1 ? 1 : aj;
        int bk = axis == 2 ? 1 : ak;
        float b = field[at(i + bi, j + bj, k + bk)];
        if (a < 0 == b < 0) {
          continue;
        }
        double t = a / (a - b);
        sx += ai + t * (bi - ai);
        sy += aj + t * (bj - aj);
        sz += ak + t * (bk - ak);
        crossings++;
      }
      if (crossings == 0) {
        return;
      }
      if (3 * count + 3 > points.length) {
        points = Arrays.copyOf(points, 2 * points.length);
      }
      points[3 * count] = (float) (from.x() + (i + sx / crossings) * step);
      points[3 * count + 1] = (float) (from.y() + (j + sy / crossings) * step);
      points[3 * count + 2] = (float) (from.z() + (k + sz / crossings) * step);
      point[at(i, j, k)] = count++;
    }

    private void join(int a, int b, int[] point, int p, int q, int r, int s) {
      if (field[a] < 0 == field[b] < 0) {
        return;
      }
      if (used + 6 > corners.length) {
        corners = Arrays.copyOf(corners, 2 * corners.length);
      }
      for (int each : new int[] {p, q, r, q, r, s}) {
        corners[used++] = point[each];
      }
    }

    private void normal(int v, float[] normals) {
      double x = points[3 * v];
      double y = points[3 * v + 1];
      double z = points[3 * v + 2];
      double e = 0.6 * step;
      Vec gradient =
          new Vec(
                  solid.at(x + e, y, z) - solid.at(x - e, y, z),
                  solid.at(x, y + e, z) - solid.at(x, y - e, z),
                  solid.at(x, y, z + e) - solid.at(x, y, z - e))
              .unit();
      normals[3 * v] = (float) gradient.x();
      normals[3 * v + 1] = (float) gradient.y();
      normals[3 * v + 2] = (float) gradient.z();
    }
  }
}
