package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import palmturn.trial.Slap;
import palmturn.wording.MarkNames;

/**
 * Draws a beat strip: time to the right, palm slaps above the hand line and back slaps below it,
 * faults as shapes, spans above. It paints nothing behind the strip, so the caller clears.
 */
public final class BeatStripPainter {
  private static final BasicStroke INK = new BasicStroke(1.75f);

  private BeatStripPainter() {}

  /** Draws the strip. */
  public static void paint(Graphics2D g, BeatStrip strip) {
    ground(g, strip);
    marks(g, strip);
  }

  /** Draws what lies behind the marks: the window, the axis, the hand line. */
  public static void ground(Graphics2D g, BeatStrip strip) {
    Shape clip = g.getClip();
    g.clip(place(strip));
    sheet(g, strip);
    SpanPainter.washes(g, strip);
    TimeAxis.paint(g, strip);
    g.setColor(strip.palette().ink());
    g.setStroke(INK);
    line(
        g,
        strip.view().leftX(),
        strip.lanes().lineY(),
        strip.view().rightX(),
        strip.lanes().lineY());
    g.setClip(clip);
  }

  /** Draws the marks, the estimate's curves and the playhead on the ground. */
  public static void marks(Graphics2D g, BeatStrip strip) {
    Shape clip = g.getClip();
    g.clip(place(strip));
    LabelPlacer labels = new LabelPlacer();
    EstimateOverlay hollow = strip.overlay();
    if (hollow != null) {
      CurvePainter.paint(g, strip, hollow);
      OverlayPainter.marks(g, strip, hollow, labels);
    }
    marks(g, strip, labels);
    SpanPainter.spans(g, strip, labels);
    if (strip.words()) {
      words(g, strip, labels);
      if (hollow != null) {
        OverlayPainter.words(g, strip, hollow, labels);
      }
    }
    if (strip.playhead() != null) {
      now(g, strip, strip.playhead());
    }
    g.setClip(clip);
  }

  private static Rectangle2D place(BeatStrip strip) {
    BeatStrip.View view = strip.view();
    return new Rectangle2D.Double(
        view.leftX() - 12,
        strip.lanes().topY() - 31,
        view.rightX() - view.leftX() + 24,
        strip.lanes().axisY() - strip.lanes().topY() + 31 + 26);
  }

  private static void sheet(Graphics2D g, BeatStrip strip) {
    BeatStrip.Window window = strip.window();
    if (window == null) {
      return;
    }
    double from = Math.max(strip.view().leftX(), strip.view().x(window.fromS()));
    double to = Math.min(strip.view().rightX(), strip.view().x(window.toS()));
    if (to <= from) {
      return;
    }
    double top = strip.lanes().topY();
    double bottom = strip.lanes().axisY();
    g.setColor(strip.palette().sheet());
    g.fill(new Rectangle2D.Double(from, top, to - from, bottom - top));
    g.setColor(strip.palette().edge());
    g.setStroke(new BasicStroke(1.5f));
    line(g, from, top, from, bottom);
    line(g, to, top, to, bottom);
  }

  private static void marks(Graphics2D g, BeatStrip strip, LabelPlacer labels) {
    List<Slap> slaps = strip.slaps();
    for (int i = 0; i < slaps.size(); i++) {
      double x = strip.view().x(slaps.get(i).timeS());
      if (strip.view().shows(x, x)) {
        stem(g, strip, i, x);
        tie(g, strip, i, x);
      }
    }
    for (int i = 0; i < slaps.size(); i++) {
      Slap slap = slaps.get(i);
      double x = strip.view().x(slap.timeS());
      if (!strip.view().shows(x, x)) {
        continue;
      }
      double stem = strip.stemHeight(i);
      double y = strip.lanes().lineY() - stem;
      if (stem != 0 && !BeatStrip.hasKnownSide(slap) && slap.kind() != Slap.Kind.DOUBLE) {
        g.setColor(color(strip.palette(), slap));
        g.fill(MarkShapes.diamond(x, strip.lanes().lineY()));
      }
      head(g, strip, slap, x, y, stem < 0 ? -1 : 1);
      labels.block(new Rectangle2D.Double(x - 8, y - 8, 16, 16));
      labels.block(
          new Rectangle2D.Double(
              x - 1, Math.min(y, strip.lanes().lineY()), 2, Math.max(1, Math.abs(stem))));
    }
  }

  /** A mark copied from an estimate is hollow until its reader has judged it. */
  private static void head(Graphics2D g, BeatStrip strip, Slap slap, double x, double y, int up) {
    Palette palette = strip.palette();
    Color color = color(palette, slap);
    Color behind = strip.window() == null ? palette.paper() : palette.sheet();
    boolean isDouble = slap.kind() == Slap.Kind.DOUBLE;
    if (slap.seen() || !isDouble && slap.kind() != Slap.Kind.SLAP) {
      MarkShapes.drawHead(g, slap, x, y, up, color, behind);
    } else {
      MarkShapes.drawHollowHead(
          g, isDouble, slap.side(), slap.zone(), x, y, up, color, behind, INK);
    }
  }

  private static void stem(Graphics2D g, BeatStrip strip, int index, double x) {
    Slap slap = strip.slaps().get(index);
    double line = strip.lanes().lineY();
    double stem = strip.stemHeight(index);
    double end = line - stem;
    double start = slap.kind() == Slap.Kind.MISSED ? line - Math.signum(stem) * 12 : line;
    TimeUncertainty spread = TimeUncertainty.of(slap);
    double width = spread.wholeS() * strip.view().pixelsPerS();
    double left = x - spread.beforeS() * strip.view().pixelsPerS();
    g.setColor(color(strip.palette(), slap));
    if (width > TimeUncertainty.BAND_OVER && stem != 0) {
      g.setColor(band(strip.palette(), slap));
      g.fill(new Rectangle2D.Double(left, Math.min(start, end), width, Math.abs(end - start)));
      g.setColor(color(strip.palette(), slap));
    }
    if (width >= TimeUncertainty.HAIRLINE_UNDER && width <= TimeUncertainty.BAND_OVER) {
      g.setStroke(new BasicStroke((float) width));
      line(g, x, start, x, end);
    } else {
      g.setStroke(new BasicStroke(1.25f));
      line(g, x, start, x, end);
    }
  }

  private static void tie(Graphics2D g, BeatStrip strip, int index, double x) {
    int repeated = strip.repeatedBy(index);
    if (repeated >= 0) {
      double y = strip.lanes().lineY() - strip.stemHeight(index);
      g.setColor(color(strip.palette(), strip.slaps().get(index)));
      g.setStroke(new BasicStroke(3));
      double fromY = strip.stemHeight(repeated) == 0 ? strip.lanes().lineY() : y;
      line(g, strip.view().x(strip.slaps().get(repeated).timeS()), fromY, x, y);
    }
  }

  private static Color color(Palette palette, Slap slap) {
    return !slap.seen() ? palette.sea() : slap.faulty() ? palette.clay() : palette.ink();
  }

  private static Color band(Palette palette, Slap slap) {
    return !slap.seen()
        ? palette.seaBand()
        : slap.faulty() ? palette.clayBand() : palette.inkBand();
  }

  private static void words(Graphics2D g, BeatStrip strip, LabelPlacer labels) {
    for (int i = 0; i < strip.slaps().size(); i++) {
      Slap slap = strip.slaps().get(i);
      double x = strip.view().x(slap.timeS());
      if (!strip.view().shows(x, x)) {
        continue;
      }
      double stem = strip.stemHeight(i);
      int away = stem < 0 ? -1 : 1;
      if (slap.faulty()) {
        double y = strip.lanes().lineY() - stem - away * 17;
        labels.centred(g, MarkNames.fault(slap), x, y, color(strip.palette(), slap));
      }
      int number = strip.countNumber(i);
      if (number > 0 && number % 5 == 0) {
        double y = strip.lanes().lineY() + away * (stem == 0 ? -19 : 14);
        labels.centred(g, Integer.toString(number), x, y, strip.palette().ink3());
      }
    }
  }

  private static void now(Graphics2D g, BeatStrip strip, BeatStrip.Playhead now) {
    Palette palette = strip.palette();
    double top = strip.lanes().topY();
    double x = strip.view().x(now.timeS());
    g.setColor(palette.iris());
    g.setStroke(new BasicStroke(2));
    line(g, x, top - 1, x, strip.lanes().axisY());
    if (now.current() >= 0) {
      double markX = strip.view().x(strip.slaps().get(now.current()).timeS());
      double y = strip.lanes().lineY() - strip.stemHeight(now.current());
      g.draw(MarkShapes.disc(markX, y, 11.5));
    }
    Font font = Lato.bold(13);
    double half = LabelPlacer.width(font, now.flag()) / 2 + 19;
    double flagX = Math.max(strip.view().leftX() + half, Math.min(strip.view().rightX() - half, x));
    g.fill(new Rectangle2D.Double(flagX - half, top - 23, 2 * half, 22));
    g.setFont(font);
    g.setColor(palette.paper());
    g.drawString(now.flag(), (float) (flagX - half + 19), (float) (top - 7.5));
  }

  static void line(Graphics2D g, double x1, double y1, double x2, double y2) {
    g.draw(new Line2D.Double(x1, y1, x2, y2));
  }
}
