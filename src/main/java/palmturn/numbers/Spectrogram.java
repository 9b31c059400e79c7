package palmturn.numbers;

import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/** Short-time spectra of real samples: a Hann window, zero-padded to a power of two. */
public final class Spectrogram {
  private final double[] window;
  private final int size;

  /**
   * Prepares a window.
   *
   * @param windowSamples its length, 4 or more
   */
  public Spectrogram(int windowSamples) {
    if (windowSamples < 4) {
      throw new IllegalArgumentException(windowSamples + " samples: a spectrum needs 4 or more");
    }
    window = new double[windowSamples];
    for (int i = 0; i < windowSamples; i++) {
      window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / windowSamples);
    }
    size = Integer.highestOneBit(windowSamples - 1) << 1;
  }

  /** Returns the length of the transform; bin b lies at b·rate/size, up to size/2. */
  public int size() {
    return size;
  }

  /** Returns the root mean square magnitude of white noise of standard deviation 1 in a bin. */
  public double noiseGain() {
    double squares = 0;
    for (double w : window) {
      squares += w * w;
    }
    return Math.sqrt(squares);
  }

  /**
   * Returns the magnitudes |Σ w x e^{−2πi…}| of some bins. Samples outside the array count as 0.
   *
   * @param samples of a real signal
   * @param centre the sample in the middle of the window; may lie outside
   * @param lowBin the first bin wanted
   * @param highBin the bin after the last
   */
  public double[] magnitudes(float[] samples, int centre, int lowBin, int highBin) {
    double[][] data = new double[2][size];
    int first = centre - window.length / 2;
    int from = Math.max(0, -first);
    int to = Math.min(window.length, samples.length - first);
    for (int i = from; i < to; i++) {
      data[0][i] = window[i] * samples[first + i];
    }
    FastFourierTransformer.transformInPlace(data, DftNormalization.STANDARD, TransformType.FORWARD);
    double[] magnitudes = new double[highBin - lowBin];
    for (int bin = lowBin; bin < highBin; bin++) {
      magnitudes[bin - lowBin] = Math.hypot(data[0][bin], data[1][bin]);
    }
    return magnitudes;
  }
}
