package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Quality;

/**
 * One figure of both hands on one scale: the left hand open and above, the right hand filled and
 * below, each with its trials as short lines and its 95 % interval as a box.
 */
public final class HandsChart {
  private static final Font FONT = Lato.regular(13);
  private static final Font BOLD = Lato.bold(13);
  private static final int TICKS = 5;

  /** How high it is drawn, pixels. */
  public static final double HEIGHT = 57;

  private HandsChart() {}

  /**
   * What one hand shows.
   *
   * @param trials one value for each trial that has the figure
   * @param mean over them; null without one
   * @param low lower end of the 95 % interval; null under two trials
   * @param high upper end of it
   */
  public record OneHand(
      List<Double> trials, @Nullable Double mean, @Nullable Double low, @Nullable Double high) {
    public OneHand {
      trials = List.copyOf(trials);
    }
  }

  /**
   * Draws both hands at the top of an area with the scale under them; nothing where neither hand
   * has a value.
   */
  public static void paint(
      Graphics2D g,
      Rectangle2D area,
      OneHand left,
      OneHand right,
      Quality quality,
      @Nullable Double limit,
      Palette palette) {
    if (left.trials().isEmpty() && right.trials().isEmpty()) {
      return;
    }
    double[] values =
        DoubleStream.concat(
                DoubleStream.concat(numbers(left), numbers(right)),
                limit == null ? DoubleStream.empty() : DoubleStream.of(limit))
            .toArray();
    Scale scale =
        Scale.of(quality, values, area.getMinX() + 8, area.getMaxX() - 24, ends(left, right));
    axis(g, scale, area.getMinY() + 2, area.getMinY() + 38, limit, palette);
    hand(g, scale, left, area.getMinY() + 10, false, palette);
    hand(g, scale, right, area.getMinY() + 29, true, palette);
  }

  private static DoubleStream numbers(OneHand hand) {
    return hand.trials().stream().mapToDouble(Double::doubleValue);
  }

  private static double[] ends(OneHand left, OneHand right) {
    DoubleStream.Builder ends = DoubleStream.builder();
    for (OneHand hand : List.of(left, right)) {
      if (hand.low() != null && hand.high() != null) {
        ends.add(hand.low()).add(hand.high());
      }
    }
    return ends.build().toArray();
  }

  private static void axis(
      Graphics2D g, Scale scale, double top, double foot, @Nullable Double limit, Palette palette) {
    double limitX = limit == null ? Double.NaN : scale.x(limit);
    double limitHalf = 0;
    if (limit != null) {
      String label = "limit " + plain(BigDecimal.valueOf(limit));
      limitHalf = Labels.width(BOLD, label) / 2;
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(2.25f));
      BeatStripPainter.line(g, limitX, top - 2, limitX, foot);
      g.setFont(BOLD);
      g.drawString(label, (float) (limitX - limitHalf), (float) (foot + 16));
    }
    for (BigDecimal tick : scale.ticks()) {
      double x = scale.x(tick.doubleValue());
      String label = plain(tick);
      double half = Labels.width(FONT, label) / 2;
      if (limit != null && Math.abs(x - limitX) < limitHalf + half + 6) {
        continue;
      }
      g.setColor(palette.rule());
      g.setStroke(new BasicStroke(1));
      BeatStripPainter.line(g, x, top, x, foot);
      g.setColor(palette.ink3());
      g.setFont(FONT);
      g.drawString(label, (float) (x - half), (float) (foot + 16));
    }
  }

  private static void hand(
      Graphics2D g, Scale scale, OneHand hand, double y, boolean filled, Palette palette) {
    if (hand.low() != null && hand.high() != null) {
      double from = scale.clamped(hand.low());
      double to = scale.clamped(hand.high());
      g.setColor(filled ? palette.inkBand() : palette.sheet());
      g.fill(new Rectangle2D.Double(from, y - 4.5, to - from, 9));
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(1.25f));
      BeatStripPainter.line(g, from, y - 4.5, to, y - 4.5);
      BeatStripPainter.line(g, from, y + 4.5, to, y + 4.5);
      // An interval that runs off the scale is left open at that end.
      if (scale.inside(hand.low())) {
        BeatStripPainter.line(g, from, y - 4.5, from, y + 4.5);
      }
      if (scale.inside(hand.high())) {
        BeatStripPainter.line(g, to, y - 4.5, to, y + 4.5);
      }
    }
    g.setColor(palette.ink2());
    g.setStroke(new BasicStroke(1.25f));
    for (double value : hand.trials()) {
      BeatStripPainter.line(g, scale.x(value), y - 9, scale.x(value), y + 9);
    }
    if (hand.mean() != null) {
      double x = scale.x(hand.mean());
      g.setColor(filled ? palette.ink() : palette.sheet());
      g.fill(MarkShapes.disc(x, y, 6));
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(2.25f));
      g.draw(MarkShapes.disc(x, y, 6));
    }
  }

  static String plain(BigDecimal value) {
    BigDecimal stripped = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
    return stripped.toPlainString().replace('-', '−');
  }

  /** A straight scale with round ticks. */
  record Scale(BigDecimal from, BigDecimal to, BigDecimal step, double left, double right) {

    /**
     * Covers all values, and the ends of intervals as far as twice the values' spread allows, and
     * ends where the quality does.
     */
    static Scale of(Quality quality, double[] values, double left, double right, double[] ends) {
      double low = DoubleStream.of(values).min().orElseThrow();
      double high = DoubleStream.of(values).max().orElseThrow();
      double room = Math.max(high - low, Math.max(Math.abs(high) * 0.5, 0.1));
      double least = Math.max(low - room, DoubleStream.of(ends).min().orElse(low));
      double most = Math.min(high + room, DoubleStream.of(ends).max().orElse(high));
      least = Math.max(quality.least(), Math.min(low - room * 0.1, least));
      most = Math.min(quality.most(), Math.max(high + room * 0.1, most));
      BigDecimal step = step((most - least) / TICKS);
      BigDecimal from = rounded(least, step, RoundingMode.FLOOR);
      return new Scale(from, rounded(most, step, RoundingMode.CEILING), step, left, right);
    }

    private static BigDecimal rounded(double value, BigDecimal step, RoundingMode mode) {
      return BigDecimal.valueOf(value).divide(step, 0, mode).multiply(step);
    }

    private static BigDecimal step(double atLeast) {
      BigDecimal decade = BigDecimal.ONE.scaleByPowerOfTen((int) Math.floor(Math.log10(atLeast)));
      for (String factor : List.of("1", "2", "5")) {
        BigDecimal step = decade.multiply(new BigDecimal(factor));
        if (step.doubleValue() >= atLeast) {
          return step;
        }
      }
      return decade.multiply(BigDecimal.TEN);
    }

    double x(double value) {
      double share = (value - from.doubleValue()) / (to.doubleValue() - from.doubleValue());
      return left + share * (right - left);
    }

    double clamped(double value) {
      return Math.max(left, Math.min(right, x(value)));
    }

    boolean inside(double value) {
      return value >= from.doubleValue() && value <= to.doubleValue();
    }

    List<BigDecimal> ticks() {
      int count = to.subtract(from).divide(step, 0, RoundingMode.HALF_EVEN).intValueExact();
      return IntStream.rangeClosed(0, count)
          .mapToObj(k -> from.add(step.multiply(BigDecimal.valueOf(k))))
          .toList();
    }
  }
}
