package palmturn.numbers;

import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The eigendecomposition of a symmetric matrix.
 *
 * @param values eigenvalues, in descending order
 * @param vectors unit eigenvectors, one row for each value
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
public record SymmetricEigen(double[] values, double[][] vectors) {

  /** Decomposes a matrix that is symmetric up to rounding. */
  public static SymmetricEigen of(double[][] matrix) {
    RealMatrix given = MatrixUtils.createRealMatrix(matrix);
    EigenDecompositionSymmetric eigen =
        new EigenDecompositionSymmetric(given.add(given.transpose()).scalarMultiply(0.5));
    double[] values = eigen.getEigenvalues();
    double[][] vectors = new double[values.length][];
    for (int i = 0; i < values.length; i++) {
      vectors[i] = eigen.getEigenvector(i).toArray();
    }
    return new SymmetricEigen(values, vectors);
  }
}
