package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.math.BigDecimal;

/** Draws a beat strip's time axis: real seconds from the window's start, and the frames. */
final class TimeAxis {
  private static final BigDecimal[] STEPS = {
    new BigDecimal("0.1"),
    new BigDecimal("0.2"),
    new BigDecimal("0.5"),
    BigDecimal.ONE,
    BigDecimal.valueOf(2),
    BigDecimal.valueOf(5),
    BigDecimal.TEN,
    BigDecimal.valueOf(30),
    BigDecimal.valueOf(60)
  };
  private static final double LABEL_ROOM = 100;
  private static final double TICK_ROOM = 8;
  private static final Font FONT = Lato.regular(13);

  private TimeAxis() {}

  static void paint(Graphics2D g, BeatStrip strip) {
    BeatStrip.View view = strip.view();
    Palette palette = strip.palette();
    double axis = strip.lanes().axisY();
    double top = strip.lanes().topY();
    g.setColor(palette.rule());
    g.setStroke(new BasicStroke(1));
    for (double frameS : strip.framesS()) {
      double x = view.x(frameS);
      BeatStripPainter.line(g, x, axis - 12, x, axis);
    }
    g.setColor(palette.edge());
    BeatStripPainter.line(g, view.leftX(), axis, view.rightX(), axis);
    double zeroS = strip.window() == null ? 0 : strip.window().fromS();
    double fromReal = strip.scale().realBetween(zeroS, view.fromS());
    double toReal = strip.scale().realBetween(zeroS, view.timeS(view.rightX()));
    double pixelsPerReal = (view.rightX() - view.leftX()) / (toReal - fromReal);
    BigDecimal step = step(pixelsPerReal);
    ticks(g, strip, fromReal, toReal, step.doubleValue() / 10);
    long first = (long) Math.ceil(fromReal / step.doubleValue() - 1e-9);
    for (long k = first; ; k++) {
      BigDecimal real = step.multiply(BigDecimal.valueOf(k));
      double x = view.leftX() + (real.doubleValue() - fromReal) * pixelsPerReal;
      if (x > view.rightX() + 1e-6) {
        break;
      }
      if (inWindow(strip, x)) {
        g.setColor(palette.rule());
        BeatStripPainter.line(g, x, top, x, axis);
      }
      g.setColor(palette.edge());
      BeatStripPainter.line(g, x, axis, x, axis + 5);
      if (!strip.words()) {
        continue;
      }
      String label = label(real);
      g.setFont(FONT);
      g.setColor(palette.ink3());
      double half = Labels.width(FONT, label) / 2;
      g.drawString(label, (float) (x - half), (float) (axis + 19));
    }
  }

  private static void ticks(
      Graphics2D g, BeatStrip strip, double fromReal, double toReal, double stepReal) {
    BeatStrip.View view = strip.view();
    double pixels = (view.rightX() - view.leftX()) / (toReal - fromReal);
    if (stepReal * pixels < TICK_ROOM) {
      return;
    }
    double axis = strip.lanes().axisY();
    for (long k = (long) Math.ceil(fromReal / stepReal); k * stepReal <= toReal; k++) {
      double x = view.leftX() + (k * stepReal - fromReal) * pixels;
      BeatStripPainter.line(g, x, axis, x, axis + 3);
    }
  }

  private static boolean inWindow(BeatStrip strip, double x) {
    BeatStrip.Window window = strip.window();
    return window != null
        && x > strip.view().x(window.fromS()) + 1
        && x < strip.view().x(window.toS()) - 1;
  }

  private static BigDecimal step(double pixelsPerS) {
    for (BigDecimal step : STEPS) {
      if (step.doubleValue() * pixelsPerS >= LABEL_ROOM) {
        return step;
      }
    }
    return STEPS[STEPS.length - 1];
  }

  private static String label(BigDecimal seconds) {
    BigDecimal plain = seconds.signum() == 0 ? BigDecimal.ZERO : seconds.stripTrailingZeros();
    return plain.toPlainString().replace('-', '−') + " s";
  }
}
