package palmturn.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import palmturn.chart.Palette;
import palmturn.wording.VerdictLabel;

/** The small drawings beside words. */
public final class Icons {
  private static final double SIZE = 16;

  private Icons() {}

  /** The program's mark: a palm slap and a back slap on one line. */
  public static final Chart MARK = Chart.decoration(28, 28, Icons::mark);

  /** The ring that stands for the left hand. */
  public static final Chart LEFT =
      Chart.decoration(13, 13, (g, palette) -> ring(g, palette, false));

  /** The disc that stands for the right hand. */
  public static final Chart RIGHT =
      Chart.decoration(13, 13, (g, palette) -> ring(g, palette, true));

  /** Returns the shape that goes with a verdict's word. */
  public static Chart of(VerdictLabel verdict) {
    return Chart.decoration(
        SIZE,
        SIZE,
        (g, palette) ->
            shape(g, verdict.shape(), verdict.wrong() ? palette.clay() : palette.ink()));
  }

  private static void shape(Graphics2D g, VerdictLabel.Shape shape, Color color) {
    g.setColor(color);
    g.setStroke(new BasicStroke(2));
    switch (shape) {
      case TICK -> g.draw(path(2.5, 8.5, 6.5, 12.5, 13.5, 3.5));
      case TRIANGLE -> {
        Path2D triangle = path(8, 2, 15, 14, 1, 14);
        triangle.closePath();
        g.fill(triangle);
      }
      case BARRED_RING -> {
        g.draw(new Ellipse2D.Double(2, 2, 12, 12));
        g.draw(new Line2D.Double(5, 8, 11, 8));
      }
      case EQUALS -> {
        g.draw(new Line2D.Double(2.5, 5.5, 13.5, 5.5));
        g.draw(new Line2D.Double(2.5, 10.5, 13.5, 10.5));
      }
      case DASH -> g.draw(new Line2D.Double(4, 8, 12, 8));
    }
  }

  private static void ring(Graphics2D g, Palette palette, boolean filled) {
    Ellipse2D ring = new Ellipse2D.Double(1, 1, 11, 11);
    g.setColor(palette.ink());
    if (filled) {
      g.fill(ring);
    }
    g.setStroke(new BasicStroke(2));
    g.draw(ring);
  }

  private static void mark(Graphics2D g, Palette palette) {
    g.setColor(palette.ink());
    g.setStroke(new BasicStroke(2));
    g.draw(new Line2D.Double(1, 15, 27, 15));
    g.draw(new Line2D.Double(10, 15, 10, 6));
    g.draw(new Line2D.Double(18, 15, 18, 22));
    g.fill(new Ellipse2D.Double(5.5, 1, 9, 9));
    g.fill(new Rectangle2D.Double(14, 19, 8, 8));
  }

  private static Path2D path(double... points) {
    Path2D path = new Path2D.Double();
    path.moveTo(points[0], points[1]);
    for (int i = 2; i < points.length; i += 2) {
      path.lineTo(points[i], points[i + 1]);
    }
    return path;
  }
}
