package palmturn.lab.draw;

import java.util.Random;

/** Shake, exposure and sensor: linear light to the pixels of a file. */
final class Sensor {
  /** Fine enough that interpolation errs by less than a grey level. */
  private static final int CURVE_STEPS = 4096;

  private final ClipParameters wanted;
  private final int margin;
  private final int fullWidth;
  private final double[] phases = new double[8];
  private final float[] noise = new float[1 << 16];
  private final float[] curve = new float[CURVE_STEPS + 1];

  Sensor(ClipParameters wanted, int margin, int fullWidth) {
    this.wanted = wanted;
    this.margin = margin;
    this.fullWidth = fullWidth;
    Random random = new Random(wanted.seed() * 17 + 3);
    for (int i = 0; i < phases.length; i++) {
      phases[i] = random.nextDouble() * 2 * Math.PI;
    }
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (float) random.nextGaussian();
    }
    for (int i = 0; i <= CURVE_STEPS; i++) {
      double v = 1.6 * i / CURVE_STEPS;
      // A shoulder keeps highlights from clipping.
      curve[i] = (float) (255 * Math.pow(v / (1 + 0.42 * v) * 1.12, 1 / 2.2));
    }
  }

  int[] pixels(float[] light, double timeS, int index) {
    double sx = wanted.filming().shakePx() * wobble(timeS, 0);
    double sy = wanted.filming().shakePx() * wobble(timeS, 3);
    double turn = wanted.filming().shakePx() * 0.0006 * wobble(timeS, 5);
    double flicker =
        1
            + 0.006 * Math.sin(2 * Math.PI * 0.7 * timeS + phases[6])
            + 0.004 * Math.sin(2 * Math.PI * 19.7 * timeS + phases[7]);
    Random random = new Random(wanted.seed() * 1_000_003 + index);
    int[] out = new int[wanted.filming().width() * wanted.filming().height()];
    double cx = wanted.filming().width() / 2.0;
    double cy = wanted.filming().height() / 2.0;
    for (int y = 0; y < wanted.filming().height(); y++) {
      int n = random.nextInt(noise.length);
      for (int x = 0; x < wanted.filming().width(); x++) {
        double px = margin + x + sx + turn * (y - cy);
        double py = margin + y + sy - turn * (x - cx);
        double edge = ((x - cx) * (x - cx) + (y - cy) * (y - cy)) / (cx * cx + cy * cy);
        double gain = flicker * (1 - 0.16 * edge);
        int argb = 255 << 24;
        for (int i = 0; i < 3; i++) {
          double v = level(sample(light, px, py, i) * gain);
          v += noise[n++ & noise.length - 1] * (0.7 + 0.9 * (1 - v / 255));
          argb |= (int) Math.max(0, Math.min(255, Math.round(v))) << 16 - 8 * i;
        }
        out[y * wanted.filming().width() + x] = argb;
      }
    }
    return out;
  }

  private double level(double light) {
    double at = Math.min(light / 1.6, 1) * CURVE_STEPS;
    int i = Math.min((int) at, CURVE_STEPS - 1);
    return curve[i] + (at - i) * (curve[i + 1] - curve[i]);
  }

  private double sample(float[] light, double x, double y, int channel) {
    int i = (int) Math.floor(x);
    int j = (int) Math.floor(y);
    double u = x - i;
    double v = y - j;
    int at = 3 * (j * fullWidth + i) + channel;
    int below = at + 3 * fullWidth;
    return (1 - v) * ((1 - u) * light[at] + u * light[at + 3])
        + v * ((1 - u) * light[below] + u * light[below + 3]);
  }

  /** A hand-held wobble with a standard deviation of about 1, never over 2.2. */
  private double wobble(double timeS, int from) {
    return 0.9 * Math.sin(2 * Math.PI * 0.43 * timeS + phases[from])
        + 0.7 * Math.sin(2 * Math.PI * 1.31 * timeS + phases[from + 1])
        + 0.6 * Math.sin(2 * Math.PI * 2.9 * timeS + phases[from + 2]);
  }
}
