package palmturn.work.reel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.chart.BeatStripPainter;
import palmturn.chart.Lato;
import palmturn.chart.Palette;
import palmturn.film.ReelWriter;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.wording.MarkNames;

/** The drawing over the pictures of a reel: titles, the current mark, the beat strip. */
final class ReelDrawing {
  static final Palette PALETTE = Palette.DARK;

  /** Where the pictures go, pixels. */
  static final Rectangle PICTURES = new Rectangle(0, 56, ReelWriter.WIDTH, 460);

  /** Where the left hand's go if both are shown. */
  static final Rectangle LEFT = new Rectangle(0, 56, ReelWriter.WIDTH / 2 - 4, 460);

  /** Where the right hand's go. */
  static final Rectangle RIGHT =
      new Rectangle(ReelWriter.WIDTH / 2 + 4, 56, ReelWriter.WIDTH / 2 - 4, 460);

  private static final int STRIP_Y = 516;
  private static final double STRIP_PX_PER_S = 420;
  private static final BeatStrip.Lanes LANES = BeatStrip.Lanes.plain(34, 46, 106, 180);
  private static final Color CASING = new Color(0x0B, 0x12, 0x10, 204);
  private static final int PAD = 24;

  private ReelDrawing() {}

  /** Draws the line at the top: what is seen at the left, how slow it is at the right. */
  static void header(Graphics2D g, String left, String right) {
    g.setFont(Lato.bold(22));
    g.setColor(PALETTE.ink());
    g.drawString(left, PAD, 36);
    g.setFont(Lato.regular(18));
    g.setColor(PALETTE.ink2());
    g.drawString(right, ReelWriter.WIDTH - PAD - g.getFontMetrics().stringWidth(right), 36);
  }

  /** Draws whose picture it is at its upper edge. */
  static void name(Graphics2D g, Rectangle into, String words) {
    g.setFont(Lato.bold(18));
    boxed(g, words, into.x + PAD, into.y + 40, Color.WHITE);
  }

  /** Draws a title in the middle of the pictures, over all of them. */
  static void title(Graphics2D g, String words) {
    g.setColor(CASING);
    g.fillRect(PICTURES.x, PICTURES.y, PICTURES.width, PICTURES.height);
    g.setFont(Lato.bold(44));
    g.setColor(Color.WHITE);
    FontMetrics metrics = g.getFontMetrics();
    g.drawString(
        words,
        (ReelWriter.WIDTH - metrics.stringWidth(words)) / 2,
        PICTURES.y + PICTURES.height / 2 + 15);
  }

  /** Draws the mark that is at this moment: its side and fault, and a frame where it is a fault. */
  static void mark(Graphics2D g, Rectangle into, @Nullable Slap slap, boolean clean) {
    if (slap == null) {
      return;
    }
    Color colour = clean ? Color.WHITE : PALETTE.clay();
    if (!clean) {
      g.setColor(colour);
      g.setStroke(new BasicStroke(6));
      g.drawRect(into.x + 3, into.y + 3, into.width - 6, into.height - 6);
    }
    g.setFont(Lato.bold(30));
    String side = slap.side() == Side.UNKNOWN ? "slap" : slap.side().code();
    String fault = MarkNames.fault(slap);
    boxed(
        g,
        fault.isEmpty() ? side : side + ", " + fault,
        into.x + PAD,
        into.y + into.height - PAD,
        colour);
  }

  private static void boxed(Graphics2D g, String words, int x, int y, Color colour) {
    FontMetrics metrics = g.getFontMetrics();
    g.setColor(CASING);
    g.fillRect(
        x - 10,
        y - metrics.getAscent() - 4,
        metrics.stringWidth(words) + 20,
        metrics.getAscent() + metrics.getDescent() + 8);
    g.setColor(colour);
    g.drawString(words, x, y);
  }

  /**
   * Draws the beat strip under the pictures, standing still while the playhead moves.
   *
   * @param fromS first moment of the scene, media seconds
   * @param toS last moment
   */
  static void strip(
      Graphics2D g, FilmedHand hand, double windowS, double fromS, double toS, double nowS) {
    double real = hand.trial().timeScale().known() ? hand.trial().timeScale().factorAt(fromS) : 1;
    double pxPerS = STRIP_PX_PER_S * real;
    double leftS = (fromS + toS) / 2 - ReelWriter.WIDTH / 2.0 / pxPerS;
    BeatStrip strip =
        new BeatStrip(
            hand.reading().slaps(),
            hand.reading().spans(),
            null,
            hand.trial().timeScale(),
            BeatStrip.Window.of(hand.trial(), hand.reading(), windowS),
            new BeatStrip.View(0, ReelWriter.WIDTH, leftS, pxPerS),
            LANES,
            PALETTE,
            List.of(),
            true,
            new BeatStrip.Playhead(nowS, String.format(Locale.ROOT, "%.3f s", nowS), -1));
    Graphics2D at =
        (Graphics2D) g.create(0, STRIP_Y, ReelWriter.WIDTH, ReelWriter.HEIGHT - STRIP_Y);
    BeatStripPainter.paint(at, strip);
    at.dispose();
  }
}
