package palmturn.estimate.motion;

import palmturn.numbers.Butterworth;
import palmturn.numbers.LombScargle;
import palmturn.numbers.SymmetricEigen;

/**
 * The velocity of the moving hand to and from the target, the one signal in which contacts show. It
 * is a sawtooth at the rate of slaps, not of turns.
 *
 * @param velocity cells/s along the axis, evenly sampled; its sign says nothing of contact yet
 * @param smooth the same after a low-pass that keeps the slaps
 * @param hz samples a second
 * @param slapHz slaps a second, the strongest period
 * @param downwards the axis's share towards the picture's lower edge, −1 to 1
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
record Approach(double[] velocity, double[] smooth, double hz, double slapHz, double downwards) {
  /**
   * Slaps a second among which the strongest period is looked for: slower ones are no test, faster
   * ones no hand's.
   */
  static final double LOWEST_HZ = 1.5;

  private static final double HIGHEST_HZ = 10;

  /** Step of the search: 0.4 % at five slaps a second. */
  private static final double STEP_HZ = 0.02;

  /** Share of the frame rate up to which a frequency is searched for. */
  private static final double NYQUIST_SHARE = 0.45;

  /** Cutoff of the low-pass in slap rates: keeps the sawtooth's second harmonic. */
  private static final double CUTOFF = 2.6;

  /** Pass band: leaves out slow drift and noise that is faster than any hand. */
  private static final double[] BAND_HZ = {1.2, 16};

  /** Returns the approach along the direction in which the blob as a whole moves most. */
  static Approach alongMainAxis(BlobMotion motion) {
    double fps = 1 / motion.footage().medianFrameS();
    double[] weights = shares(motion.blob());
    double[] none = new double[weights.length];
    double[] u = band(motion.velocity(weights, none), fps, motion.hz());
    double[] v = band(motion.velocity(none, weights), fps, motion.hz());
    double uu = 0;
    double uv = 0;
    double vv = 0;
    for (int i = 0; i < u.length; i++) {
      uu += u[i] * u[i];
      uv += u[i] * v[i];
      vv += v[i] * v[i];
    }
    double[] axis = SymmetricEigen.of(new double[][] {{uu, uv}, {uv, vv}}).vectors()[0];
    double sign = axis[1] < 0 ? -1 : 1;
    double[] along = new double[u.length];
    for (int i = 0; i < along.length; i++) {
      along[i] = sign * (axis[0] * u[i] + axis[1] * v[i]);
    }
    return of(along, motion.hz(), fps, sign * axis[1], strongestHz(along, motion.hz(), fps));
  }

  /** Returns the approach for a given velocity and slap rate. */
  static Approach of(double[] velocity, double hz, double fps, double downwards, double slapHz) {
    double cut = Math.min(Math.min(CUTOFF * slapHz, NYQUIST_SHARE * fps), 0.45 * hz);
    double[] smooth = Butterworth.lowPass(2, cut, hz).filtfilt(velocity);
    return new Approach(velocity, smooth, hz, slapHz, downwards);
  }

  /** Returns the weights of a blob's cells as shares of their sum. */
  static double[] shares(Blob blob) {
    double sum = 0;
    for (float weight : blob.weights()) {
      sum += weight;
    }
    double[] shares = new double[blob.area()];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = blob.weights()[i] / sum;
    }
    return shares;
  }

  private static double[] band(double[] x, double fps, double hz) {
    double high = Math.min(BAND_HZ[1], 0.48 * Math.min(fps, hz));
    return high > 1.5 * BAND_HZ[0]
        ? Butterworth.bandPass(2, BAND_HZ[0], high, hz).filtfilt(x)
        : x.clone();
  }

  private static double strongestHz(double[] x, double hz, double fps) {
    double highest = Math.max(LOWEST_HZ + STEP_HZ, Math.min(HIGHEST_HZ, NYQUIST_SHARE * fps));
    double[] grid = new double[(int) Math.floor((highest - LOWEST_HZ) / STEP_HZ) + 1];
    for (int i = 0; i < grid.length; i++) {
      grid[i] = LOWEST_HZ + i * STEP_HZ;
    }
    double[] times = new double[x.length];
    double[] tapered = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      times[i] = i / hz;
      tapered[i] = x[i] * (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / x.length));
    }
    double[] power = LombScargle.power(times, tapered, grid);
    int best = 0;
    for (int i = 1; i < power.length; i++) {
      if (power[i] > power[best]) {
        best = i;
      }
    }
    return grid[best];
  }
}
