package palmturn.app.look;

import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import javafx.scene.paint.Color;
import palmturn.chart.Palette;

/** Light or dark: the palette of the charts, for style sheets and canvases alike. */
public enum Theme {
  LIGHT(Palette.LIGHT),
  DARK(Palette.DARK);

  private final Palette palette;

  Theme(Palette palette) {
    this.palette = palette;
  }

  /** Returns the colours that painters take. */
  public Palette palette() {
    return palette;
  }

  /** Returns the other theme. */
  public Theme other() {
    return this == LIGHT ? DARK : LIGHT;
  }

  /** Returns the looked-up colours {@code -pt-ink} and so on, as the style of a root. */
  public String style() {
    return palette.named().entrySet().stream()
        .map(Theme::declaration)
        .collect(Collectors.joining(" "));
  }

  /** Returns a colour of the palette as the toolkit's own kind. */
  public static Color fx(java.awt.Color color) {
    return Color.rgb(color.getRed(), color.getGreen(), color.getBlue(), color.getAlpha() / 255.0);
  }

  private static String declaration(Map.Entry<String, java.awt.Color> colour) {
    java.awt.Color c = colour.getValue();
    return String.format(
        Locale.ROOT,
        "-pt-%s: #%02x%02x%02x;",
        colour.getKey(),
        c.getRed(),
        c.getGreen(),
        c.getBlue());
  }
}
