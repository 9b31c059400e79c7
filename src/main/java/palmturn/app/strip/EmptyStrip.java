package palmturn.app.strip;

import javafx.scene.canvas.GraphicsContext;
import palmturn.app.look.Theme;
import palmturn.chart.BeatStrip;
import palmturn.chart.Palette;

/** The explanation shown in the strip while no trial is open. */
final class EmptyStrip {
  private static final double FROM = 331;
  private static final double LENGTH = 960;
  private static final double STEM = 33;

  private EmptyStrip() {}

  static void draw(GraphicsContext g, Palette palette) {
    double line = BeatStrip.Lanes.APP.lineY();
    double top = BeatStrip.Lanes.APP.topY();
    double axis = BeatStrip.Lanes.APP.axisY();
    g.setFill(Theme.fx(palette.sheet()));
    g.fillRect(FROM, top, LENGTH, axis - top);
    g.setStroke(Theme.fx(palette.edge()));
    g.setLineWidth(1.5);
    g.strokeLine(FROM, line, FROM + LENGTH, line);
    g.strokeLine(FROM, axis, FROM + LENGTH, axis);
    for (int second = 0; second <= 5; second++) {
      double x = FROM + second * LENGTH / 5;
      g.strokeLine(x, axis, x, axis - 5);
      LanePainter.drawText(g, second + " s", x - 8, axis + 19, 13, false, Theme.fx(palette.ink3()));
    }
    g.setFill(Theme.fx(palette.edge()));
    for (int slap = 0; slap < 8; slap++) {
      double x = FROM + 19 + slap * 38.4;
      boolean palm = slap % 2 == 0;
      double end = palm ? line - STEM : line + STEM;
      g.strokeLine(x, line, x, end);
      if (palm) {
        g.fillOval(x - 6.6, end - 6.6, 13.2, 13.2);
      } else {
        g.fillRect(x - 6, end - 6, 12, 12);
      }
    }
    double x = FROM + LENGTH * 0.4;
    var ink = Theme.fx(palette.ink());
    var ink2 = Theme.fx(palette.ink2());
    LanePainter.drawText(g, "Your slaps will appear here", x, line - 44, 15, true, ink);
    LanePainter.drawText(
        g, "palm above the line, back below it, time to the right", x, line - 24, 14, false, ink2);
    LanePainter.drawText(g, "An even fence means a good trial", x, line + 36, 15, true, ink);
    LanePainter.drawText(
        g, "each fault has its own shape and stands out", x, line + 56, 14, false, ink2);
  }
}
