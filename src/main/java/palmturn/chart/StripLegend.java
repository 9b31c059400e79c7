package palmturn.chart;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Side;

/** The legend of a beat strip's hollow marks and curves, limited to those it shows. */
public final class StripLegend {
  /** Height of a row, pixels. */
  public static final double ROW = 22;

  private static final Font FONT = Lato.regular(13);
  private static final double SHAPE = 22;
  private static final double GAP = 22;

  private StripLegend() {}

  private interface Sign {
    void paint(Graphics2D g, double x, double y, Palette palette);
  }

  private record Entry(String words, Sign sign) {
    double width() {
      return SHAPE + LabelPlacer.width(FONT, words);
    }
  }

  /** Returns how many rows the legend takes in a width, 0 where the strip has no estimate. */
  public static int rows(BeatStrip strip, double width) {
    return rowsOf(strip, width).size();
  }

  /** Draws the legend with its first row's middle half a row under {@code topY}. */
  public static void paint(Graphics2D g, BeatStrip strip, double leftX, double topY, double width) {
    double y = topY + ROW / 2;
    for (List<Entry> row : rowsOf(strip, width)) {
      double x = leftX;
      for (Entry item : row) {
        item.sign().paint(g, x + 8, y, strip.palette());
        g.setFont(FONT);
        g.setColor(strip.palette().ink2());
        g.drawString(item.words(), (float) (x + SHAPE), (float) (y + 4.6));
        x += item.width() + GAP;
      }
      y += ROW;
    }
  }

  private static List<List<Entry>> rowsOf(BeatStrip strip, double width) {
    List<List<Entry>> rows = new ArrayList<>();
    double x = Double.POSITIVE_INFINITY;
    for (Entry item : items(strip)) {
      if (x + item.width() > width) {
        rows.add(new ArrayList<>());
        x = 0;
      }
      rows.get(rows.size() - 1).add(item);
      x += item.width() + GAP;
    }
    return rows;
  }

  private static List<Entry> items(BeatStrip strip) {
    List<Entry> items = new ArrayList<>();
    EstimateOverlay hollow = strip.overlay();
    if (hollow != null) {
      addFound(items, strip, hollow);
    }
    if (strip.slaps().stream().anyMatch(slap -> !slap.seen())) {
      items.add(head("copied, not looked at yet", Side.PALM, false, false));
    }
    return items;
  }

  private static void addFound(List<Entry> items, BeatStrip strip, EstimateOverlay hollow) {
    List<EstimatedSlap> drawn = new ArrayList<>();
    for (int i = 0; i < hollow.slaps().size(); i++) {
      if (!hollow.hidden().get(i)) {
        drawn.add(hollow.slaps().get(i));
      }
    }
    if (drawn.stream().anyMatch(slap -> !slap.isDouble() && slap.side() == Side.PALM)) {
      items.add(head("estimate, palm", Side.PALM, false, false));
    }
    if (drawn.stream().anyMatch(slap -> !slap.isDouble() && slap.side() == Side.BACK)) {
      items.add(head("estimate, back", Side.BACK, false, false));
    }
    if (drawn.stream().anyMatch(slap -> !slap.isDouble() && slap.side() == Side.UNKNOWN)) {
      items.add(head("estimate, side unknown", Side.UNKNOWN, false, false));
    }
    if (drawn.stream().anyMatch(EstimatedSlap::isDouble)) {
      items.add(head("estimate, double", Side.PALM, true, false));
    }
    if (drawn.stream().anyMatch(EstimateOverlay::isDoubtful)) {
      items.add(head("broken outline: unsure", Side.PALM, false, true));
    }
    double widest =
        drawn.stream().mapToDouble(slap -> TimeUncertainty.of(slap).wholeS()).max().orElse(0)
            * strip.view().pixelsPerS();
    if (widest > TimeUncertainty.HAIRLINE_UNDER) {
      items.add(new Entry("as wide as its time is unsure", StripLegend::band));
    }
    if (strip.lanes().turnY() != null && !hollow.turn().isEmpty()) {
      items.add(new Entry("turn of the hand", (g, x, y, p) -> wave(g, x, y, p, false)));
    }
    if (strip.lanes().soundY() != null && !hollow.sound().isEmpty()) {
      items.add(new Entry("onsets in the sound", (g, x, y, p) -> wave(g, x, y, p, true)));
    }
  }

  private static Entry head(String words, Side side, boolean isDouble, boolean unsure) {
    EstimatedSlap slap =
        new EstimatedSlap(
            EstimatedSlap.Timing.seen(0, 0),
            new EstimatedSlap.EstimatedSide(0, side, 1),
            EstimatedSlap.EstimatedZone.UNKNOWN,
            isDouble,
            Set.of(Estimate.Source.MOTION),
            unsure ? 0 : 1,
            "");
    return new Entry(
        words,
        (g, x, y, palette) -> {
          if (isDouble) {
            g.setColor(palette.sea());
            g.setStroke(new BasicStroke(3));
            BeatStripPainter.line(g, x - 7, y, x + 2, y);
          }
          MarkShapes.drawHollowHead(
              g,
              slap.isDouble(),
              slap.side(),
              slap.zone(),
              isDouble ? x + 2 : x,
              y,
              1,
              palette.sea(),
              palette.sheet(),
              OverlayPainter.outline(slap));
        });
  }

  private static void band(Graphics2D g, double x, double y, Palette palette) {
    g.setColor(palette.seaBand());
    g.fill(new Rectangle2D.Double(x - 5, y - 8, 10, 16));
    g.setColor(palette.sea());
    g.setStroke(new BasicStroke(1.75f));
    BeatStripPainter.line(g, x, y - 8, x, y + 8);
  }

  private static void wave(Graphics2D g, double x, double y, Palette palette, boolean peak) {
    Path2D path = new Path2D.Double();
    path.moveTo(x - 8, y + 5);
    if (peak) {
      path.lineTo(x - 2, y + 5);
      path.lineTo(x, y - 7);
      path.lineTo(x + 3, y + 5);
      path.lineTo(x + 8, y + 5);
    } else {
      path.curveTo(x - 3, y + 5, x - 4, y - 5, x, y - 5);
      path.curveTo(x + 4, y - 5, x + 3, y + 5, x + 8, y + 5);
    }
    g.setColor(peak ? palette.sea() : palette.ink2());
    g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
    g.draw(path);
  }
}
