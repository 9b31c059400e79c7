package palmturn.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.SVGUnits;

/**
 * SVG elements for HTML from a painter's drawing. Colours of the light palette become CSS variables
 * of the same names, so that the page's theme and its print style recolour the charts.
 */
public final class SvgChart {
  private static final Pattern RGB = Pattern.compile("rgb\\((\\d+),\\s*(\\d+),\\s*(\\d+)\\)");

  private SvgChart() {}

  /**
   * Returns an SVG element. The same drawing gives the same text.
   *
   * @param id unique in the page: a letter, then letters, digits and hyphens
   * @param title what the chart shows, read out by screen readers
   * @param width pixels
   * @param height pixels
   * @param painter draws with colours of {@link Palette#LIGHT}
   */
  public static String svg(
      String id, String title, double width, double height, Consumer<Graphics2D> painter) {
    String head =
        "<svg id=\"%s\" viewBox=\"0 0 %s %s\" role=\"img\" aria-labelledby=\"%s-title\"><title id=\"%s-title\">%s</title>"
            .formatted(id, number(width), number(height), id, id, escaped(title));
    return head + body(id, width, height, painter);
  }

  /** Returns an SVG element that screen readers pass over; its painter must not clip. */
  public static String decoration(double width, double height, Consumer<Graphics2D> painter) {
    return "<svg class=\"icon\" viewBox=\"0 0 %s %s\" width=\"%s\" height=\"%s\" aria-hidden=\"true\">"
            .formatted(number(width), number(height), number(width), number(height))
        + body("icon", width, height, painter);
  }

  private static String body(String id, double width, double height, Consumer<Graphics2D> painter) {
    SVGGraphics2D g = new SVGGraphics2D(width, height, SVGUnits.PX, new StringBuilder());
    g.setDefsKeyPrefix(id + "-");
    g.setGeomDoubleConverter(SvgChart::number);
    g.setTransformDoubleConverter(SvgChart::number);
    g.setFontFunction(family -> Lato.FAMILY + ", sans-serif");
    painter.accept(g);
    String element = g.getSVGElement(id);
    return themed(element.substring(element.indexOf('>') + 1));
  }

  private static String themed(String svg) {
    Map<String, String> names = new LinkedHashMap<>();
    Palette.LIGHT.named().forEach((name, color) -> names.put(key(color), name));
    Matcher matcher = RGB.matcher(svg);
    StringBuilder out = new StringBuilder();
    while (matcher.find()) {
      String name = names.get(matcher.group(1) + "," + matcher.group(2) + "," + matcher.group(3));
      matcher.appendReplacement(out, name == null ? matcher.group() : "var(--" + name + ")");
    }
    return matcher.appendTail(out).toString();
  }

  private static String key(Color color) {
    return color.getRed() + "," + color.getGreen() + "," + color.getBlue();
  }

  private static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
