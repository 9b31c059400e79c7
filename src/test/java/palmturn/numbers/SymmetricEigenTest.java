package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SymmetricEigenTest {

  @ParameterizedTest
  @ValueSource(longs = {91, 92, 93})
  void vectorsAreUnitAndTurnedIntoThemselvesByTheMatrix(long seed) {
    Random random = new Random(seed);
    int n = 6;
    double[][] matrix = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        matrix[i][j] = matrix[j][i] = random.nextGaussian();
      }
    }
    SymmetricEigen symmetric = SymmetricEigen.of(matrix);
    for (int k = 0; k < n; k++) {
      double[] vector = symmetric.vectors()[k];
      double squares = 0;
      for (int i = 0; i < n; i++) {
        double product = 0;
        for (int j = 0; j < n; j++) {
          product += matrix[i][j] * vector[j];
        }
        assertEquals(symmetric.values()[k] * vector[i], product, 1e-9);
        squares += vector[i] * vector[i];
      }
      assertEquals(1, squares, 1e-9);
      assertTrue(k == 0 || symmetric.values()[k] <= symmetric.values()[k - 1]);
    }
  }
}
