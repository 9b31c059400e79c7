package palmturn.lab.draw;

import java.util.Arrays;

/** The nearest surface at each pixel: its depth, material, place at rest and normal. */
final class Raster {
  /** Numbers kept a pixel: rest x, y, z, rest normal y, normal x, y, z. */
  static final int ATTRIBUTES = 7;

  final int width;
  final int height;
  final float[] depth;
  final byte[] material;
  final float[] attributes;
  private float[] screen = new float[0];
  private int fromRow;
  private int toRow;

  Raster(int width, int height) {
    this.width = width;
    this.height = height;
    depth = new float[width * height];
    material = new byte[width * height];
    attributes = new float[ATTRIBUTES * width * height];
    toRow = height - 1;
    clear();
  }

  /** Forgets what was drawn; only rows that were drawn on need it. */
  void clear() {
    int from = Math.min(fromRow, height) * width;
    int to = Math.max(from, (toRow + 1) * width);
    Arrays.fill(depth, from, to, Float.POSITIVE_INFINITY);
    Arrays.fill(material, from, to, (byte) 0);
    fromRow = height;
    toRow = -1;
  }

  /** Returns the first row that was drawn on. */
  int fromRow() {
    return fromRow;
  }

  /** Returns the last row that was drawn on. */
  int toRow() {
    return toRow;
  }

  /**
   * Draws a mesh.
   *
   * @param placed six numbers a point: place and normal
   * @param shiftX pixels by which the grid is moved, for smooth edges
   * @param shiftY pixels by which the grid is moved
   */
  void draw(Mesh mesh, float[] placed, Camera camera, double shiftX, double shiftY) {
    int size = mesh.size();
    if (screen.length < 3 * size) {
      screen = new float[3 * size];
    }
    for (int v = 0; v < size; v++) {
      camera.project(placed[6 * v], placed[6 * v + 1], placed[6 * v + 2], screen, 3 * v);
      screen[3 * v] -= (float) (shiftX + 0.5);
      screen[3 * v + 1] -= (float) (shiftY + 0.5);
    }
    int[] corners = mesh.corners();
    for (int t = 0; t < corners.length; t += 3) {
      triangle(mesh, placed, corners[t], corners[t + 1], corners[t + 2]);
    }
  }

  private void triangle(Mesh mesh, float[] placed, int a, int b, int c) {
    float ax = screen[3 * a];
    float ay = screen[3 * a + 1];
    float bx = screen[3 * b];
    float by = screen[3 * b + 1];
    float cx = screen[3 * c];
    float cy = screen[3 * c + 1];
    float area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (area == 0) {
      return;
    }
    int fromX = Math.max(0, (int) Math.ceil(Math.min(ax, Math.min(bx, cx))));
    int toX = Math.min(width - 1, (int) Math.floor(Math.max(ax, Math.max(bx, cx))));
    int fromY = Math.max(0, (int) Math.ceil(Math.min(ay, Math.min(by, cy))));
    int toY = Math.min(height - 1, (int) Math.floor(Math.max(ay, Math.max(by, cy))));
    if (fromY > toY || fromX > toX) {
      return;
    }
    fromRow = Math.min(fromRow, fromY);
    toRow = Math.max(toRow, toY);
    for (int y = fromY; y <= toY; y++) {
      for (int x = fromX; x <= toX; x++) {
        float wb = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / area;
        float wc = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / area;
        float wa = 1 - wb - wc;
        if (wa < 0 || wb < 0 || wc < 0) {
          continue;
        }
        // Linear in 1/depth, so that large faces keep their texture straight.
        float ia = wa / screen[3 * a + 2];
        float ib = wb / screen[3 * b + 2];
        float ic = wc / screen[3 * c + 2];
        float d = 1 / (ia + ib + ic);
        int at = y * width + x;
        if (d < depth[at]) {
          depth[at] = d;
          material[at] = (byte) mesh.material().ordinal();
          storeAttributes(mesh, placed, a, b, c, ia * d, ib * d, ic * d, at * ATTRIBUTES);
        }
      }
    }
  }

  private void storeAttributes(
      Mesh mesh, float[] placed, int a, int b, int c, float wa, float wb, float wc, int at) {
    float[] rest = mesh.points();
    for (int i = 0; i < 3; i++) {
      attributes[at + i] = wa * rest[3 * a + i] + wb * rest[3 * b + i] + wc * rest[3 * c + i];
      attributes[at + 4 + i] =
          wa * placed[6 * a + 3 + i] + wb * placed[6 * b + 3 + i] + wc * placed[6 * c + 3 + i];
    }
    float[] normals = mesh.normals();
    attributes[at + 3] =
        wa * normals[3 * a + 1] + wb * normals[3 * b + 1] + wc * normals[3 * c + 1];
  }
}
