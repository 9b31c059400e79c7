package palmturn.app;

import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.TextAlignment;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.chart.Palette;

/**
 * Draws the filming guide: the athlete from the front, both elbows at the sides, one palm held
 * flat, the other hand over it. Drawn on the grid's 889 by 500 and scaled to fit.
 */
final class GuideDrawing {
  private static final double WIDTH = 889;
  private static final double HEIGHT = 500;
  private static final double ARM = 58;
  private static final double OUTLINE = 2.25;
  private static final double[][] FINGERS = {
    {64, -19, 128, -17}, {66, -7, 138, -5}, {66, 6, 136, 7}, {62, 18, 122, 19}
  };

  private GuideDrawing() {}

  static void draw(GraphicsContext g, double width, double height, Look look) {
    Palette palette = look.theme().palette();
    double fit = Math.min(width / WIDTH, height / HEIGHT);
    g.save();
    g.clearRect(0, 0, width, height);
    g.translate((width - WIDTH * fit) / 2, (height - HEIGHT * fit) / 2);
    g.scale(fit, fit);
    g.setLineCap(StrokeLineCap.ROUND);
    g.setLineJoin(StrokeLineJoin.ROUND);
    Color line = Theme.fx(palette.ink2());
    Color skin = Theme.fx(palette.paper());
    trunk(g, line, Theme.fx(palette.sheet()));
    targetArm(g, line, skin);
    movingArm(g, line, skin);
    sleeves(g, line, Theme.fx(palette.sheet()));
    ruler(g, line, Theme.fx(palette.sheet()));
    turn(g, Theme.fx(palette.iris()));
    corners(g, Theme.fx(palette.ink()));
    words(g, palette);
    g.restore();
  }

  private static void trunk(GraphicsContext g, Color line, Color fill) {
    g.setFill(fill);
    g.setStroke(line);
    g.setLineWidth(2.25);
    g.beginPath();
    g.moveTo(287, 0);
    g.bezierCurveTo(296, 180, 292, 330, 284, 500);
    g.lineTo(606, 500);
    g.bezierCurveTo(596, 330, 594, 180, 602, 0);
    g.fill();
    g.stroke();
    g.beginPath();
    g.moveTo(388, 0);
    g.bezierCurveTo(402, 30, 488, 30, 500, 0);
    g.stroke();
    g.beginPath();
    g.moveTo(286, 464);
    g.bezierCurveTo(380, 482, 510, 482, 604, 464);
    g.stroke();
  }

  private static void sleeves(GraphicsContext g, Color line, Color fill) {
    g.setFill(fill);
    g.setStroke(line);
    g.setLineWidth(2.25);
    for (int side = -1; side <= 1; side += 2) {
      double middle = 444.5;
      g.beginPath();
      g.moveTo(middle + side * 240, 0);
      g.bezierCurveTo(middle + side * 246, 60, middle + side * 248, 100, middle + side * 250, 132);
      g.bezierCurveTo(middle + side * 225, 144, middle + side * 185, 146, middle + side * 156, 138);
      g.lineTo(middle + side * 157, 0);
      g.fill();
      g.stroke();
    }
  }

  /** The target arm: elbow at the side, forearm across, palm flat and facing up. */
  private static void targetArm(GraphicsContext g, Color line, Color fill) {
    for (int pass = 0; pass < 2; pass++) {
      double more = pass == 0 ? OUTLINE : -OUTLINE;
      g.setStroke(pass == 0 ? line : fill);
      limb(g, more, 648, 130, 650, 210, 640, 235, 560, 290, 470, 344);
      hand(g, more, 470, 344, 149);
    }
  }

  /** The moving arm: elbow at the side, hand above the other palm. */
  private static void movingArm(GraphicsContext g, Color line, Color fill) {
    for (int pass = 0; pass < 2; pass++) {
      double more = pass == 0 ? OUTLINE : -OUTLINE;
      g.setStroke(pass == 0 ? line : fill);
      limb(g, more, 242, 130, 238, 205, 248, 232, 330, 262, 410, 272);
      hand(g, more, 410, 272, 8);
    }
  }

  private static void limb(GraphicsContext g, double more, double... xy) {
    g.setLineWidth(ARM + more);
    g.beginPath();
    g.moveTo(xy[0], xy[1]);
    g.quadraticCurveTo(xy[2], xy[3] + 8, xy[4], xy[5]);
    g.quadraticCurveTo(xy[6], xy[7], xy[8], xy[9]);
    g.stroke();
  }

  /** A hand from its wrist, fingers along an angle in degrees. */
  private static void hand(GraphicsContext g, double more, double x, double y, double angle) {
    g.save();
    g.translate(x, y);
    g.rotate(angle);
    g.setLineWidth(17 + more);
    g.strokeLine(34, -16, 72, -52);
    g.setLineWidth(12.5 + more);
    for (double[] finger : FINGERS) {
      g.strokeLine(finger[0], finger[1], finger[2], finger[3]);
    }
    g.setLineWidth(52 + more);
    g.strokeLine(0, 0, 50, 0);
    g.restore();
  }

  private static void ruler(GraphicsContext g, Color line, Color fill) {
    g.save();
    g.translate(540, 368);
    g.rotate(-27);
    g.setFill(fill);
    g.setStroke(line);
    g.setLineWidth(1.75);
    g.fillRect(0, 0, 148, 18);
    g.strokeRect(0, 0, 148, 18);
    g.setLineWidth(1.25);
    for (int tick = 1; tick < 15; tick++) {
      g.strokeLine(tick * 9.8, 0, tick * 9.8, tick % 5 == 0 ? 9 : 5);
    }
    g.restore();
  }

  private static void turn(GraphicsContext g, Color iris) {
    g.setStroke(iris);
    g.setLineWidth(3);
    g.beginPath();
    g.moveTo(372, 214);
    g.bezierCurveTo(344, 222, 340, 288, 364, 300);
    g.stroke();
    g.strokePolyline(new double[] {352, 365, 366}, new double[] {304, 301, 287}, 3);
    g.strokeLine(424, 350, 446, 350);
    g.strokeLine(435, 339, 435, 361);
  }

  private static void corners(GraphicsContext g, Color ink) {
    g.setStroke(ink);
    g.setLineWidth(2.5);
    g.setLineCap(StrokeLineCap.SQUARE);
    double in = 20;
    double long1 = 44;
    for (int side = 0; side < 2; side++) {
      double x = side == 0 ? in : WIDTH - in;
      double dx = side == 0 ? long1 : -long1;
      g.strokePolyline(new double[] {x + dx, x, x}, new double[] {in, in, in + long1}, 3);
      double y = HEIGHT - in;
      g.strokePolyline(new double[] {x + dx, x, x}, new double[] {y, y, y - long1}, 3);
    }
  }

  private static void words(GraphicsContext g, Palette palette) {
    Say say = new Say(g, palette);
    say.at(TextAlignment.RIGHT, 178, 170, "Elbows in view", "both, held at the sides");
    say.line(186, 166, 218, 232);
    say.at(TextAlignment.RIGHT, 178, 392, "Target palm flat", "still, facing up");
    say.line(186, 388, 372, 400);
    say.at(
        TextAlignment.LEFT,
        716,
        170,
        "Moving hand",
        "palm, back, palm, back:",
        "turning, to the centre");
    say.line(708, 166, 512, 258);
    say.at(
        TextAlignment.LEFT,
        716,
        392,
        "A known length",
        "a ruler by the forearm,",
        "for figures in cm");
    say.line(708, 386, 640, 334);
  }

  /** Words beside the drawing, and the line from them to what they are about. */
  private record Say(GraphicsContext g, Palette palette) {
    void at(TextAlignment side, double x, double y, String name, String... more) {
      g.setTextAlign(side);
      g.setFill(Theme.fx(palette.ink()));
      g.setFont(Look.bold(15));
      g.fillText(name, x, y);
      g.setFill(Theme.fx(palette.ink2()));
      g.setFont(Look.regular(14));
      for (int i = 0; i < more.length; i++) {
        g.fillText(more[i], x, y + 20 * (i + 1));
      }
    }

    void line(double fromX, double fromY, double toX, double toY) {
      g.setStroke(Theme.fx(palette.edge()));
      g.setLineWidth(1.25);
      g.strokeLine(fromX, fromY, toX, toY);
      g.setFill(Theme.fx(palette.ink()));
      g.fillOval(toX - 3.5, toY - 3.5, 7, 7);
    }
  }
}
