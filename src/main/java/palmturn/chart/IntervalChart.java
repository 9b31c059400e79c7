package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jspecify.annotations.Nullable;
import palmturn.measure.SlapInterval;
import palmturn.measure.SlapInterval.Use;
import palmturn.measure.TurnClass;

/**
 * Draws each interval against the time of its middle, in real time: the two turns have shapes of
 * their own, the median is a line, and what rhythm does not rest on is crossed.
 */
public final class IntervalChart {
  private static final Font FONT = Lato.regular(13);
  private static final BasicStroke MEDIAN_STROKE = new BasicStroke(1.5f);
  private static final double MS = 1000;

  private IntervalChart() {}

  /** One kind of point: which intervals it shows, and how. */
  private record Kind(String name, Use use, @Nullable TurnClass turn, Shape shape, boolean filled) {
    boolean shows(SlapInterval interval) {
      return interval.use() == use && (use != Use.RHYTHM || interval.turn() == turn);
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
  public static boolean has(List<SlapInterval> intervals) {
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
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    renderer.setUseOutlinePaint(true);
    renderer.setUseFillPaint(true);
    renderer.setDrawOutlines(true);
    for (Kind kind : KINDS) {
      XYSeries series = new XYSeries(kind.name(), false, true);
      intervals.stream()
          .filter(kind::shows)
          .forEach(each -> series.add(each.midS(), each.durationS() * MS));
      if (!series.isEmpty()) {
        style(renderer, data.getSeriesCount(), kind, palette);
        data.addSeries(series);
      }
    }
    XYPlot plot =
        new XYPlot(
            data,
            axis("seconds after the first slap", palette),
            axis("interval, ms", palette),
            renderer);
    plot.getDomainAxis().setRange(0, toS);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setInsets(new RectangleInsets(2, 0, 2, 10));
    double medianMs = medianMs(intervals);
    plot.addRangeMarker(new ValueMarker(medianMs, palette.ink2(), MEDIAN_STROKE), Layer.BACKGROUND);
    LegendItemCollection legend = plot.getLegendItems();
    legend.add(
        new LegendItem(
            "median " + Math.round(medianMs) + " ms",
            null,
            null,
            null,
            new Line2D.Double(-8, 0, 8, 0),
            MEDIAN_STROKE,
            palette.ink2()));
    plot.setFixedLegendItems(legend);
    JFreeChart chart = new JFreeChart(null, FONT, plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    chart.addSubtitle(legend(plot, palette));
    chart.setElementHinting(false);
    chart.draw(g, area);
  }

  private static void style(
      XYLineAndShapeRenderer renderer, int series, Kind kind, Palette palette) {
    Color color = kind.use() == Use.RHYTHM ? palette.ink() : palette.clay();
    renderer.setSeriesShape(series, kind.shape());
    renderer.setSeriesPaint(series, color);
    renderer.setSeriesOutlinePaint(series, color);
    renderer.setSeriesOutlineStroke(series, new BasicStroke(1.75f));
    renderer.setSeriesFillPaint(series, kind.filled() ? color : palette.sheet());
  }

  private static NumberAxis axis(String label, Palette palette) {
    NumberAxis axis = new NumberAxis(label);
    axis.setStandardTickUnits(NumberAxis.createIntegerTickUnits(Locale.ROOT));
    axis.setAutoRangeIncludesZero(false);
    axis.setLowerMargin(0.12);
    axis.setUpperMargin(0.12);
    axis.setLabelFont(FONT);
    axis.setTickLabelFont(FONT);
    axis.setLabelPaint(palette.ink2());
    axis.setTickLabelPaint(palette.ink3());
    axis.setAxisLinePaint(palette.edge());
    axis.setTickMarkPaint(palette.edge());
    return axis;
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

  private static LegendTitle legend(XYPlot plot, Palette palette) {
    LegendTitle legend = new LegendTitle(plot);
    legend.setItemFont(FONT);
    legend.setItemLabelPadding(new RectangleInsets(2, 4, 2, 16));
    legend.setItemPaint(palette.ink2());
    legend.setBackgroundPaint(null);
    legend.setFrame(BlockBorder.NONE);
    legend.setPosition(RectangleEdge.TOP);
    legend.setHorizontalAlignment(HorizontalAlignment.LEFT);
    return legend;
  }
}
