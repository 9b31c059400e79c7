package palmturn.estimate.motion;

import palmturn.estimate.image.Footage;
import palmturn.numbers.Pchip;

/**
 * The motion of one blob. Flow is integrated to displacements at the frames' times and only then
 * resampled evenly and differentiated: that alone makes uneven frames harmless.
 */
public final class BlobMotion {
  /**
   * Samples a second of the even series: at 120 a contact lies between samples 8 ms apart, and is
   * read between them.
   */
  private static final double LEAST_HZ = 120;

  private final Footage footage;
  private final Blob blob;
  private final double hz;
  private final int samples;

  /** Displacement of each cell at each frame since the first: right, then down. */
  private final float[][] displacement;

  BlobMotion(Footage footage, Blob blob) {
    this.footage = footage;
    this.blob = blob;
    this.hz = Math.max(LEAST_HZ, 2 / footage.medianFrameS());
    double lengthS = footage.timesS()[footage.frames() - 1] - footage.timesS()[0];
    this.samples = (int) Math.floor(lengthS * hz) + 1;
    int n = blob.area();
    displacement = new float[footage.frames()][2 * n];
    for (int k = 1; k < displacement.length; k++) {
      float[] right = footage.right().get(k);
      float[] down = footage.down().get(k);
      for (int i = 0; i < n; i++) {
        displacement[k][i] = displacement[k - 1][i] + right[blob.cells()[i]];
        displacement[k][n + i] = displacement[k - 1][n + i] + down[blob.cells()[i]];
      }
    }
  }

  public Footage footage() {
    return footage;
  }

  public Blob blob() {
    return blob;
  }

  /** Returns samples a second of the even series. */
  double hz() {
    return hz;
  }

  /** Returns the number of samples of the even series. */
  int samples() {
    return samples;
  }

  /** Returns the time of a place in the even series, which may lie between samples. */
  double timeS(double sample) {
    return footage.timesS()[0] + sample / hz;
  }

  /**
   * Returns the velocity of a weighted sum of all cells' motion, cells/s, evenly sampled.
   *
   * @param forRight weight of each cell's motion to the right
   * @param forDown weight of each cell's motion downwards
   */
  double[] velocity(double[] forRight, double[] forDown) {
    int n = blob.area();
    double[] position = new double[displacement.length];
    for (int k = 0; k < displacement.length; k++) {
      double sum = 0;
      for (int i = 0; i < n; i++) {
        sum += forRight[i] * displacement[k][i] + forDown[i] * displacement[k][n + i];
      }
      position[k] = sum;
    }
    return velocity(position);
  }

  /** Returns the evenly sampled velocity for positions at the frames' times. */
  double[] velocity(double[] positionAtFrames) {
    double[] at = new double[samples];
    for (int i = 0; i < samples; i++) {
      at[i] = timeS(i);
    }
    double[] even = Pchip.of(footage.timesS(), positionAtFrames).at(at);
    double[] velocity = new double[samples];
    for (int i = 0; i < samples; i++) {
      int before = Math.max(0, i - 1);
      int after = Math.min(samples - 1, i + 1);
      velocity[i] = after == before ? 0 : (even[after] - even[before]) * hz / (after - before);
    }
    return velocity;
  }

  /** Returns each cell's displacement between two moments: right, then down, in cells. */
  float[] between(double fromS, double toS) {
    float[] from = wayAt(fromS);
    float[] to = wayAt(toS);
    for (int i = 0; i < to.length; i++) {
      to[i] -= from[i];
    }
    return to;
  }

  private float[] wayAt(double timeS) {
    double[] times = footage.timesS();
    int k = frameBefore(timeS);
    if (k >= times.length - 1) {
      return displacement[times.length - 1].clone();
    }
    float part = (float) Math.max(0, (timeS - times[k]) / (times[k + 1] - times[k]));
    float[] at = new float[2 * blob.area()];
    for (int i = 0; i < at.length; i++) {
      at[i] = displacement[k][i] + part * (displacement[k + 1][i] - displacement[k][i]);
    }
    return at;
  }

  /** Returns the last frame at or before a moment; the first before all. */
  int frameBefore(double timeS) {
    int found = java.util.Arrays.binarySearch(footage.timesS(), timeS);
    return found >= 0 ? found : Math.max(0, -found - 2);
  }

  /** Returns the frame nearest to a moment. */
  int nearestFrame(double timeS) {
    double[] times = footage.timesS();
    int before = frameBefore(timeS);
    int after = Math.min(before + 1, times.length - 1);
    return Math.abs(times[after] - timeS) < Math.abs(timeS - times[before]) ? after : before;
  }
}
