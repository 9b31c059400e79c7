package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import palmturn.trial.Estimate;
import palmturn.trial.Span;
import palmturn.wording.MarkNames;

/** Draws spans in their lane, and a wash down over the slaps that they spoil. */
final class SpanPainter {
  private static final double ROW = 18;
  private static final double HALF = 7;

  private SpanPainter() {}

  static void washes(Graphics2D g, BeatStrip strip) {
    Color wash = strip.palette().clayWash();
    g.setColor(new Color(wash.getRed(), wash.getGreen(), wash.getBlue(), 128));
    double top = strip.lanes().spansY() - HALF;
    double bottom = strip.lanes().lineY() + 72;
    for (Span span : strip.spans()) {
      if (span.kind().spoils()) {
        double x = strip.view().x(span.startS());
        double width = strip.view().x(span.endS()) - x;
        g.fill(new Rectangle2D.Double(x, top, width, bottom - top));
      }
    }
  }

  /** A span as it is drawn, a reader's or, hollow, the estimate's. */
  private record Drawn(Span.SpanKind kind, double from, double to, double y, boolean hollow) {}

  /** Draws the shape of a kind of span alone. */
  static void icon(
      Graphics2D g,
      Span.SpanKind kind,
      double from,
      double to,
      double y,
      boolean hollow,
      Palette palette) {
    shape(g, new Drawn(kind, from, to, y, hollow), palette);
  }

  static void spans(Graphics2D g, BeatStrip strip, LabelPlacer labels) {
    List<Drawn> drawn = drawn(strip);
    for (Drawn span : drawn) {
      shape(g, span, strip.palette());
      labels.block(
          new Rectangle2D.Double(span.from(), span.y() - HALF, span.to() - span.from(), 2 * HALF));
    }
    if (strip.words()) {
      for (Drawn span : drawn) {
        String word = MarkNames.fault(span.kind()) + (span.hollow() ? "?" : "");
        labels.beside(g, word, span.to() + 7, span.y(), color(span, strip.palette()));
      }
    }
  }

  private static List<Drawn> drawn(BeatStrip strip) {
    List<Drawn> drawn = new ArrayList<>();
    List<Double> rowEnds = new ArrayList<>();
    for (Span span : strip.spans()) {
      drawn.add(place(strip, rowEnds, span.kind(), span.startS(), span.endS(), false));
    }
    EstimateOverlay hollow = strip.overlay();
    if (hollow != null) {
      for (Estimate.EstimatedSpan span : hollow.spans()) {
        drawn.add(place(strip, rowEnds, span.kind(), span.startS(), span.endS(), true));
      }
    }
    return drawn;
  }

  private static Drawn place(
      BeatStrip strip,
      List<Double> rowEnds,
      Span.SpanKind kind,
      double startS,
      double endS,
      boolean hollow) {
    double from = strip.view().x(startS);
    double to = strip.view().x(endS);
    double y = strip.lanes().spansY() + row(rowEnds, from, to) * ROW;
    return new Drawn(kind, from, to, y, hollow);
  }

  private static Color color(Drawn span, Palette palette) {
    return span.hollow() ? palette.sea() : palette.clay();
  }

  private static void shape(Graphics2D g, Drawn span, Palette palette) {
    if (span.kind() == Span.SpanKind.ELBOW_OUT && !span.hollow()) {
      g.setColor(palette.clayWash());
      g.fill(new Rectangle2D.Double(span.from(), span.y() - 6, span.to() - span.from(), 12));
    }
    g.setColor(color(span, palette));
    g.setStroke(new BasicStroke(1.75f));
    switch (span.kind()) {
      case BENT_WRIST -> zigzag(g, span.from(), span.to(), span.y());
      case ELBOW_OUT -> bracket(g, span.from(), span.to(), span.y());
      case TARGET_MOVED -> arrows(g, span.from(), span.to(), span.y());
      case PAUSE -> posts(g, span.from(), span.to(), span.y());
    }
  }

  private static int row(List<Double> ends, double from, double to) {
    int row = 0;
    while (row < ends.size() && ends.get(row) >= from) {
      row++;
    }
    if (row == ends.size()) {
      ends.add(to);
    } else {
      ends.set(row, to);
    }
    return row;
  }

  private static void zigzag(Graphics2D g, double from, double to, double y) {
    int legs = Math.max(2, (int) Math.round((to - from) / 4.5));
    Path2D path = new Path2D.Double();
    path.moveTo(from, y + 6);
    for (int i = 1; i <= legs; i++) {
      path.lineTo(from + (to - from) * i / legs, i % 2 == 1 ? y - 6 : y + 6);
    }
    g.draw(path);
  }

  private static void bracket(Graphics2D g, double from, double to, double y) {
    Path2D path = new Path2D.Double();
    path.moveTo(from, y + 6);
    path.lineTo(from, y - 6);
    path.lineTo(to, y - 6);
    path.lineTo(to, y + 6);
    g.draw(path);
  }

  private static void arrows(Graphics2D g, double from, double to, double y) {
    double tip = Math.min(7, (to - from) / 2);
    g.draw(new Line2D.Double(from, y, to, y));
    g.fill(MarkShapes.polygon(from, y, from + tip, y - 5, from + tip, y + 5));
    g.fill(MarkShapes.polygon(to, y, to - tip, y - 5, to - tip, y + 5));
  }

  private static void posts(Graphics2D g, double from, double to, double y) {
    g.draw(new Line2D.Double(from, y - 6, from, y + 6));
    g.draw(new Line2D.Double(to, y - 6, to, y + 6));
    for (double x = from + 5; x < to - 3; x += 5) {
      g.fill(MarkShapes.disc(x, y, 1.1));
    }
  }
}
