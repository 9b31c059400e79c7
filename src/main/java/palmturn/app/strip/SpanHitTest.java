package palmturn.app.strip;

import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.trial.Span;

/** A hit test for spans and their ends. */
final class SpanHitTest {
  private static final double REACH = 6;
  private static final double LANE = 12;

  private SpanHitTest() {}

  /**
   * The span under the mouse.
   *
   * @param movable whether it is one of the two ends, not the middle
   * @param start which end
   */
  record Hit(Span span, boolean movable, boolean start) {}

  static @Nullable Hit at(BeatStrip strip, double x, double y) {
    if (Math.abs(y - strip.lanes().spansY()) > LANE) {
      return null;
    }
    for (Span span : strip.spans()) {
      double from = strip.view().x(span.startS());
      double to = strip.view().x(span.endS());
      if (x >= from - REACH && x <= to + REACH) {
        boolean start = Math.abs(x - from) < Math.abs(x - to);
        double away = Math.min(Math.abs(x - from), Math.abs(x - to));
        return new Hit(span, away <= REACH, start);
      }
    }
    return null;
  }
}
