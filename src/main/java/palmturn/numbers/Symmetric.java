package palmturn.numbers;

import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The eigenvalues of a symmetric matrix, falling, and their unit vectors.
 *
 * @param values falling
 * @param vectors one row for each value
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
public record Symmetric(double[] values, double[][] vectors) {

  /** Decomposes a matrix, symmetric but for rounding. */
  public static Symmetric of(double[][] matrix) {
    RealMatrix given = MatrixUtils.createRealMatrix(matrix);
    EigenDecompositionSymmetric eigen =
        new EigenDecompositionSymmetric(given.add(given.transpose()).scalarMultiply(0.5));
    double[] values = eigen.getEigenvalues();
    double[][] vectors = new double[values.length][];
    for (int i = 0; i < values.length; i++) {
      vectors[i] = eigen.getEigenvector(i).toArray();
    }
    return new Symmetric(values, vectors);
  }
}
