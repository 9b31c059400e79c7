package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Curve;

/** The curves behind an estimate: the turn of the hand, and the onsets in the sound. */
final class CurvePainter {
  /** Half the height of the turn's lane, pixels. */
  static final double TURN_HALF = 12;

  /** Half the height of the sound's lane, pixels. */
  static final double SOUND_HALF = 14;

  private static final double TURN_TOP = 1.25;
  private static final double SOUND_TOP = 1.5;
  private static final double TICK = 4;

  private CurvePainter() {}

  static void paint(Graphics2D g, BeatStrip strip, EstimateOverlay hollow) {
    Double turnY = strip.lanes().turnY();
    if (turnY != null) {
      g.setColor(strip.palette().rule());
      g.setStroke(new BasicStroke(1));
      BeatStripPainter.line(g, strip.view().leftX(), turnY, strip.view().rightX(), turnY);
      curve(
          g,
          strip,
          hollow.turn(),
          value -> turnY - TURN_HALF * clamp(value / TURN_TOP, -1),
          strip.palette().ink2());
    }
    Double soundY = strip.lanes().soundY();
    if (soundY != null) {
      double foot = soundY + SOUND_HALF;
      curve(
          g,
          strip,
          hollow.sound(),
          value -> foot - 2 * SOUND_HALF * clamp(value / SOUND_TOP, 0),
          strip.palette().sea());
      ticks(g, strip, hollow.onsetsS(), soundY - SOUND_HALF - TICK);
    }
  }

  private static void ticks(Graphics2D g, BeatStrip strip, List<Double> onsetsS, double topY) {
    g.setColor(strip.palette().sea());
    g.setStroke(new BasicStroke(1.75f));
    for (double onsetS : onsetsS) {
      double x = strip.view().x(onsetS);
      if (x >= strip.view().leftX() && x <= strip.view().rightX()) {
        BeatStripPainter.line(g, x, topY, x, topY + TICK);
      }
    }
  }

  private interface Height {
    double y(double value);
  }

  private static void curve(
      Graphics2D g, BeatStrip strip, Curve curve, Height height, Color color) {
    Path2D path = path(strip.view(), curve, height);
    if (path == null) {
      return;
    }
    BeatStrip.View view = strip.view();
    Shape clip = g.getClip();
    g.clip(
        new Rectangle2D.Double(
            view.leftX(), 0, view.rightX() - view.leftX(), strip.lanes().axisY() + 1));
    g.setColor(color);
    g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
    g.draw(path);
    g.setClip(clip);
  }

  /** Returns the part of a curve that is in sight, at most two points a pixel; null for none. */
  private static @Nullable Path2D path(BeatStrip.View view, Curve curve, Height height) {
    Path2D path = new Path2D.Double();
    boolean begun = false;
    double highest = 0;
    double lowest = 0;
    double column = Double.NaN;
    for (int i = 0; i < curve.timesS().size(); i++) {
      double x = view.x(curve.timesS().get(i));
      if (x < view.leftX() - 20 || x > view.rightX() + 20) {
        continue;
      }
      double y = height.y(curve.values().get(i));
      if (!begun) {
        path.moveTo(x, y);
        begun = true;
      } else if (Math.floor(x) != column) {
        path.lineTo(x, y);
      } else if (y < highest || y > lowest) {
        // Within one pixel only what reaches further adds anything to see.
        path.lineTo(x, y);
      } else {
        continue;
      }
      boolean same = Math.floor(x) == column;
      highest = same ? Math.min(highest, y) : y;
      lowest = same ? Math.max(lowest, y) : y;
      column = Math.floor(x);
    }
    return begun ? path : null;
  }

  private static double clamp(double value, double least) {
    return Math.max(least, Math.min(1, value));
  }
}
