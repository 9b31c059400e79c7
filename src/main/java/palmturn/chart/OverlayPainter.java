package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Rectangle2D;
import palmturn.trial.EstimatedSlap;

/** The painter of an estimate's hollow marks; a broken outline is a doubtful one. */
final class OverlayPainter {
  private static final BasicStroke WHOLE = new BasicStroke(1.75f);

  private OverlayPainter() {}

  static void marks(Graphics2D g, BeatStrip strip, EstimateOverlay hollow, LabelPlacer labels) {
    for (int i = 0; i < hollow.slaps().size(); i++) {
      double x = strip.view().x(hollow.slaps().get(i).timeS());
      if (!hollow.hidden().get(i) && strip.view().shows(x, x)) {
        stem(g, strip, hollow, i, x);
      }
    }
    for (int i = 0; i < hollow.slaps().size(); i++) {
      double x = strip.view().x(hollow.slaps().get(i).timeS());
      if (!hollow.hidden().get(i) && strip.view().shows(x, x)) {
        double line = strip.lanes().lineY();
        double stem = hollow.stemHeight(i);
        head(g, strip, hollow.slaps().get(i), x, line - stem, stem < 0 ? -1 : 1);
        labels.block(new Rectangle2D.Double(x - 8, line - stem - 8, 16, 16));
        labels.block(
            new Rectangle2D.Double(
                x - 1, Math.min(line - stem, line), 2, Math.max(1, Math.abs(stem))));
      }
    }
  }

  private static void stem(
      Graphics2D g, BeatStrip strip, EstimateOverlay hollow, int index, double x) {
    EstimatedSlap slap = hollow.slaps().get(index);
    Palette palette = strip.palette();
    double line = strip.lanes().lineY();
    double end = line - hollow.stemHeight(index);
    TimeUncertainty spread = TimeUncertainty.of(slap);
    double left = x - spread.beforeS() * strip.view().pixelsPerS();
    double width = spread.wholeS() * strip.view().pixelsPerS();
    if (width > TimeUncertainty.HAIRLINE_UNDER) {
      // On the line itself there is no stem to widen, so that a band lies around the head.
      double top = end == line ? line - 12 : Math.min(line, end);
      double bottom = end == line ? line + 12 : Math.max(line, end);
      g.setColor(palette.seaBand());
      g.fill(new Rectangle2D.Double(left, top, width, bottom - top));
    }
    g.setColor(palette.sea());
    g.setStroke(WHOLE);
    BeatStripPainter.line(g, x, line, x, end);
    int repeated = hollow.repeated(index);
    if (repeated >= 0) {
      g.setStroke(new BasicStroke(3));
      BeatStripPainter.line(
          g,
          strip.view().x(hollow.slaps().get(repeated).timeS()),
          line - hollow.stemHeight(repeated),
          x,
          end);
    }
  }

  private static void head(
      Graphics2D g, BeatStrip strip, EstimatedSlap slap, double x, double y, int up) {
    Color behind = strip.window() == null ? strip.palette().paper() : strip.palette().sheet();
    MarkShapes.drawHollowHead(
        g,
        slap.isDouble(),
        slap.side(),
        slap.zone(),
        x,
        y,
        up,
        strip.palette().sea(),
        behind,
        outline(slap));
  }

  static Stroke outline(EstimatedSlap slap) {
    return EstimateOverlay.isDoubtful(slap) ? MarkShapes.dashed(1.75f, 2.6f) : WHOLE;
  }

  static void words(Graphics2D g, BeatStrip strip, EstimateOverlay hollow, LabelPlacer labels) {
    for (int i = 0; i < hollow.slaps().size(); i++) {
      double x = strip.view().x(hollow.slaps().get(i).timeS());
      String word = word(hollow.slaps().get(i));
      if (!hollow.hidden().get(i) && strip.view().shows(x, x) && !word.isEmpty()) {
        double stem = hollow.stemHeight(i);
        double y = strip.lanes().lineY() - stem - (stem < 0 ? -17 : 17);
        labels.centred(g, word, x, y, strip.palette().sea());
      }
    }
  }

  private static String word(EstimatedSlap slap) {
    if (slap.isDouble()) {
      return "double?";
    }
    if (slap.zone().offCentre()) {
      return slap.zone().code() + "?";
    }
    return EstimateOverlay.isDoubtful(slap) ? "unsure" : "";
  }
}
