package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Butterworth;
import palmturn.numbers.SymmetricEigen;

/**
 * A second look where the plain axis leaves doubt: among mean motion and its first moments, the
 * channel that repeats with every slap is the approach, the one that repeats in reverse is the
 * turn. Found by a generalised eigenproblem of lagged covariances. It fails at irregular tempo, so
 * it is never asked first.
 */
final class PairedChannels {
  /** Pass band: leaves out slow drift and noise that is faster than any hand. */
  private static final double[] BAND_HZ = {0.8, 16};

  /** Periods that are tried: 10 to 1.4 slaps a second. */
  private static final double SHORTEST_S = 0.10;

  private static final double LONGEST_S = 0.70;

  /** Added to the covariance, as a share of its mean eigenvalue, so that it can be inverted. */
  private static final double RIDGE = 0.01;

  /**
   * Least difference of the outer eigenvalues, of 2 for a perfect period; chosen on drawn clips.
   */
  private static final double CLEAR = 1.0;

  /** A period within this share of twice or half the first reading's is its octave. */
  private static final double OCTAVE = 0.15;

  private PairedChannels() {}

  /**
   * Returns another reading, null if there is no clear one.
   *
   * @param first the plain reading, null if it found nothing
   */
  static @Nullable Contacts of(BlobMotion motion, @Nullable Contacts first) {
    double hz = motion.hz();
    double fps = 1 / motion.footage().medianFrameS();
    double high = Math.min(BAND_HZ[1], 0.48 * fps);
    List<double[]> channels = channels(motion);
    channels.replaceAll(x -> Butterworth.bandPass(2, BAND_HZ[0], high, hz).filtfilt(x));
    double[][] half = inverseRoot(covariance(channels, 0));
    double best = 0;
    int bestLag = 0;
    SymmetricEigen bestEigen = null;
    int longest = Math.min((int) (LONGEST_S * hz), motion.samples() / 3);
    for (int lag = (int) Math.ceil(SHORTEST_S * hz); lag <= longest; lag++) {
      SymmetricEigen eigen =
          SymmetricEigen.of(product(product(half, covariance(channels, lag)), half));
      double spread = eigen.values()[0] - eigen.values()[eigen.values().length - 1];
      if (spread > best) {
        best = spread;
        bestLag = lag;
        bestEigen = eigen;
      }
    }
    if (bestEigen == null || best < CLEAR || octaveOff(first, bestLag / hz)) {
      return null;
    }
    double[] weights = times(half, bestEigen.vectors()[0]);
    double[] velocity = new double[motion.samples()];
    for (int c = 0; c < weights.length; c++) {
      for (int i = 0; i < velocity.length; i++) {
        velocity[i] += weights[c] * channels.get(c)[i];
      }
    }
    scaleLike(velocity, channels.get(1));
    return Contacts.of(motion, Approach.of(velocity, hz, fps, 0, hz / bestLag));
  }

  private static boolean octaveOff(@Nullable Contacts first, double periodS) {
    if (first == null || first.poses().alternation() < 0.5) {
      return false;
    }
    double ratio = periodS / first.medianIntervalS();
    return Math.abs(ratio - 2) < 2 * OCTAVE || Math.abs(ratio - 0.5) < 0.5 * OCTAVE;
  }

  private static List<double[]> channels(BlobMotion motion) {
    Blob blob = motion.blob();
    double[] shares = Approach.shares(blob);
    int n = shares.length;
    double mx = 0;
    double my = 0;
    for (int i = 0; i < n; i++) {
      mx += shares[i] * blob.x(i);
      my += shares[i] * blob.y(i);
    }
    double spread = 0;
    for (int i = 0; i < n; i++) {
      spread += shares[i] * (Math.pow(blob.x(i) - mx, 2) + Math.pow(blob.y(i) - my, 2));
    }
    spread = Math.sqrt(spread / 2) + 1e-9;
    double[] none = new double[n];
    double[] byX = new double[n];
    double[] byY = new double[n];
    for (int i = 0; i < n; i++) {
      byX[i] = shares[i] * (blob.x(i) - mx) / spread;
      byY[i] = shares[i] * (blob.y(i) - my) / spread;
    }
    List<double[]> channels = new ArrayList<>();
    channels.add(motion.velocity(shares, none));
    channels.add(motion.velocity(none, shares));
    channels.add(motion.velocity(byX, none));
    channels.add(motion.velocity(byY, none));
    channels.add(motion.velocity(none, byX));
    channels.add(motion.velocity(none, byY));
    return channels;
  }

  private static double[][] covariance(List<double[]> channels, int lag) {
    int n = channels.size();
    double[][] c = new double[n][n];
    int length = channels.get(0).length - lag;
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < n; b++) {
        double sum = 0;
        for (int i = 0; i < length; i++) {
          sum += channels.get(a)[i] * channels.get(b)[i + lag];
        }
        c[a][b] += sum / length / 2;
        c[b][a] += sum / length / 2;
      }
    }
    return c;
  }

  private static double[][] inverseRoot(double[][] covariance) {
    int n = covariance.length;
    double trace = 0;
    for (int i = 0; i < n; i++) {
      trace += covariance[i][i];
    }
    for (int i = 0; i < n; i++) {
      covariance[i][i] += RIDGE * trace / n + 1e-12;
    }
    SymmetricEigen eigen = SymmetricEigen.of(covariance);
    double[][] root = new double[n][n];
    for (int k = 0; k < n; k++) {
      double[] vector = eigen.vectors()[k];
      double factor = 1 / Math.sqrt(Math.max(eigen.values()[k], 1e-15));
      for (int a = 0; a < n; a++) {
        for (int b = 0; b < n; b++) {
          root[a][b] += factor * vector[a] * vector[b];
        }
      }
    }
    return root;
  }

  private static double[][] product(double[][] a, double[][] b) {
    int n = a.length;
    double[][] out = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        for (int k = 0; k < n; k++) {
          out[i][j] += a[i][k] * b[k][j];
        }
      }
    }
    return out;
  }

  private static double[] times(double[][] a, double[] x) {
    double[] out = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      for (int k = 0; k < x.length; k++) {
        out[i] += a[i][k] * x[k];
      }
    }
    return out;
  }

  /** Gives a channel without a unit the size of one in cells/s. */
  private static void scaleLike(double[] x, double[] other) {
    double own = 0;
    double wanted = 0;
    for (int i = 0; i < x.length; i++) {
      own += x[i] * x[i];
      wanted += other[i] * other[i];
    }
    double factor = Math.sqrt(wanted / Math.max(own, 1e-30));
    for (int i = 0; i < x.length; i++) {
      x[i] *= factor;
    }
  }
}
