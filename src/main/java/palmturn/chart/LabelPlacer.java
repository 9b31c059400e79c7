package palmturn.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** A placer of labels that leaves out those that would overlap. */
final class LabelPlacer {
  private static final double SIZE = 13;
  private static final Font FONT = Lato.regular(SIZE);
  private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

  private final List<Rectangle2D> taken = new ArrayList<>();

  /** Returns how wide a text is in a font, pixels, the same on every kind of graphics. */
  static double width(Font font, String text) {
    return font.getStringBounds(text, EXACT).getWidth();
  }

  /** Keeps words off a place. */
  void block(Rectangle2D place) {
    taken.add(place);
  }

  /** Writes a word centred on a point, if it touches nothing. */
  void centred(Graphics2D g, String text, double x, double middleY, Color color) {
    double width = width(FONT, text);
    write(g, text, x - width / 2, middleY, width, color);
  }

  /** Writes a word that begins at a point, if it touches nothing. */
  void beside(Graphics2D g, String text, double x, double middleY, Color color) {
    write(g, text, x, middleY, width(FONT, text), color);
  }

  private void write(
      Graphics2D g, String text, double x, double middleY, double width, Color color) {
    Rectangle2D place = new Rectangle2D.Double(x - 2, middleY - 7, width + 4, 14);
    if (taken.stream().anyMatch(place::intersects)) {
      return;
    }
    taken.add(place);
    g.setFont(FONT);
    g.setColor(color);
    g.drawString(text, (float) x, (float) (middleY + 4.6));
  }
}
