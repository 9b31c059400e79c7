package palmturn.app.tally;

import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.chart.Palette;
import palmturn.numbers.Range;

/**
 * A painter of a gauge 120 long: thick is inside the limit, a tall tick the limit, a bar the 95 %
 * interval, hatch what the clip can't resolve, a ring the other hand.
 */
final class GaugeDrawing {
  private static final double LENGTH = 120;
  private static final double HEIGHT = 40;
  private static final double LINE = 24;
  private static final double END = 6;

  /** A narrower hatch is no hatch but a speck. */
  private static final double SEEN = 9;

  private GaugeDrawing() {}

  static Canvas of(Gauge gauge, Look look) {
    Canvas canvas = look.canvas(LENGTH + 2 * END, HEIGHT);
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.translate(END, 0);
    Palette palette = look.theme().palette();
    Color edge = Theme.fx(palette.edge());
    Color ink = Theme.fx(palette.ink());
    stroke(g, edge, 1.5, 0, LENGTH);
    Double limit = gauge.limit();
    if (limit != null) {
      double at = x(gauge, limit);
      double floor = gauge.floor() == null ? 0 : x(gauge, gauge.floor());
      floor = floor < SEEN ? 0 : floor;
      stroke(g, edge, 3, gauge.insideBelow() ? floor : at, gauge.insideBelow() ? at : LENGTH);
      g.setStroke(Theme.fx(palette.ink2()));
      g.setLineWidth(1.5);
      g.strokeLine(at, LINE - 8, at, LINE + 8);
    }
    if (gauge.floor() != null && x(gauge, gauge.floor()) >= SEEN) {
      hatch(g, edge, Theme.fx(palette.paper()), x(gauge, gauge.floor()));
    }
    if (gauge.other() != null) {
      ring(g, gauge, x(gauge, gauge.other()), palette);
    }
    Range interval = gauge.interval();
    if (interval != null) {
      double low = x(gauge, interval.low());
      double high = x(gauge, interval.high());
      stroke(g, ink, 2.5, low, high);
      g.setLineWidth(1.5);
      g.strokeLine(low, LINE - 4, low, LINE + 4);
      g.strokeLine(high, LINE - 4, high, LINE + 4);
    }
    g.setFill(ink);
    double value = x(gauge, gauge.value());
    g.fillOval(value - 5, LINE - 5, 10, 10);
    return canvas;
  }

  private static void ring(GraphicsContext g, Gauge gauge, double x, Palette palette) {
    g.setFill(Theme.fx(palette.paper()));
    g.fillOval(x - 4.5, LINE - 4.5, 9, 9);
    g.setStroke(Theme.fx(palette.ink2()));
    g.setLineWidth(1.5);
    g.strokeOval(x - 4.5, LINE - 4.5, 9, 9);
    g.setFill(Theme.fx(palette.ink3()));
    g.setFont(Look.regular(13));
    g.setTextAlign(TextAlignment.CENTER);
    g.fillText(gauge.otherName(), Math.max(14, Math.min(LENGTH - 14, x)), LINE - 11);
  }

  private static void hatch(GraphicsContext g, Color line, Color behind, double to) {
    g.setFill(behind);
    g.fillRect(0, LINE - 5, to, 10);
    g.setStroke(line);
    g.setLineWidth(1);
    for (double x = 0; x + 5 <= to; x += 4) {
      g.strokeLine(x, LINE + 4, x + 5, LINE - 4);
    }
  }

  private static void stroke(GraphicsContext g, Color color, double width, double from, double to) {
    g.setStroke(color);
    g.setLineWidth(width);
    g.strokeLine(from, LINE, to, LINE);
  }

  private static double x(Gauge gauge, double value) {
    return gauge.share(value) * LENGTH;
  }
}
