package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;
import palmturn.wording.MarkNames;

/** The heads of marks: every kind has a shape of its own, so that none is told by colour alone. */
final class MarkShapes {
  private static final double DISC = 6.6;
  private static final double SQUARE = 12;
  private static final double DOUBLE = 5;

  private MarkShapes() {}

  /**
   * Draws a head.
   *
   * @param x middle of the head, pixels
   * @param y middle of the head, pixels
   * @param up 1 where away from the line means up, −1 where it means down
   */
  static void drawHead(
      Graphics2D g, Slap slap, double x, double y, int up, Color color, Color behind) {
    g.setColor(color);
    switch (slap.kind()) {
      case DOUBLE -> g.fill(disc(x, y, DOUBLE));
      case PART_TURN -> {
        g.setColor(behind);
        g.fill(disc(x, y, DISC));
        g.setColor(color);
        g.setStroke(round(2.4f));
        g.draw(new Arc2D.Double(x - 6, y - 6, 12, 12, 0, 270, Arc2D.OPEN));
      }
      case MISSED -> {
        g.setColor(behind);
        g.fill(disc(x, y, DISC));
        g.setColor(color);
        g.setStroke(dashed(1.75f, 3));
        g.draw(disc(x, y, DISC));
      }
      case OTHER -> {
        if (MarkNames.unnamed(slap)) {
          cross(g, x, y);
        } else {
          g.fill(triangle(x, y, up));
        }
      }
      case SLAP -> zone(g, slap, x, y, up, color, behind);
    }
  }

  private static void zone(
      Graphics2D g, Slap slap, double x, double y, int up, Color color, Color behind) {
    switch (slap.zone()) {
      case FINGERS -> comb(g, x, y, up);
      case WRIST -> {
        g.fill(new Rectangle2D.Double(x - 9, up > 0 ? y - 2 : y - 4, 18, 6));
        g.fill(new Rectangle2D.Double(x - 9, up > 0 ? y - 6.5 : y + 4.5, 18, 2));
      }
      case EDGE -> {
        g.setColor(behind);
        g.fill(disc(x, y, DISC));
        g.setColor(color);
        g.setStroke(new BasicStroke(1.75f));
        g.draw(disc(x, y, DISC));
        g.fill(new Arc2D.Double(x - DISC, y - DISC, 2 * DISC, 2 * DISC, 90, 180, Arc2D.CHORD));
      }
      case CENTRE, UNKNOWN -> g.fill(clean(slap.side(), x, y, 0));
    }
  }

  /** Draws the head of what only the program says: the shapes of marks, in outline. */
  static void drawHollowHead(
      Graphics2D g,
      boolean isDouble,
      Side side,
      Zone zone,
      double x,
      double y,
      int up,
      Color color,
      Color behind,
      Stroke outline) {
    Shape shape =
        isDouble
            ? disc(x, y, DOUBLE - 0.5)
            : switch (zone) {
              case FINGERS -> combOutline(x, y, up);
              case WRIST -> new Rectangle2D.Double(x - 8.5, y - 5, 17, 10);
              case EDGE, CENTRE, UNKNOWN -> clean(side, x, y, 0.8);
            };
    g.setColor(behind);
    g.fill(shape);
    g.setColor(color);
    g.setStroke(outline);
    g.draw(shape);
    if (!isDouble && zone == Zone.WRIST) {
      g.draw(new Line2D.Double(x - 8.5, y - up * 1.5, x + 8.5, y - up * 1.5));
    } else if (!isDouble && zone == Zone.EDGE) {
      g.draw(new Line2D.Double(x, y - DISC + 0.8, x, y + DISC - 0.8));
    }
  }

  private static Shape combOutline(double x, double y, int up) {
    double tip = y - up * 6.5;
    double cleft = y + up * 1;
    double foot = y + up * 6;
    return polygon(
        x - 7, foot, x - 7, tip, x - 3, tip, x - 3, cleft, x - 1.6, cleft, x - 1.6, tip, x + 1.6,
        tip, x + 1.6, cleft, x + 3, cleft, x + 3, tip, x + 7, tip, x + 7, foot);
  }

  private static Shape clean(Side side, double x, double y, double inset) {
    double half = SQUARE / 2 - inset;
    return switch (side) {
      case PALM -> disc(x, y, DISC - inset);
      case BACK -> new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half);
      case UNKNOWN -> diamond(x, y);
    };
  }

  private static void comb(Graphics2D g, double x, double y, int up) {
    g.fill(new Rectangle2D.Double(x - 7, up > 0 ? y + 1.5 : y - 6, 14, 4.5));
    for (int tine = -1; tine <= 1; tine++) {
      g.fill(new Rectangle2D.Double(x + tine * 5.6 - 1.4, up > 0 ? y - 6.5 : y - 2, 2.8, 8.5));
    }
  }

  private static void cross(Graphics2D g, double x, double y) {
    g.setStroke(round(2.4f));
    g.draw(new Line2D.Double(x - 5, y - 5, x + 5, y + 5));
    g.draw(new Line2D.Double(x - 5, y + 5, x + 5, y - 5));
  }

  private static Shape triangle(double x, double y, int up) {
    return polygon(x, y - up * 7.5, x + 7.5, y + up * 5.5, x - 7.5, y + up * 5.5);
  }

  static Shape diamond(double x, double y) {
    return polygon(x, y - 7.5, x + 9, y, x, y + 7.5, x - 9, y);
  }

  static Shape disc(double x, double y, double r) {
    return new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r);
  }

  static Shape polygon(double... xy) {
    Path2D path = new Path2D.Double();
    path.moveTo(xy[0], xy[1]);
    for (int i = 2; i < xy.length; i += 2) {
      path.lineTo(xy[i], xy[i + 1]);
    }
    path.closePath();
    return path;
  }

  static BasicStroke round(float width) {
    return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  static BasicStroke dashed(float width, float dash) {
    return new BasicStroke(
        width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {dash, dash}, 0);
  }
}
