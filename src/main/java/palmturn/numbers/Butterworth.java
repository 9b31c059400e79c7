package palmturn.numbers;

import java.util.Locale;
import org.hipparchus.complex.Complex;

/**
 * Butterworth filters as second-order sections: analogue poles by the usual band transforms, then
 * the bilinear transform with pre-warped cutoffs, so that the gain at a cutoff is 1/√2 in {@link
 * #filter} and 1/2 in {@link #filtfilt}.
 */
public final class Butterworth {
  private final Section[] sections;
  private final int padding;

  private Butterworth(Section[] sections, boolean oddOrder) {
    this.sections = sections;
    this.padding = 3 * (2 * sections.length + 1 - (oddOrder ? 1 : 0));
  }

  /**
   * Returns a low-pass filter.
   *
   * @param order 1 or more
   * @param cutoffHz cutoff, above 0 and below half the rate
   * @param rateHz samples a second
   */
  public static Butterworth lowPass(int order, double cutoffHz, double rateHz) {
    double warped = warp(order, cutoffHz, rateHz);
    Section[] sections = new Section[(order + 1) / 2];
    for (int k = 0; k < sections.length; k++) {
      Complex pole = digital(prototypePole(order, k).multiply(warped));
      sections[k] =
          isReal(order, k)
              ? Section.of(1, 1, 0, pole, Complex.ZERO, Complex.ONE)
              : Section.of(1, 2, 1, pole, pole.conjugate(), Complex.ONE);
    }
    return new Butterworth(sections, order % 2 == 1);
  }

  /**
   * Returns a high-pass filter.
   *
   * @param order 1 or more
   * @param cutoffHz cutoff, above 0 and below half the rate
   * @param rateHz samples a second
   */
  public static Butterworth highPass(int order, double cutoffHz, double rateHz) {
    double warped = warp(order, cutoffHz, rateHz);
    Section[] sections = new Section[(order + 1) / 2];
    for (int k = 0; k < sections.length; k++) {
      Complex pole = digital(prototypePole(order, k).reciprocal().multiply(warped));
      sections[k] =
          isReal(order, k)
              ? Section.of(1, -1, 0, pole, Complex.ZERO, Complex.MINUS_ONE)
              : Section.of(1, -2, 1, pole, pole.conjugate(), Complex.MINUS_ONE);
    }
    return new Butterworth(sections, order % 2 == 1);
  }

  /**
   * Returns a band-pass filter; it has twice as many poles as the order, as in SciPy.
   *
   * @param order 1 or more
   * @param lowHz lower cutoff, above 0
   * @param highHz upper cutoff, above {@code lowHz}, below half the rate
   * @param rateHz samples a second
   */
  public static Butterworth bandPass(int order, double lowHz, double highHz, double rateHz) {
    double low = warp(order, lowHz, rateHz);
    double high = warp(order, highHz, rateHz);
    if (low >= high) {
      throw new IllegalArgumentException(
          "need a lower cutoff below the upper one, got %s Hz and %s Hz".formatted(lowHz, highHz));
    }
    double centre = Math.sqrt(low * high);
    Complex unit = Complex.I.multiply(2 * Math.atan(centre / 2)).exp();
    Section[] sections = new Section[order];
    for (int k = 0; 2 * k < order; k++) {
      Complex half = prototypePole(order, k).multiply((high - low) / 2);
      Complex root = half.multiply(half).subtract(centre * centre).sqrt();
      Complex above = digital(half.add(root));
      Complex below = digital(half.subtract(root));
      if (isReal(order, k)) {
        sections[k] = Section.of(1, 0, -1, above, below, unit);
      } else {
        sections[k] = Section.of(1, 0, -1, above, above.conjugate(), unit);
        sections[order - 1 - k] = Section.of(1, 0, -1, below, below.conjugate(), unit);
      }
    }
    return new Butterworth(sections, false);
  }

  /** Filters forwards from rest, which delays the signal. */
  public double[] filter(double[] x) {
    return run(x, false);
  }

  /**
   * Filters forwards and backwards, which leaves no delay. The ends are padded by odd reflection,
   * as in SciPy's {@code sosfiltfilt}; a series shorter than the padding is padded by all it has.
   */
  public double[] filtfilt(double[] x) {
    if (x.length == 0) {
      return x;
    }
    int pad = Math.min(padding, x.length - 1);
    double[] padded = new double[x.length + 2 * pad];
    System.arraycopy(x, 0, padded, pad, x.length);
    int last = x.length - 1;
    for (int i = 1; i <= pad; i++) {
      padded[pad - i] = 2 * x[0] - x[i];
      padded[pad + last + i] = 2 * x[last] - x[last - i];
    }
    double[] there = run(padded, true);
    double[] back = reversed(run(reversed(there), true));
    double[] result = new double[x.length];
    System.arraycopy(back, pad, result, 0, x.length);
    return result;
  }

  private double[] run(double[] x, boolean settled) {
    double[] y = x.clone();
    double rest = settled && x.length > 0 ? x[0] : 0;
    for (Section section : sections) {
      section.run(y, rest);
      rest *= section.dcGain();
    }
    return y;
  }

  private static double[] reversed(double[] x) {
    double[] result = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      result[i] = x[x.length - 1 - i];
    }
    return result;
  }

  /** Pre-warps a digital frequency to the analogue one that the bilinear transform maps to it. */
  private static double warp(int order, double hz, double rateHz) {
    if (order < 1 || !(hz > 0) || !(hz < rateHz / 2)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "need order 1 or more and a cutoff below half the rate, got order %d, %s Hz at %s Hz",
              order,
              hz,
              rateHz));
    }
    return 2 * Math.tan(Math.PI * hz / rateHz);
  }

  /** Returns a pole of the analogue low-pass prototype (cutoff 1), upper half plane only. */
  private static Complex prototypePole(int order, int k) {
    if (isReal(order, k)) {
      return Complex.MINUS_ONE;
    }
    double angle = Math.PI * (2 * k + 1) / (2.0 * order);
    return new Complex(-Math.sin(angle), Math.cos(angle));
  }

  private static boolean isReal(int order, int k) {
    return 2 * k + 1 == order;
  }

  private static Complex digital(Complex pole) {
    return pole.add(2).divide(pole.negate().add(2));
  }

  /** A second-order section, in transposed direct form II. */
  private record Section(double b0, double b1, double b2, double a1, double a2) {

    /** Returns a section whose gain is 1 at the point {@code unit} of the unit circle. */
    static Section of(double b0, double b1, double b2, Complex pole, Complex other, Complex unit) {
      double a1 = -pole.add(other).getReal();
      double a2 = pole.multiply(other).getReal();
      Complex zeros = unit.multiply(b0).add(b1).multiply(unit).add(b2);
      Complex poles = unit.add(a1).multiply(unit).add(a2);
      double scale = poles.norm() / zeros.norm();
      return new Section(b0 * scale, b1 * scale, b2 * scale, a1, a2);
    }

    double dcGain() {
      return (b0 + b1 + b2) / (1 + a1 + a2);
    }

    /** Filters in place, starting as if the input had been {@code rest} for ever. */
    void run(double[] x, double rest) {
      double output = rest * dcGain();
      double first = output - b0 * rest;
      double second = b2 * rest - a2 * output;
      for (int i = 0; i < x.length; i++) {
        double in = x[i];
        double out = b0 * in + first;
        first = b1 * in - a1 * out + second;
        second = b2 * in - a2 * out;
        x[i] = out;
      }
    }
  }
}
