package palmturn.app.stage;

import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Text;
import palmturn.app.look.Look;
import palmturn.trial.Estimate;
import palmturn.trial.Point;

/** A painter of the overlay, in white with a dark casing that shows on any picture. */
final class OverlayDrawing {
  private static final Color CASING = Color.web("#0B1210", 0.62);
  private static final Color GROUND = Color.web("#0B1210", 0.80);
  private static final double LINE = 2;
  private static final double CORNER = 18;
  private static final double END = 7;

  private final GraphicsContext g;
  private final double scale;
  private final double fit;
  private final double left;
  private final double top;

  /**
   * Prepares to draw.
   *
   * @param look size of lines and words
   * @param fit pixels of the screen in one of the picture
   * @param left where the picture begins on the screen
   * @param top the same, downwards
   */
  OverlayDrawing(GraphicsContext g, Look look, double fit, double left, double top) {
    this.g = g;
    this.scale = look.scaleProperty().get();
    this.fit = fit;
    this.left = left;
    this.top = top;
  }

  void draw(Overlay overlay) {
    g.setLineCap(StrokeLineCap.BUTT);
    g.setLineJoin(StrokeLineJoin.MITER);
    Estimate.Region region = overlay.region();
    if (region != null) {
      drawRegion(region);
    }
    Overlay.Elbow elbow = overlay.elbow();
    if (elbow != null) {
      double middle =
          region == null ? g.getCanvas().getWidth() / 2 : x(region.x() + region.width() / 2);
      drawElbow(elbow, middle);
    }
    Overlay.ScaleLine scale = overlay.scale();
    if (scale != null) {
      drawScale(scale);
    }
    overlay.points().forEach(this::drawPoint);
    OverlayItem chosen = overlay.chosen();
    if (chosen != null) {
      drawChosen(overlay, chosen);
    }
  }

  private void drawScale(Overlay.ScaleLine line) {
    double x1 = x(line.from().x());
    double y1 = y(line.from().y());
    double x2 = x(line.to().x());
    double y2 = y(line.to().y());
    double length = Math.hypot(x2 - x1, y2 - y1);
    double right = length == 0 ? 0 : (y2 - y1) / length * END * scale;
    double down = length == 0 ? 0 : (x1 - x2) / length * END * scale;
    strokeCased(
        () -> {
          g.strokeLine(x1, y1, x2, y2);
          g.strokeLine(x1 - right, y1 - down, x1 + right, y1 + down);
          g.strokeLine(x2 - right, y2 - down, x2 + right, y2 + down);
        });
    drawWords(line.words(), (x1 + x2) / 2 + 8 * scale, (y1 + y2) / 2 + 20 * scale, false);
  }

  /**
   * A cross for the trunk, a ring round a dot for the target, a ring with a cross for the elbow.
   */
  private void drawPoint(OverlayItem what, Point spot) {
    double x = x(spot.x());
    double y = y(spot.y());
    double r = 9 * scale;
    strokeCased(
        () -> {
          if (what != OverlayItem.TRUNK) {
            g.strokeOval(x - r, y - r, 2 * r, 2 * r);
          }
          if (what != OverlayItem.TARGET) {
            g.strokeLine(x - r, y, x + r, y);
            g.strokeLine(x, y - r, x, y + r);
          }
        });
    if (what == OverlayItem.TARGET) {
      drawDot(x, y, 3 * scale);
    }
    drawWords(what.words(), x + 14 * scale, y, false);
  }

  /** Draws a dashed outline round the place being set. */
  private void drawChosen(Overlay overlay, OverlayItem chosen) {
    Estimate.Region hand = overlay.region();
    Overlay.ScaleLine line = overlay.scale();
    Point spot = overlay.points().get(chosen);
    double r = 16 * scale;
    if (chosen == OverlayItem.HAND && hand != null) {
      strokeDashed(
          () -> g.strokeRect(x(hand.x()), y(hand.y()), hand.width() * fit, hand.height() * fit));
    } else if (chosen == OverlayItem.SCALE && line != null) {
      strokeDashed(() -> g.strokeOval(x(line.to().x()) - r, y(line.to().y()) - r, 2 * r, 2 * r));
    } else if (spot != null) {
      strokeDashed(() -> g.strokeOval(x(spot.x()) - r, y(spot.y()) - r, 2 * r, 2 * r));
    }
  }

  private void strokeDashed(Runnable line) {
    strokeCased(line, 5 * scale, 4 * scale);
  }

  private void drawRegion(Estimate.Region region) {
    double x1 = x(region.x());
    double y1 = y(region.y());
    double x2 = x(region.x() + region.width());
    double y2 = y(region.y() + region.height());
    double arm = Math.min(CORNER * scale, Math.min(x2 - x1, y2 - y1) / 2);
    strokeCased(
        () -> {
          drawCorner(x1, y1, arm, arm);
          drawCorner(x2, y1, -arm, arm);
          drawCorner(x1, y2, arm, -arm);
          drawCorner(x2, y2, -arm, -arm);
        });
    drawWords("moving hand", x1, y1 - 20 * scale, false);
  }

  private void drawCorner(double x, double y, double right, double down) {
    g.strokePolyline(new double[] {x + right, x, x}, new double[] {y, y, y + down}, 3);
  }

  /** Draws the elbow, its words on the side away from {@code middle}, else below. */
  private void drawElbow(Overlay.Elbow elbow, double middle) {
    double x = x(elbow.place().x());
    double y = y(elbow.place().y());
    Double limitPx = elbow.limitPx();
    if (limitPx != null) {
      double r = limitPx * fit;
      strokeCased(() -> g.strokeOval(x - r, y - r, 2 * r, 2 * r), 6 * scale, 4 * scale);
    }
    g.setLineCap(StrokeLineCap.ROUND);
    g.setLineJoin(StrokeLineJoin.ROUND);
    for (List<Point> stretch : elbow.trail()) {
      double[] xs = stretch.stream().mapToDouble(spot -> x(spot.x())).toArray();
      double[] ys = stretch.stream().mapToDouble(spot -> y(spot.y())).toArray();
      strokeCased(() -> g.strokePolyline(xs, ys, xs.length));
    }
    drawDot(x, y, 4 * scale);
    Point now = elbow.now();
    if (now != null) {
      drawDiamond(x(now.x()), y(now.y()), 6 * scale);
    }
    Overlay.EstimatedElbow taken = elbow.estimated();
    if (taken != null) {
      double aboutX = x(taken.at().x());
      double aboutY = y(taken.at().y());
      double sd = taken.sdPx() * fit;
      strokeCased(() -> g.strokeOval(aboutX - sd, aboutY - sd, 2 * sd, 2 * sd));
      drawDot(aboutX, aboutY, 2 * scale);
    }
    double away = 14 * scale + (limitPx == null ? 0 : limitPx * fit);
    double width = width(elbow.words());
    double room = g.getCanvas().getWidth();
    boolean toTheLeft = x < middle;
    boolean fits = toTheLeft ? x - away - width > 0 : x + away + width < room;
    if (fits) {
      drawWords(elbow.words(), toTheLeft ? x - away : x + away, y, toTheLeft);
    } else {
      double from = Math.max(0, Math.min(room - width, x - width / 2));
      drawWords(elbow.words(), from, y + away, false);
    }
  }

  private void drawDot(double x, double y, double r) {
    g.setFill(CASING);
    g.fillOval(x - r - 1.5, y - r - 1.5, 2 * r + 3, 2 * r + 3);
    g.setFill(Color.WHITE);
    g.fillOval(x - r, y - r, 2 * r, 2 * r);
  }

  private void drawDiamond(double x, double y, double r) {
    for (double grown : new double[] {r + 2, r}) {
      g.setFill(grown > r ? CASING : Color.WHITE);
      g.fillPolygon(
          new double[] {x, x + grown, x, x - grown}, new double[] {y - grown, y, y + grown, y}, 4);
    }
  }

  private void strokeCased(Runnable line) {
    strokeCased(line, 0, 0);
  }

  private void strokeCased(Runnable line, double dash, double gap) {
    g.setStroke(CASING);
    g.setLineWidth((LINE + 2.5) * scale);
    g.setLineDashes();
    line.run();
    g.setStroke(Color.WHITE);
    g.setLineWidth(LINE * scale);
    if (dash > 0) {
      g.setLineDashes(dash, gap);
    }
    line.run();
    g.setLineDashes();
  }

  private double width(String text) {
    Text measure = new Text(text);
    measure.setFont(Look.regular(14 * scale));
    return measure.getLayoutBounds().getWidth() + 16 * scale;
  }

  private void drawWords(String text, double x, double middleY, boolean endsThere) {
    double width = width(text);
    double height = 24 * scale;
    double from = endsThere ? x - width : x;
    g.setFill(GROUND);
    g.fillRoundRect(from, middleY - height / 2, width, height, 6 * scale, 6 * scale);
    g.setFont(Look.regular(14 * scale));
    g.setFill(Color.WHITE);
    g.setTextBaseline(VPos.CENTER);
    g.fillText(text, from + 8 * scale, middleY);
    g.setTextBaseline(VPos.BASELINE);
  }

  private double x(double px) {
    return left + px * fit;
  }

  private double y(double px) {
    return top + px * fit;
  }
}
