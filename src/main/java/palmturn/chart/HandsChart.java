package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Quality;

/**
 * One figure of both hands on one scale: the left hand open and above, the right hand filled and
 * below, each with its trials as short lines and its 95 % interval as a box.
 */
public final class HandsChart {
  private static final Font BOLD = Lato.bold(13);

  /** Height of the drawing, pixels. */
  public static final double HEIGHT = 57;

  private HandsChart() {}

  /**
   * The figures of one hand.
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
    Axis axis =
        Axis.of(quality, values, ends(left, right), area.getMinX() + 8, area.getMaxX() - 24);
    axis(g, axis, area.getMinY() + 2, area.getMinY() + 38, limit, palette);
    hand(g, axis, left, area.getMinY() + 10, false, palette);
    hand(g, axis, right, area.getMinY() + 29, true, palette);
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
      Graphics2D g, Axis axis, double top, double foot, @Nullable Double limit, Palette palette) {
    double limitX = limit == null ? Double.NaN : axis.at(limit);
    double limitHalf = 0;
    if (limit != null) {
      String label = "limit " + Axis.label(limit);
      limitHalf = LabelPlacer.width(BOLD, label) / 2;
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(2.25f));
      BeatStripPainter.line(g, limitX, top - 2, limitX, foot);
      g.setFont(BOLD);
      g.drawString(label, (float) (limitX - limitHalf), (float) (foot + 16));
    }
    for (BigDecimal tick : axis.ticks()) {
      double x = axis.at(tick.doubleValue());
      String label = Axis.label(tick);
      double half = LabelPlacer.width(Axis.FONT, label) / 2;
      if (limit != null && Math.abs(x - limitX) < limitHalf + half + 6) {
        continue;
      }
      g.setColor(palette.rule());
      g.setStroke(new BasicStroke(1));
      BeatStripPainter.line(g, x, top, x, foot);
      g.setColor(palette.ink3());
      g.setFont(Axis.FONT);
      g.drawString(label, (float) (x - half), (float) (foot + 16));
    }
  }

  private static void hand(
      Graphics2D g, Axis axis, OneHand hand, double y, boolean filled, Palette palette) {
    if (hand.low() != null && hand.high() != null) {
      double from = axis.clampedAt(hand.low());
      double to = axis.clampedAt(hand.high());
      g.setColor(filled ? palette.inkBand() : palette.sheet());
      g.fill(new Rectangle2D.Double(from, y - 4.5, to - from, 9));
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(1.25f));
      BeatStripPainter.line(g, from, y - 4.5, to, y - 4.5);
      BeatStripPainter.line(g, from, y + 4.5, to, y + 4.5);
      // An interval that runs off the scale is left open at that end.
      if (axis.contains(hand.low())) {
        BeatStripPainter.line(g, from, y - 4.5, from, y + 4.5);
      }
      if (axis.contains(hand.high())) {
        BeatStripPainter.line(g, to, y - 4.5, to, y + 4.5);
      }
    }
    g.setColor(palette.ink2());
    g.setStroke(new BasicStroke(1.25f));
    for (double value : hand.trials()) {
      BeatStripPainter.line(g, axis.at(value), y - 9, axis.at(value), y + 9);
    }
    if (hand.mean() != null) {
      double x = axis.at(hand.mean());
      g.setColor(filled ? palette.ink() : palette.sheet());
      g.fill(MarkShapes.disc(x, y, 6));
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(2.25f));
      g.draw(MarkShapes.disc(x, y, 6));
    }
  }
}
