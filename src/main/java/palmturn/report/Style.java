package palmturn.report;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import palmturn.chart.Lato;
import palmturn.chart.Palette;

/** The report's style sheet with its fonts and both themes inside. */
final class Style {
  private Style() {}

  /** Returns the sheet of the HTML page, which the reader's system may show dark or print. */
  static String screen() {
    return fonts()
        + ":root{color-scheme:light dark;"
        + variables(Palette.LIGHT)
        + "}\n@media screen and (prefers-color-scheme:dark){:root{"
        + variables(Palette.DARK)
        + "}}\n@media print{:root{"
        + variables(Palette.PRINT)
        + "}}\n"
        + resource("report.css")
        + resource("screen.css");
  }

  /** Returns the sheet of the PDF, its colours filled in. */
  static String paper(Paper paper) {
    String css = resource("report.css") + resource("paper.css");
    for (Map.Entry<String, Color> each : Palette.PRINT.named().entrySet()) {
      css = css.replace("var(--" + each.getKey() + ")", hex(each.getValue()));
    }
    return paper.pageRule() + css;
  }

  static String fonts() {
    return font("Lato-Regular.woff2", 400) + font("Lato-Bold.woff2", 700);
  }

  private static String font(String file, int weight) {
    return String.format(
        Locale.ROOT,
        "@font-face{font-family:%s;font-weight:%d;src:url(data:font/woff2;base64,%s) format(\"woff2\")}\n",
        Lato.FAMILY,
        weight,
        Base64.getEncoder().encodeToString(Lato.bytes(file)));
  }

  private static String variables(Palette palette) {
    return palette.named().entrySet().stream()
        .map(each -> "--" + each.getKey() + ":" + hex(each.getValue()))
        .collect(Collectors.joining(";"));
  }

  private static String hex(Color color) {
    return String.format(
        Locale.ROOT, "#%02x%02x%02x", color.getRed(), color.getGreen(), color.getBlue());
  }

  static String resource(String name) {
    try (InputStream in = Style.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the report's " + name + " is missing from the jar");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
