package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SpectrogramTest {
  @Test
  void magnitudesAreThoseOfTheTransformWrittenOut() {
    Random random = new Random(5);
    float[] samples = new float[200];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) random.nextGaussian();
    }
    Spectrogram spectrogram = new Spectrogram(85);
    assertEquals(128, spectrogram.size());
    for (int centre : new int[] {0, 20, 100, 190, 199}) {
      assertArrayEquals(
          writtenOut(samples, centre, 85, 128, 3, 40),
          spectrogram.magnitudes(samples, centre, 3, 40),
          1e-9);
    }
  }

  @Test
  void outsideTheSamplesThereIsNothing() {
    float[] samples = {1, 1, 1, 1};
    assertArrayEquals(new double[5], new Spectrogram(8).magnitudes(samples, 50, 0, 5), 0);
    assertArrayEquals(new double[5], new Spectrogram(8).magnitudes(samples, -50, 0, 5), 0);
  }

  @Test
  void aSineStandsInItsBin() {
    float[] samples = new float[512];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) Math.sin(2 * Math.PI * 10 * i / 64.0);
    }
    double[] magnitudes = new Spectrogram(64).magnitudes(samples, 256, 0, 33);
    // The mean of a Hann window is a half, and a sine of height 1 puts a half on either side.
    assertEquals(64 * 0.5 * 0.5, magnitudes[10], 0.01);
    assertEquals(0, magnitudes[14], 0.1);
  }

  @Test
  void noiseGainIsTheMagnitudeOfWhiteNoise() {
    Random random = new Random(6);
    float[] samples = new float[200_000];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) random.nextGaussian();
    }
    Spectrogram spectrogram = new Spectrogram(512);
    double squares = 0;
    int n = 0;
    for (int centre = 256; centre < 199_000; centre += 512) {
      for (double magnitude : spectrogram.magnitudes(samples, centre, 20, 120)) {
        squares += magnitude * magnitude;
        n++;
      }
    }
    assertEquals(spectrogram.noiseGain(), Math.sqrt(squares / n), 0.02 * spectrogram.noiseGain());
  }

  @Test
  void aWindowOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Spectrogram(3));
  }

  private static double[] writtenOut(
      float[] x, int centre, int window, int size, int low, int high) {
    double[] magnitudes = new double[high - low];
    for (int bin = low; bin < high; bin++) {
      double re = 0;
      double im = 0;
      for (int i = 0; i < window; i++) {
        int at = centre - window / 2 + i;
        double sample = at >= 0 && at < x.length ? x[at] : 0;
        double w = Math.pow(Math.sin(Math.PI * (i + 0.5) / window), 2);
        re += w * sample * Math.cos(2 * Math.PI * bin * i / size);
        im -= w * sample * Math.sin(2 * Math.PI * bin * i / size);
      }
      magnitudes[bin - low] = Math.hypot(re, im);
    }
    return magnitudes;
  }
}
