package palmturn.app.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.awt.Color;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import palmturn.chart.Wcag;

/**
 * Holds the pairs of colours that the window really shows against WCAG 2.2 AA: 4.5 for text, 3 for
 * what is not text (success criteria 1.4.3 and 1.4.11, from memory).
 */
class ContrastTest {
  private static final double TEXT = 4.5;
  private static final double SHAPE = 3;
  private static final Color BEHIND_WORDS = new Color(0x0B1210);
  private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");

  /** Colours that draw no boundary anyone has to see. */
  private static final List<String> DECORATION = List.of("rule");

  @ParameterizedTest
  @EnumSource(Theme.class)
  void everyTextOfTheStyleSheetCanBeReadOnWhatItStandsOn(Theme theme) throws Exception {
    List<String> low = new ArrayList<>();
    int found = 0;
    Matcher rules = RULE.matcher(css());
    while (rules.find()) {
      List<String> texts = colours(rules.group(2), "-fx-text-fill");
      List<String> grounds = colours(rules.group(2), "-fx-background-color");
      for (String text : texts) {
        // The topmost ground is the last; without one of its own text stands on paper or sheet.
        List<String> on =
            grounds.isEmpty()
                ? text.equals("paper") ? List.of("ink") : List.of("paper", "sheet")
                : List.of(grounds.get(grounds.size() - 1));
        for (String ground : on) {
          found++;
          note(low, theme, text, ground, TEXT, rules.group(1).strip());
        }
      }
    }
    assertEquals(List.of(), low);
    assertFalse(found < 20, "the style sheet is read");
  }

  @ParameterizedTest
  @EnumSource(Theme.class)
  void everyOutlineOfTheStyleSheetCanBeSeen(Theme theme) throws Exception {
    List<String> low = new ArrayList<>();
    TreeSet<String> borders = new TreeSet<>(colours(css(), "-fx-border-color"));
    borders.removeAll(DECORATION);
    borders.remove("paper");
    for (String border : borders) {
      note(low, theme, border, "paper", SHAPE, "border");
      note(low, theme, border, "sheet", SHAPE, "border");
    }
    assertEquals(List.of(), low);
    assertEquals(List.of("clay", "edge", "ink", "iris"), List.copyOf(borders));
  }

  /** Pairs that other rules, or painters, put together. */
  @ParameterizedTest
  @CsvSource({
    "ink, iris-wash, 4.5", // a pressed choice, the chosen key, the chosen row
    "ink2, iris-wash, 4.5",
    "ink, clay-wash, 4.5", // the line about trouble
    "clay, clay-wash, 4.5", // a fault's word over its span
    "ink, sea-wash, 4.5",
    "sea, sea-wash, 4.5",
    "ink, iris-band, 4.5", // text that is selected
    "paper, iris, 4.5", // the main choice, pressed
    "ink, ink-band, 3", // a hairline in its band
    "clay, clay-band, 3",
    "sea, sea-band, 3",
    "iris, iris-band, 3",
    "iris, iris-wash, 3", // the ring of the chosen key and the outline of its cap
    "iris, paper, 3",
    "sea, clay-wash, 3", // marks over a span that spoils them
    "iris, clay-wash, 3",
    "wave, sheet, 3",
    "clay, paper, 4.5"
  })
  void pairsThatArePutTogetherElsewhereKeepTheirContrast(String front, String back, double least) {
    List<String> low = new ArrayList<>();
    for (Theme theme : Theme.values()) {
      note(low, theme, front, back, least, "");
    }
    assertEquals(List.of(), low);
  }

  @ParameterizedTest
  @CsvSource({"FFFFFF", "000000", "808080"})
  void wordsOnThePictureCanBeReadWhateverItShows(String rgb) {
    Color picture = new Color(Integer.parseInt(rgb, 16));
    Color ground = Wcag.over(BEHIND_WORDS, 0xCC / 255.0, picture);
    Color line = Wcag.over(BEHIND_WORDS, 0.62, picture);
    Color outline = Wcag.over(Color.WHITE, 0x99 / 255.0, ground);
    List<String> low = new ArrayList<>();
    note(low, "words", Wcag.contrast(Color.WHITE, ground), TEXT);
    note(low, "lines in their casing", Wcag.contrast(Color.WHITE, line), SHAPE);
    note(low, "outlines of keys", Wcag.contrast(outline, ground), SHAPE);
    assertEquals(List.of(), low);
  }

  private static void note(
      List<String> low, Theme theme, String front, String back, double least, String where) {
    Map<String, Color> named = theme.palette().named();
    note(
        low,
        "%s on %s, %s %s".formatted(front, back, theme, where),
        Wcag.contrast(colour(named, front), colour(named, back)),
        least);
  }

  private static void note(List<String> low, String what, double ratio, double least) {
    if (ratio < least) {
      low.add(String.format(Locale.ROOT, "%s: %.2f", what, ratio));
    }
  }

  private static Color colour(Map<String, Color> named, String name) {
    return Objects.requireNonNull(named.get(name), name);
  }

  /** Returns the theme's colours that a property names, in its order. */
  private static List<String> colours(String rule, String property) {
    List<String> names = new ArrayList<>();
    Matcher values = Pattern.compile(property + ":([^;]*);").matcher(rule);
    while (values.find()) {
      Matcher each = Pattern.compile("-pt-([a-z0-9-]+)").matcher(values.group(1));
      while (each.find()) {
        names.add(each.group(1));
      }
    }
    return names;
  }

  private static String css() throws Exception {
    try (var in =
        Objects.requireNonNull(ContrastTest.class.getResourceAsStream("/palmturn/app/app.css"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
