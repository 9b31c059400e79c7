package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.math.BigDecimal;

/** The time axis of a beat strip: real seconds from the window's start, and the frames. */
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
    double pixelsPerS = (view.rightX() - view.leftX()) / (toReal - fromReal);
    BigDecimal step = step(pixelsPerS);
    Axis seconds = new Axis(fromReal, toReal, step, view.leftX(), view.rightX());
    BigDecimal minor = step.movePointLeft(1);
    if (minor.doubleValue() * pixelsPerS >= TICK_ROOM) {
      Axis tenths = new Axis(fromReal, toReal, minor, view.leftX(), view.rightX());
      for (BigDecimal tick : tenths.ticks()) {
        double x = tenths.at(tick.doubleValue());
        BeatStripPainter.line(g, x, axis, x, axis + 3);
      }
    }
    for (BigDecimal tick : seconds.ticks()) {
      double x = seconds.at(tick.doubleValue());
      if (inWindow(strip, x)) {
        g.setColor(palette.rule());
        BeatStripPainter.line(g, x, top, x, axis);
      }
      Axis.paintTick(g, x, axis, palette);
      if (strip.words()) {
        Axis.paintLabel(g, x, axis, Axis.label(tick) + " s", palette);
      }
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
}
