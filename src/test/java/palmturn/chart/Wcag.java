package palmturn.chart;

import java.awt.Color;

/** Contrast by the formula of WCAG 2.2 (relative luminance, contrast ratio), from memory. */
public final class Wcag {
  private Wcag() {}

  /** Returns the contrast ratio of two colours, 1 to 21. */
  public static double contrast(Color a, Color b) {
    double la = luminance(a);
    double lb = luminance(b);
    return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
  }

  /** Returns what is seen of a colour that lets another shine through. */
  public static Color over(Color front, double share, Color back) {
    return new Color(
        mix(front.getRed(), share, back.getRed()),
        mix(front.getGreen(), share, back.getGreen()),
        mix(front.getBlue(), share, back.getBlue()));
  }

  private static int mix(int front, double share, int back) {
    return (int) Math.round(share * front + (1 - share) * back);
  }

  private static double luminance(Color c) {
    return 0.2126 * linear(c.getRed())
        + 0.7152 * linear(c.getGreen())
        + 0.0722 * linear(c.getBlue());
  }

  private static double linear(int channel) {
    double s = channel / 255.0;
    return s <= 0.04045 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4);
  }
}
