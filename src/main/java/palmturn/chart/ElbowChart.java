package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;

/**
 * A chart of the elbow's displacement: its path in the plane of the picture, and beside it its
 * distance from its place against time, with the limit, and the stretches in which it was lost. Its
 * estimated positions in these are dashed, with a standard deviation to either side.
 */
public final class ElbowChart {
  private static final Font BOLD = Lato.bold(13);
  private static final double ASIDE = 46;
  private static final double FOOT = 42;
  private static final double TOP = 18;
  private static final String LOST = "lost";
  private static final double GAP_S = 0.1;
  private static final float DASH = 5;

  private ElbowChart() {}

  /**
   * The content of the chart.
   *
   * @param path as it was followed
   * @param unit what a distance is shown in: {@code cm}, {@code forearm lengths} or {@code pixels}
   * @param perPixel units in one pixel of the picture
   * @param limit in that unit, null where none can be drawn
   * @param zeroS media time of the axis's 0
   * @param toS where the time axis ends, seconds after 0
   * @param realPerMediaS real seconds in one of the clip
   */
  public record Drawing(
      ElbowPath path,
      String unit,
      double perPixel,
      @Nullable Double limit,
      double zeroS,
      double toS,
      double realPerMediaS) {
    /**
     * Returns a path in the best unit that it has.
     *
     * @param limitCm the limit in centimetres
     */
    public static Drawing of(
        ElbowPath path, double limitCm, double zeroS, double toS, double realPerMediaS) {
      ElbowPath.Unit unit = path.unit();
      return unit == null
          ? new Drawing(path, "pixels", 1, null, zeroS, toS, realPerMediaS)
          : new Drawing(
              path,
              unit.name(),
              unit.perPixel(),
              path.cmPerPixel() == null ? null : (Double) limitCm,
              zeroS,
              toS,
              realPerMediaS);
    }

    double seconds(double timeS) {
      return (timeS - zeroS) * realPerMediaS;
    }

    /** Returns the farthest that the scales must reach. */
    double reach() {
      double most = limit == null ? 0 : limit;
      for (ElbowPath.Sample sample : path.samples()) {
        most = Math.max(most, sample.distancePx() * perPixel);
      }
      for (ElbowPath.GapEstimate unseen : path.gapEstimates()) {
        most = Math.max(most, high(unseen) * perPixel);
      }
      return most <= 0 ? 1 : most * 1.15;
    }
  }

  /** Draws the chart. */
  public static void paint(Graphics2D g, Rectangle2D area, Drawing drawing, Palette palette) {
    double side = area.getHeight() - TOP - FOOT;
    Rectangle2D square = new Rectangle2D.Double(area.getX() + 1, area.getY() + TOP, side, side);
    path(g, square, drawing, palette);
    double left = square.getMaxX() + 24 + ASIDE;
    Rectangle2D plot =
        new Rectangle2D.Double(left, square.getY(), area.getMaxX() - 10 - left, side);
    distance(g, plot, drawing, palette);
  }

  private static void path(Graphics2D g, Rectangle2D in, Drawing d, Palette palette) {
    double half = in.getWidth() / 2;
    double perUnit = half / d.reach();
    g.setColor(palette.edge());
    g.setStroke(new BasicStroke(1));
    g.draw(in);
    double x = in.getCenterX();
    double y = in.getCenterY();
    g.setColor(palette.rule());
    BeatStripPainter.line(g, in.getX(), y, in.getMaxX(), y);
    BeatStripPainter.line(g, x, in.getY(), x, in.getMaxY());
    Double limit = d.limit();
    if (limit != null) {
      g.setColor(palette.ink());
      g.setStroke(MarkShapes.dashed(1.5f, 4));
      double r = limit * perUnit;
      g.draw(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
    }
    Path2D way = new Path2D.Double();
    double before = Double.NEGATIVE_INFINITY;
    for (ElbowPath.Sample sample : d.path().samples()) {
      double atX = x + sample.rightPx() * d.perPixel() * perUnit;
      double atY = y + sample.downPx() * d.perPixel() * perUnit;
      double timeS = sample.timeS();
      if (gapBetween(d.path().gaps(), before, timeS)) {
        way.moveTo(atX, atY);
      } else {
        way.lineTo(atX, atY);
      }
      before = timeS;
    }
    g.setColor(palette.sea());
    g.setStroke(MarkShapes.round(1.5f));
    g.draw(way);
    for (List<ElbowPath.GapEstimate> part : parts(d.path().gapEstimates())) {
      g.setStroke(MarkShapes.dashed(1.5f, DASH));
      g.draw(
          line(
              part,
              each -> x + each.rightPx() * d.perPixel() * perUnit,
              each -> y + each.downPx() * d.perPixel() * perUnit));
    }
    g.setColor(palette.ink());
    g.fill(MarkShapes.disc(x, y, 3));
    g.setFont(Axis.FONT);
    g.setColor(palette.ink2());
    g.drawString("path in the picture", (float) in.getX(), (float) (in.getMaxY() + 19));
  }

  private static void distance(Graphics2D g, Rectangle2D in, Drawing d, Palette palette) {
    Axis distance = Axis.of(0, d.reach(), 4, in.getMaxY(), in.getY());
    distance.paintGrid(g, in.getX(), in.getMaxX(), palette);
    distance.paintBeside(g, in.getX() - 8, palette);
    g.setColor(palette.edge());
    BeatStripPainter.line(g, in.getX(), in.getMaxY(), in.getMaxX(), in.getMaxY());
    Axis time = Axis.of(0, d.toS(), 6, in.getX(), in.getMaxX());
    time.paintBelow(g, in.getMaxY(), " s", palette);
    lost(g, in, d, time, palette);
    Shape clip = g.getClip();
    g.clip(in);
    Path2D curve = new Path2D.Double();
    double before = Double.NEGATIVE_INFINITY;
    for (ElbowPath.Sample sample : d.path().samples()) {
      double timeS = sample.timeS();
      double x = time.at(d.seconds(timeS));
      double y = distance.at(sample.distancePx() * d.perPixel());
      if (gapBetween(d.path().gaps(), before, timeS)) {
        curve.moveTo(x, y);
      } else {
        curve.lineTo(x, y);
      }
      before = timeS;
    }
    g.setColor(palette.sea());
    g.setStroke(MarkShapes.round(1.75f));
    g.draw(curve);
    unseen(g, d, time, distance, palette);
    g.setClip(clip);
    limit(g, in, d, distance, palette);
    g.setFont(Axis.FONT);
    g.setColor(palette.ink2());
    g.drawString(
        "distance from its place, " + d.unit(), (float) in.getX(), (float) (in.getY() - 6));
    String foot = "seconds after the first slap";
    g.drawString(
        foot,
        (float) (in.getMaxX() - LabelPlacer.width(Axis.FONT, foot)),
        (float) (in.getMaxY() + 37));
  }

  private static void unseen(Graphics2D g, Drawing d, Axis time, Axis distance, Palette palette) {
    ToDoubleFunction<ElbowPath.GapEstimate> x = each -> time.at(d.seconds(each.timeS()));
    for (List<ElbowPath.GapEstimate> part : parts(d.path().gapEstimates())) {
      Path2D band = line(part, x, each -> distance.at(high(each) * d.perPixel()));
      List<ElbowPath.GapEstimate> back = new ArrayList<>(part);
      Collections.reverse(back);
      band.append(line(back, x, each -> distance.at(low(each) * d.perPixel())), true);
      band.closePath();
      g.setColor(palette.seaBand());
      g.fill(band);
      g.setColor(palette.sea());
      g.setStroke(MarkShapes.dashed(1.75f, DASH));
      g.draw(line(part, x, each -> distance.at(each.distancePx() * d.perPixel())));
    }
  }

  private static double low(ElbowPath.GapEstimate unseen) {
    return Math.max(0, unseen.distancePx() - unseen.sdPx());
  }

  private static double high(ElbowPath.GapEstimate unseen) {
    return unseen.distancePx() + unseen.sdPx();
  }

  /** Returns the moments without a gap between them, in order. */
  private static List<List<ElbowPath.GapEstimate>> parts(List<ElbowPath.GapEstimate> unseen) {
    List<List<ElbowPath.GapEstimate>> parts = new ArrayList<>();
    double before = Double.NEGATIVE_INFINITY;
    for (ElbowPath.GapEstimate each : unseen) {
      if (each.timeS() - before > GAP_S) {
        parts.add(new ArrayList<>());
      }
      parts.get(parts.size() - 1).add(each);
      before = each.timeS();
    }
    return parts;
  }

  private static Path2D line(
      List<ElbowPath.GapEstimate> part,
      ToDoubleFunction<ElbowPath.GapEstimate> x,
      ToDoubleFunction<ElbowPath.GapEstimate> y) {
    Path2D line = new Path2D.Double();
    for (int i = 0; i < part.size(); i++) {
      double atX = x.applyAsDouble(part.get(i));
      double atY = y.applyAsDouble(part.get(i));
      if (i == 0) {
        line.moveTo(atX, atY);
      } else {
        line.lineTo(atX, atY);
      }
    }
    return line;
  }

  private static void limit(
      Graphics2D g, Rectangle2D in, Drawing d, Axis distance, Palette palette) {
    Double limit = d.limit();
    if (limit == null) {
      return;
    }
    double y = distance.at(limit);
    g.setColor(palette.ink());
    g.setStroke(MarkShapes.dashed(1.5f, 4));
    BeatStripPainter.line(g, in.getX(), y, in.getMaxX(), y);
    String words = "limit " + Axis.label(limit);
    g.setFont(BOLD);
    g.drawString(
        words, (float) (in.getMaxX() - LabelPlacer.width(BOLD, words)), (float) (in.getY() - 6));
  }

  private static void lost(Graphics2D g, Rectangle2D in, Drawing d, Axis time, Palette palette) {
    LabelPlacer labels = new LabelPlacer();
    for (Estimate.Stretch gap : d.path().gaps()) {
      double from = Math.max(in.getX(), time.at(d.seconds(gap.startS())));
      double to = Math.min(in.getMaxX(), time.at(d.seconds(gap.endS())));
      if (to <= from) {
        continue;
      }
      Shape clip = g.getClip();
      g.clip(new Rectangle2D.Double(from, in.getY(), to - from, in.getHeight()));
      g.setColor(palette.edge());
      g.setStroke(new BasicStroke(1));
      for (double x = from - in.getHeight(); x < to; x += 9) {
        BeatStripPainter.line(g, x, in.getMaxY(), x + in.getHeight(), in.getY());
      }
      g.setClip(clip);
      double half = LabelPlacer.width(Axis.FONT, LOST) / 2 + 3;
      double middle = (from + to) / 2;
      g.setColor(palette.sheet());
      g.fill(new Rectangle2D.Double(middle - half, in.getY() + 2, 2 * half, 17));
      labels.centred(g, LOST, middle, in.getY() + 10, palette.ink2());
    }
  }

  private static boolean gapBetween(List<Estimate.Stretch> gaps, double beforeS, double timeS) {
    return beforeS == Double.NEGATIVE_INFINITY
        || timeS - beforeS > GAP_S
            && gaps.stream().anyMatch(gap -> gap.startS() < timeS && gap.endS() > beforeS);
  }
}
