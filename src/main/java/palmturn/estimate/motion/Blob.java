package palmturn.estimate.motion;

import java.util.Arrays;

/**
 * A connected part of the grid that moves.
 *
 * @param width of the grid
 * @param cells places in the grid, row by row
 * @param weights how much each cell moves, one for each
 */
@SuppressWarnings("ArrayRecordComponent")
public // Made once and only read.
record Blob(int width, int[] cells, float[] weights) {

  public int area() {
    return cells.length;
  }

  public int x(int cell) {
    return cells[cell] % width;
  }

  public int y(int cell) {
    return cells[cell] / width;
  }

  /** Returns left, upper, right and lower edge, the latter two just outside. */
  int[] box() {
    int[] x = Arrays.stream(cells).map(cell -> cell % width).sorted().toArray();
    int[] y = Arrays.stream(cells).map(cell -> cell / width).sorted().toArray();
    return new int[] {x[0], y[0], x[x.length - 1] + 1, y[y.length - 1] + 1};
  }
}
