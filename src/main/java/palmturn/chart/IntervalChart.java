package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.SlapInterval;
import palmturn.measure.SlapInterval.Use;
import palmturn.measure.TurnClass;

/**
 * A chart of the intervals, each at the time of its middle, in real time: the two turns have shapes
 * of their own, the median is a line, and pauses and missed turns, which rhythm leaves out, have
 * the colour of faults.
 */
public final class IntervalChart {
  private static final BasicStroke MEDIAN_STROKE = new BasicStroke(1.5f);
  private static final BasicStroke OUTLINE = new BasicStroke(1.75f);
  private static final double GUTTER = 44;
  private static final double HEAD = 28;
  private static final double FOOT = 42;
  private static final double LEGEND = 100;
  private static final double MS = 1000;

  private IntervalChart() {}

  /** One kind of point: the intervals it shows, and its shape. */
  private record Kind(String name, Use use, @Nullable TurnClass turn, Shape shape, boolean filled) {
    boolean shows(SlapInterval interval) {
      return interval.use() == use && (use != Use.RHYTHM || interval.turn() == turn);
    }

    void paint(Graphics2D g, double x, double y, Palette palette) {
      Color color = use == Use.RHYTHM ? palette.ink() : palette.clay();
      Shape moved = AffineTransform.getTranslateInstance(x, y).createTransformedShape(shape);
      g.setColor(filled ? color : palette.sheet());
      g.fill(moved);
      g.setColor(color);
      g.setStroke(OUTLINE);
      g.draw(moved);
    }
  }

  private static final List<Kind> KINDS =
      List.of(
          new Kind(
              "palm to back",
              Use.RHYTHM,
              TurnClass.PALM_TO_BACK,
              new Rectangle2D.Double(-4.5, -4.5, 9, 9),
              true),
          new Kind(
              "back to palm",
              Use.RHYTHM,
              TurnClass.BACK_TO_PALM,
              new Ellipse2D.Double(-5, -5, 10, 10),
              false),
          new Kind(
              "turn unknown",
              Use.RHYTHM,
              null,
              MarkShapes.polygon(0, -6, 6, 0, 0, 6, -6, 0),
              false),
          new Kind("pause", Use.PAUSE, null, MarkShapes.polygon(0, -6, 6, 5, -6, 5), true),
          new Kind(
              "missed turn between",
              Use.MISSED_TURN,
              null,
              MarkShapes.polygon(0, 6, 6, -5, -6, -5),
              false));

  /** Returns whether there is anything to draw. */
  public static boolean hasRhythm(List<SlapInterval> intervals) {
    return intervals.stream().anyMatch(each -> each.use() == Use.RHYTHM);
  }

  /**
   * Draws the chart.
   *
   * @param intervals of one window, at least one of which rhythm rests on
   * @param toS where the time axis ends, real seconds after the first slap
   */
  public static void paint(
      Graphics2D g, Rectangle2D area, List<SlapInterval> intervals, double toS, Palette palette) {
    Rectangle2D plot =
        new Rectangle2D.Double(
            area.getX() + GUTTER,
            area.getY() + HEAD,
            area.getWidth() - GUTTER - 10,
            area.getHeight() - HEAD - FOOT);
    double medianMs = medianMs(intervals);
    Axis time = Axis.of(0, toS, 6, plot.getMinX(), plot.getMaxX());
    Axis duration = durations(intervals, plot.getMaxY(), plot.getMinY());
    g.setStroke(new BasicStroke(1));
    g.setColor(palette.edge());
    g.draw(new Line2D.Double(plot.getMinX(), plot.getMinY(), plot.getMinX(), plot.getMaxY()));
    g.draw(new Line2D.Double(plot.getMinX(), plot.getMaxY(), plot.getMaxX(), plot.getMaxY()));
    time.paintBelow(g, plot.getMaxY(), " s", palette);
    duration.paintBeside(g, plot.getMinX() - 8, palette);
    g.setFont(Axis.FONT);
    g.setColor(palette.ink2());
    g.drawString("interval, ms", (float) area.getX(), (float) (plot.getMinY() - 10));
    String foot = "seconds after the first slap";
    double right = plot.getMaxX() - LabelPlacer.width(Axis.FONT, foot);
    g.drawString(foot, (float) right, (float) (plot.getMaxY() + 37));
    double y = duration.at(medianMs);
    g.setStroke(MEDIAN_STROKE);
    g.draw(new Line2D.Double(plot.getMinX(), y, plot.getMaxX(), y));
    Legend legend = new Legend(g, area.getX() + LEGEND, plot.getMinY() - 10, palette);
    for (Kind kind : KINDS) {
      List<SlapInterval> shown = intervals.stream().filter(kind::shows).toList();
      shown.forEach(
          each -> kind.paint(g, time.at(each.midS()), duration.at(each.durationS() * MS), palette));
      if (!shown.isEmpty()) {
        legend.add(kind.name(), x -> kind.paint(g, x, legend.middle(), palette));
      }
    }
    legend.add(
        "median " + Math.round(medianMs) + " ms",
        x -> {
          g.setColor(palette.ink2());
          g.setStroke(MEDIAN_STROKE);
          g.draw(new Line2D.Double(x - 8, legend.middle(), x + 8, legend.middle()));
        });
  }

  /** Returns an axis that covers all durations with an eighth of their range to either side. */
  private static Axis durations(List<SlapInterval> intervals, double fromPx, double toPx) {
    double[] ms =
        intervals.stream()
            .filter(each -> each.use() != Use.OTHER_SOURCE)
            .mapToDouble(each -> each.durationS() * MS)
            .toArray();
    double low = DoubleStream.of(ms).min().orElseThrow();
    double high = DoubleStream.of(ms).max().orElseThrow();
    double room = Math.max(1, (high - low) / 8);
    return Axis.of(low - room, high + room, 5, fromPx, toPx);
  }

  private static double medianMs(List<SlapInterval> intervals) {
    double[] sorted =
        intervals.stream()
            .filter(each -> each.use() == Use.RHYTHM)
            .mapToDouble(each -> each.durationS() * MS)
            .sorted()
            .toArray();
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }

  /** One row of signs with their names, from left to right. */
  private static final class Legend {
    private final Graphics2D g;
    private final double baseline;
    private final Palette palette;
    private double x;

    Legend(Graphics2D g, double x, double baseline, Palette palette) {
      this.g = g;
      this.x = x;
      this.baseline = baseline;
      this.palette = palette;
    }

    double middle() {
      return baseline - Axis.LABEL_DROP;
    }

    void add(String name, DoubleConsumer sign) {
      sign.accept(x + 8);
      g.setFont(Axis.FONT);
      g.setColor(palette.ink2());
      g.drawString(name, (float) (x + 20), (float) baseline);
      x += 20 + LabelPlacer.width(Axis.FONT, name) + 20;
    }
  }
}
