package palmturn.app.tally;

import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.measure.LimitVerdict;

/** A verdict as a shape: tick, triangle or barred ring. */
final class VerdictShape {
  private static final double SIZE = 14;

  private VerdictShape() {}

  static Canvas of(LimitVerdict verdict, Look look) {
    Canvas canvas = look.canvas(SIZE, SIZE);
    GraphicsContext g = canvas.getGraphicsContext2D();
    boolean over = verdict == LimitVerdict.OVER;
    var color = Theme.fx(over ? look.theme().palette().clay() : look.theme().palette().ink2());
    g.setStroke(color);
    g.setFill(color);
    g.setLineWidth(1.75);
    switch (verdict) {
      case WITHIN -> g.strokePolyline(new double[] {2, 5.5, 12}, new double[] {7.5, 11, 3}, 3);
      case OVER -> g.fillPolygon(new double[] {7, 13, 1}, new double[] {2, 12.5, 12.5}, 3);
      case UNCLEAR -> {
        g.strokeOval(2, 2, 10, 10);
        g.strokeLine(4.5, 7, 9.5, 7);
      }
      case CANNOT_TELL -> {}
    }
    return canvas;
  }
}
