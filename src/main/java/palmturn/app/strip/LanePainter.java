package palmturn.app.strip;

import java.util.List;
import java.util.Map;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.chart.BeatStrip;
import palmturn.chart.EstimateOverlay;
import palmturn.chart.Palette;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/** A painter of what surrounds the marks: gutter, sound, messages and unfinished spans. */
final class LanePainter {
  private static final double TURN = 238;
  private static final double SOUND = 273;
  private static final double ONLY = 302;
  private static final double LEFT = 24;
  private static final double GHOST_STEM = 33;
  private static final double NAMES = 46;
  private static final double COUNTS = 216;

  private LanePainter() {}

  static void drawSound(
      GraphicsContext g, BeatStrip strip, @Nullable SoundOutline wave, double offsetS) {
    if (wave == null) {
      return;
    }
    wave.draw(g, strip, SOUND, offsetS);
  }

  static void drawOpenSpans(
      GraphicsContext g, BeatStrip strip, Map<Span.SpanKind, Double> begun, double nowS) {
    g.setStroke(Theme.fx(strip.palette().clay()));
    g.setLineWidth(1.75);
    g.setLineDashes(3, 3);
    double y = strip.lanes().spansY();
    for (double startS : begun.values()) {
      double one = strip.view().x(startS);
      double other = strip.view().x(nowS);
      g.strokeRect(Math.min(one, other), y - 6, Math.abs(other - one), 12);
    }
    g.setLineDashes();
  }

  static void drawChosenSpan(GraphicsContext g, BeatStrip strip, @Nullable Span span) {
    if (span == null) {
      return;
    }
    double from = strip.view().x(span.startS());
    double to = strip.view().x(span.endS());
    g.setStroke(Theme.fx(strip.palette().iris()));
    g.setLineWidth(2);
    g.strokeRect(from - 4, strip.lanes().spansY() - 11, to - from + 8, 22);
  }

  /** Draws the old places of snapping marks until they arrive. */
  static void drawGhosts(GraphicsContext g, BeatStrip strip, List<Slap> ghosts) {
    g.setStroke(Theme.fx(strip.palette().edge()));
    g.setLineWidth(1.5);
    g.setLineDashes(3, 3);
    double line = strip.lanes().lineY();
    for (Slap ghost : ghosts) {
      double x = strip.view().x(ghost.timeS());
      if (x >= strip.view().leftX() && x <= strip.view().rightX()) {
        double y = ghost.side() == Side.BACK ? line + GHOST_STEM : line - GHOST_STEM;
        g.strokeOval(x - 6, y - 6, 12, 12);
      }
    }
    g.setLineDashes();
  }

  /** A speech mark over each moment that a message is about, behind the flag of the frame. */
  static void drawMessages(GraphicsContext g, BeatStrip strip, List<Double> timesS) {
    g.setFill(Theme.fx(strip.palette().ink2()));
    double y = strip.lanes().topY() - 4;
    for (double timeS : timesS) {
      double x = strip.view().x(timeS);
      if (x >= strip.view().leftX() && x <= strip.view().rightX()) {
        g.fillPolygon(
            new double[] {x - 7, x + 7, x + 7, x + 2, x, x - 2, x - 7},
            new double[] {y - 13, y - 13, y - 4, y - 4, y, y - 4, y - 4},
            7);
      }
    }
  }

  static void drawGutter(
      GraphicsContext g, Palette palette, Strip strip, @Nullable Reading reading, boolean focused) {
    double line = BeatStrip.Lanes.APP.lineY();
    g.setFill(Theme.fx(palette.paper()));
    g.fillRect(0, 1, Strip.GUTTER - 14, 314);
    if (focused) {
      g.setFill(Theme.fx(palette.iris()));
      g.fillRect(0, 8, 4, 20);
    }
    Color ink = Theme.fx(palette.ink());
    boolean marked = reading != null;
    drawText(g, "Beat strip", LEFT, 23, 15, true, ink);
    drawName(
        g,
        palette,
        "Spans",
        reading == null ? "" : Integer.toString(reading.spans().size()),
        49,
        marked);
    drawName(g, palette, "Palm", strip.sideCount(Side.PALM), line - 33, marked);
    drawName(g, palette, "Back", strip.sideCount(Side.BACK), line + 33, marked);
    EstimateOverlay hollow = strip.hollow();
    boolean estimated = hollow != null;
    drawName(g, palette, "Turn", strip.turnWords(), TURN, estimated);
    drawName(g, palette, "Sound", strip.soundWords(), SOUND, estimated);
    if (hollow != null) {
      drawName(g, palette, "Estimate only", Long.toString(hollow.countShown()), ONLY, true);
      g.setStroke(Theme.fx(palette.sea()));
      g.setLineWidth(1.75);
      g.strokeOval(LEFT + 0.9, ONLY - 5.1, 10.2, 10.2);
    }
    g.setFill(ink);
    g.fillOval(LEFT, line - 39, 12, 12);
    g.fillRect(LEFT, line + 27, 12, 12);
    g.setStroke(Theme.fx(palette.rule()));
    g.setLineWidth(1);
    g.strokeLine(LEFT, line + 0.5, COUNTS, line + 0.5);
  }

  private static void drawName(
      GraphicsContext g, Palette palette, String name, String count, double y, boolean marked) {
    Color ink2 = Theme.fx(palette.ink2());
    drawText(g, name, NAMES, y + 5, 14, marked, marked ? Theme.fx(palette.ink()) : ink2);
    g.setTextAlign(TextAlignment.RIGHT);
    drawText(g, count, COUNTS, y + 5, 14, false, ink2);
    g.setTextAlign(TextAlignment.LEFT);
  }

  static void drawText(
      GraphicsContext g, String text, double x, double y, double size, boolean bold, Color color) {
    g.setFont(bold ? Look.bold(size) : Look.regular(size));
    g.setFill(color);
    g.fillText(text, x, y);
  }
}
