package palmturn.estimate;

import java.util.Arrays;

/**
 * A connected part of the grid that moves.
 *
 * @param width of the grid
 * @param cells places in the grid, row by row
 * @param weights how much each cell moves, one for each
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
record Blob(int width, int[] cells, float[] weights) {

  int area() {
    return cells.length;
  }

  int x(int cell) {
    return cells[cell] % width;
  }

  int y(int cell) {
    return cells[cell] / width;
  }

  /** Returns left, upper, right and lower edge, the latter two just outside. */
  int[] box() {
    int[] x = Arrays.stream(cells).map(cell -> cell % width).sorted().toArray();
    int[] y = Arrays.stream(cells).map(cell -> cell / width).sorted().toArray();
    return new int[] {x[0], y[0], x[x.length - 1] + 1, y[y.length - 1] + 1};
  }

  /** Returns the weighted mean of a field over its cells. */
  double mean(float[] field) {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < cells.length; i++) {
      sum += weights[i] * field[cells[i]];
      all += weights[i];
    }
    return sum / all;
  }
}
