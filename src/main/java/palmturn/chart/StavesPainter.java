package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/**
 * The painter of two readings one above the other. Ties run on from the stems: upright agrees,
 * leaning is late or early, none is unmatched.
 */
public final class StavesPainter {
  private static final BasicStroke HAND_LINE = new BasicStroke(1.75f);
  private static final BasicStroke CHOSEN = new BasicStroke(2);
  private static final double STEM = 33;
  private static final double RING = 11.5;
  private static final double LEAST_HALF = 26;

  /** Heights of the two lines of a small picture. */
  private static final double UPPER = 16;

  private static final double LOWER = 38;

  private StavesPainter() {}

  /** Draws the staves. It paints nothing behind them, so the caller clears. */
  public static void paint(Graphics2D g, Staves staves) {
    BeatStrip upper = staves.upper();
    BeatStrip lower = staves.lower();
    BeatStripPainter.ground(g, withoutSpans(upper));
    Shape clip = g.getClip();
    BeatStrip.View view = upper.view();
    double top = upper.lanes().topY();
    double axis = upper.lanes().axisY();
    g.clip(
        new Rectangle2D.Double(view.leftX(), top, view.rightX() - view.leftX(), axis - top + 26));
    frames(g, upper);
    focus(g, staves);
    handLine(g, upper, upper.palette().ink());
    handLine(g, lower, staves.program() ? lower.palette().sea() : lower.palette().ink());
    if (staves.curves() != null) {
      CurvePainter.paint(g, upper, staves.curves());
    }
    ties(g, staves);
    BeatStripPainter.marks(g, upper);
    BeatStripPainter.marks(g, lower);
    marked(g, staves);
    g.setClip(clip);
  }

  /** Washes over spoilt slaps would run from one stave into the other. */
  private static BeatStrip withoutSpans(BeatStrip strip) {
    return new BeatStrip(
        strip.slaps(),
        List.of(),
        null,
        strip.scale(),
        strip.window(),
        strip.view(),
        strip.lanes(),
        strip.palette(),
        List.of(),
        true,
        null);
  }

  private static void frames(Graphics2D g, BeatStrip strip) {
    g.setColor(strip.palette().rule());
    g.setStroke(new BasicStroke(1));
    for (double frameS : strip.framesS()) {
      double x = strip.view().x(frameS);
      BeatStripPainter.line(g, x, strip.lanes().topY(), x, strip.lanes().axisY());
    }
  }

  private static void handLine(Graphics2D g, BeatStrip strip, Color color) {
    g.setColor(color);
    g.setStroke(HAND_LINE);
    double y = strip.lanes().lineY();
    BeatStripPainter.line(g, strip.view().leftX(), y, strip.view().rightX(), y);
  }

  private static void focus(Graphics2D g, Staves staves) {
    Staves.Focus focus = staves.focus();
    if (focus == null) {
      return;
    }
    BeatStrip upper = staves.upper();
    double from = upper.view().x(focus.fromS()) - LEAST_HALF;
    double to = upper.view().x(focus.toS()) + LEAST_HALF;
    double top = upper.lanes().topY();
    g.setColor(upper.palette().irisWash());
    g.fill(new Rectangle2D.Double(from, top, to - from, upper.lanes().axisY() - top));
  }

  private static void ties(Graphics2D g, Staves staves) {
    g.setColor(staves.upper().palette().ink3());
    g.setStroke(new BasicStroke(1));
    for (Staves.Tie tie : staves.ties()) {
      double fromX = x(staves.upper(), tie.upper());
      double toX = x(staves.lower(), tie.lower());
      if (staves.upper().view().shows(Math.min(fromX, toX), Math.max(fromX, toX))) {
        double down = Math.max(0, -staves.upper().stemHeight(tie.upper()));
        double up = Math.max(0, staves.lower().stemHeight(tie.lower()));
        BeatStripPainter.line(
            g,
            fromX,
            staves.upper().lanes().lineY() + down,
            toX,
            staves.lower().lanes().lineY() - up);
      }
    }
  }

  private static double x(BeatStrip strip, int slap) {
    return strip.view().x(strip.slaps().get(slap).timeS());
  }

  /** Rings the marks that differ, and says where one has none. */
  private static void marked(Graphics2D g, Staves staves) {
    Staves.Focus focus = staves.focus();
    if (focus == null) {
      return;
    }
    one(g, staves.upper(), focus.upper(), focus.lower(), 1);
    one(g, staves.lower(), focus.lower(), focus.upper(), -1);
    span(g, staves.upper(), focus.upperSpan());
    span(g, staves.lower(), focus.lowerSpan());
  }

  private static void one(
      Graphics2D g, BeatStrip strip, @Nullable Slap mark, @Nullable Slap other, int wordsBelow) {
    g.setColor(strip.palette().iris());
    int place = mark == null ? -1 : strip.slaps().indexOf(mark);
    if (place >= 0) {
      g.setStroke(CHOSEN);
      double y = strip.lanes().lineY() - strip.stemHeight(place);
      g.draw(MarkShapes.disc(x(strip, place), y, RING));
    } else if (mark == null && other != null) {
      double x = strip.view().x(other.timeS());
      double line = strip.lanes().lineY();
      g.setStroke(MarkShapes.dashed(1.75f, 3));
      g.draw(MarkShapes.disc(x, other.side() == Side.BACK ? line + STEM : line - STEM, 9));
      double away = other.side() == Side.BACK ? -1 : 1;
      new LabelPlacer().centred(g, "no mark", x, line + away * 14, strip.palette().ink2());
    }
  }

  private static void span(Graphics2D g, BeatStrip strip, @Nullable Span span) {
    if (span != null) {
      double from = strip.view().x(span.startS());
      double to = strip.view().x(span.endS());
      g.setColor(strip.palette().iris());
      g.setStroke(CHOSEN);
      g.draw(new Rectangle2D.Double(from - 4, strip.lanes().spansY() - 11, to - from + 8, 22));
    }
  }

  /**
   * Draws a difference small: two short lines with what each reading has.
   *
   * @param width of the lines, pixels; the whole is 54 high
   */
  public static void icon(
      Graphics2D g, Staves.Focus focus, boolean program, Palette palette, double width) {
    double middle = width / 2;
    line(g, palette.ink(), width, UPPER);
    line(g, program ? palette.sea() : palette.ink(), width, LOWER);
    double late = late(focus);
    mark(g, focus.upper(), middle - late, UPPER, palette);
    mark(g, focus.lower(), middle + late, LOWER, palette);
    stretch(g, focus.upperSpan(), program, false, palette, width, UPPER);
    stretch(g, focus.lowerSpan(), program, true, palette, width, LOWER);
  }

  /** Marks of different times stand apart, the earlier one to the left. */
  private static double late(Staves.Focus focus) {
    Slap upper = focus.upper();
    Slap lower = focus.lower();
    if (upper == null
        || lower == null
        || Math.abs(lower.timeS() - upper.timeS()) < EstimateOverlay.SAME_S) {
      return 0;
    }
    return lower.timeS() > upper.timeS() ? 5 : -5;
  }

  private static void line(Graphics2D g, Color color, double width, double y) {
    g.setColor(color);
    g.setStroke(new BasicStroke(1.5f));
    BeatStripPainter.line(g, 0, y, width, y);
  }

  private static void mark(
      Graphics2D g, @Nullable Slap mark, double x, double line, Palette palette) {
    if (mark == null) {
      return;
    }
    boolean unsided = mark.side() == Side.UNKNOWN && !mark.faulty();
    int up = mark.side() == Side.BACK ? -1 : 1;
    double y = unsided ? line : line - up * 9;
    Color color = !mark.seen() ? palette.sea() : mark.faulty() ? palette.clay() : palette.ink();
    g.setColor(color);
    g.setStroke(new BasicStroke(1.25f));
    BeatStripPainter.line(g, x, line, x, y);
    java.awt.geom.AffineTransform whole = g.getTransform();
    g.translate(x, y);
    g.scale(0.7, 0.7);
    if (mark.seen() || mark.kind() != Slap.Kind.SLAP && mark.kind() != Slap.Kind.DOUBLE) {
      MarkShapes.drawHead(g, mark, 0, 0, up, color, palette.paper());
    } else {
      boolean isDouble = mark.kind() == Slap.Kind.DOUBLE;
      MarkShapes.drawHollowHead(
          g, isDouble, mark.side(), mark.zone(), 0, 0, up, color, palette.paper(), HAND_LINE);
    }
    g.setTransform(whole);
  }

  private static void stretch(
      Graphics2D g,
      @Nullable Span span,
      boolean program,
      boolean second,
      Palette palette,
      double width,
      double line) {
    if (span != null) {
      SpanPainter.icon(
          g, span.kind(), second ? 9 : 4, width - 4, line - 6, program && second, palette);
    }
  }
}
