package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;
import palmturn.measure.Quality;

/**
 * The linear axis of every chart: values to pixels, round ticks and their labels.
 *
 * @param from value at {@code fromPx}
 * @param to value at {@code toPx}, above {@code from}
 * @param step distance of ticks, above 0; ticks are its multiples
 * @param fromPx x of a horizontal axis, y of a vertical one
 * @param toPx the same of the other end; above {@code fromPx} or below
 */
record Axis(double from, double to, BigDecimal step, double fromPx, double toPx) {
  /** The labels' font. */
  static final Font FONT = Lato.regular(13);

  /** Distance of a label's baseline from a horizontal axis, pixels. */
  static final double LABEL_BELOW = 19;

  /** Distance of a label's baseline from the middle of its line, pixels. */
  static final double LABEL_DROP = 4.6;

  private static final double TICK = 5;
  private static final double QUALITY_STEPS = 5;
  private static final List<BigDecimal> ROUND =
      List.of(BigDecimal.ONE, BigDecimal.valueOf(2), BigDecimal.valueOf(5), BigDecimal.TEN);

  /** Returns an axis with at most so many steps, each 1, 2 or 5 times a power of ten. */
  static Axis of(double from, double to, int mostSteps, double fromPx, double toPx) {
    return new Axis(from, to, roundStep((to - from) / mostSteps), fromPx, toPx);
  }

  /**
   * Returns an axis of a quality, whole steps long. It covers all values, and the ends of intervals
   * as far as twice the values' range allows, and stops where the quality does.
   *
   * @param values at least one
   * @param ends of the intervals about them
   */
  static Axis of(Quality quality, double[] values, double[] ends, double fromPx, double toPx) {
    double low = DoubleStream.of(values).min().orElseThrow();
    double high = DoubleStream.of(values).max().orElseThrow();
    double room = Math.max(high - low, Math.max(Math.abs(high) * 0.5, 0.1));
    double least = Math.max(low - room, DoubleStream.of(ends).min().orElse(low));
    double most = Math.min(high + room, DoubleStream.of(ends).max().orElse(high));
    least = Math.max(quality.least(), Math.min(low - room * 0.1, least));
    most = Math.min(quality.most(), Math.max(high + room * 0.1, most));
    BigDecimal step = roundStep((most - least) / QUALITY_STEPS);
    double size = step.doubleValue();
    return new Axis(
        multiple(step, (long) Math.floor(least / size + 1e-9)).doubleValue(),
        multiple(step, (long) Math.ceil(most / size - 1e-9)).doubleValue(),
        step,
        fromPx,
        toPx);
  }

  private static BigDecimal roundStep(double least) {
    int decade = (int) Math.floor(Math.log10(least));
    return ROUND.stream()
        .map(factor -> factor.scaleByPowerOfTen(decade))
        .filter(step -> step.doubleValue() >= least * (1 - 1e-12))
        .findFirst()
        .orElseThrow();
  }

  private static BigDecimal multiple(BigDecimal step, long times) {
    return step.multiply(BigDecimal.valueOf(times));
  }

  /** Returns the pixel of a value. */
  double at(double value) {
    return fromPx + (value - from) / (to - from) * (toPx - fromPx);
  }

  /** Returns the pixel of a value, or of the nearer end where it lies outside. */
  double clampedAt(double value) {
    return at(Math.max(from, Math.min(to, value)));
  }

  /** Returns whether a value lies on the axis. */
  boolean contains(double value) {
    return value >= from && value <= to;
  }

  /** Returns the ticks, rising. */
  List<BigDecimal> ticks() {
    double size = step.doubleValue();
    return LongStream.rangeClosed(
            (long) Math.ceil(from / size - 1e-9), (long) Math.floor(to / size + 1e-9))
        .mapToObj(times -> multiple(step, times))
        .toList();
  }

  /** Returns a number as axes show it: three decimals at most, no trailing zeros, a true minus. */
  static String label(double value) {
    return label(BigDecimal.valueOf(Math.round(value * 1000)).scaleByPowerOfTen(-3));
  }

  static String label(BigDecimal value) {
    return value.signum() == 0
        ? "0"
        : value.round(MathContext.DECIMAL64).stripTrailingZeros().toPlainString().replace('-', '−');
  }

  /**
   * Draws tick marks and labels under a horizontal axis.
   *
   * @param y of the axis
   * @param unit written after each number, a space before it included; may be empty
   */
  void paintBelow(Graphics2D g, double y, String unit, Palette palette) {
    for (BigDecimal tick : ticks()) {
      double x = at(tick.doubleValue());
      paintTick(g, x, y, palette);
      paintLabel(g, x, y, label(tick) + unit, palette);
    }
  }

  /** Draws one tick mark under a horizontal axis. */
  static void paintTick(Graphics2D g, double x, double y, Palette palette) {
    g.setStroke(new BasicStroke(1));
    g.setColor(palette.edge());
    BeatStripPainter.line(g, x, y, x, y + TICK);
  }

  /** Writes one label under a horizontal axis, centred. */
  static void paintLabel(Graphics2D g, double x, double y, String label, Palette palette) {
    g.setFont(FONT);
    g.setColor(palette.ink3());
    float left = (float) (x - LabelPlacer.width(FONT, label) / 2);
    g.drawString(label, left, (float) (y + LABEL_BELOW));
  }

  /**
   * Writes the labels of a vertical axis.
   *
   * @param right where they end, pixels
   */
  void paintBeside(Graphics2D g, double right, Palette palette) {
    g.setFont(FONT);
    g.setColor(palette.ink3());
    for (BigDecimal tick : ticks()) {
      String label = label(tick);
      double y = at(tick.doubleValue());
      g.drawString(
          label, (float) (right - LabelPlacer.width(FONT, label)), (float) (y + LABEL_DROP));
    }
  }

  /** Draws a faint line across the plot at each tick of a vertical axis. */
  void paintGrid(Graphics2D g, double left, double right, Palette palette) {
    g.setStroke(new BasicStroke(1));
    g.setColor(palette.rule());
    for (BigDecimal tick : ticks()) {
      double y = at(tick.doubleValue());
      BeatStripPainter.line(g, left, y, right, y);
    }
  }
}
