package palmturn.report;

import java.awt.Graphics2D;
import palmturn.chart.Palette;
import palmturn.chart.SvgChart;

/**
 * A drawing with its place on the page, drawn by the same painter as SVG and in the PDF.
 *
 * @param id unique in the report; empty for a decoration
 * @param title what it shows, for those who can't see it; empty for a decoration
 * @param width pixels
 * @param height pixels
 * @param painter draws it
 */
public record Chart(String id, String title, double width, double height, Painter painter) {
  /** Draws in the colours that it is given. */
  @FunctionalInterface
  public interface Painter {
    void paint(Graphics2D g, Palette palette);
  }

  /** The markup of a chart in the page. */
  @FunctionalInterface
  public interface Markup {
    String of(Chart chart);
  }

  /** Returns a drawing that says nothing that is not said in words beside it. */
  static Chart decoration(double width, double height, Painter painter) {
    return new Chart("", "", width, height, painter);
  }

  boolean decorative() {
    return id.isEmpty();
  }

  /** Returns it as an SVG element whose colours follow the page's theme. */
  String svg() {
    return decorative()
        ? SvgChart.decoration(width, height, g -> painter.paint(g, Palette.LIGHT))
        : SvgChart.svg(id, title, width, height, g -> painter.paint(g, Palette.LIGHT));
  }
}
