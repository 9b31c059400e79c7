package palmturn.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class BeatStripPainterTest {
  @Test
  void theSvgIsWellFormedAndNamesItself() throws Exception {
    String svg = svg(strip(Samples.everyKind(), Palette.LIGHT, 192, null));
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    assertEquals("strip", document.getDocumentElement().getAttribute("id"));
    assertEquals(
        "marks <b> & more", document.getElementsByTagName("title").item(0).getTextContent());
  }

  @Test
  void theSameStripGivesTheSameSvg() {
    BeatStrip strip = strip(Samples.everyKind(), Palette.LIGHT, 192, null);
    assertEquals(svg(strip), svg(strip));
  }

  @Test
  void everyColourInTheSvgFollowsTheTheme() {
    String svg = svg(strip(Samples.everyKind(), Palette.LIGHT, 192, null));
    assertFalse(svg.contains("rgb("), "a fixed colour would not turn with the page");
    assertTrue(svg.contains("var(--clay)"));
  }

  @Test
  void everyKindOfMarkHasAShapeOfItsOwn() {
    List<Slap> kinds = new ArrayList<>();
    for (Slap.Kind kind : Slap.Kind.values()) {
      kinds.add(Slap.onFrame(kind, 1, 0.01, Side.PALM, Zone.CENTRE));
    }
    kinds.add(kinds.get(Slap.Kind.OTHER.ordinal()).withNote("sleeve"));
    for (Zone zone : List.of(Zone.FINGERS, Zone.WRIST, Zone.EDGE)) {
      kinds.add(Slap.onFrame(Slap.Kind.SLAP, 1, 0.01, Side.PALM, zone));
    }
    kinds.add(Slap.onFrame(Slap.Kind.SLAP, 1, 0.01, Side.BACK, Zone.CENTRE));
    kinds.add(Slap.onFrame(Slap.Kind.SLAP, 1, 0.01, Side.UNKNOWN, Zone.CENTRE));
    List<String> drawn = kinds.stream().map(BeatStripPainterTest::head).toList();
    for (int i = 0; i < drawn.size(); i++) {
      for (int j = 0; j < i; j++) {
        assertNotEquals(drawn.get(i), drawn.get(j), kinds.get(i) + " and " + kinds.get(j));
      }
    }
  }

  @Test
  void wordsThatWouldTouchAreLeftOut() {
    Slap first = Slap.onFrame(Slap.Kind.SLAP, 1, 0.001, Side.PALM, Zone.FINGERS);
    Slap near = Slap.onFrame(Slap.Kind.SLAP, 1.05, 0.001, Side.PALM, Zone.FINGERS);
    Slap far = Slap.onFrame(Slap.Kind.SLAP, 2, 0.001, Side.PALM, Zone.FINGERS);
    Reading reading = Samples.everyKind().withSpans(List.of()).withSlaps(List.of(first, near, far));
    String svg = svg(strip(reading, Palette.LIGHT, 192, null));
    assertEquals(2, count(svg, ">fingers<"));
  }

  @Test
  void everyFifthCountingSlapIsNumbered() {
    String svg = svg(strip(Samples.everyKind(), Palette.LIGHT, 192, null));
    assertTrue(svg.contains(">5<"));
    BeatStrip strip = strip(Samples.everyKind(), Palette.LIGHT, 192, null);
    int last = 0;
    for (int i = 0; i < strip.slaps().size(); i++) {
      int number = strip.countNumber(i);
      if (number > 0) {
        assertEquals(last + 1, number);
        last = number;
      } else {
        assertFalse(
            strip.slaps().get(i).counts() && strip.window().contains(strip.slaps().get(i).timeS()));
      }
    }
    assertTrue(last > 20);
  }

  @Test
  void aPointFindsTheMarkUnderIt() {
    BeatStrip strip = strip(Samples.everyKind(), Palette.LIGHT, 192, null);
    double x = strip.view().x(strip.slaps().get(0).timeS());
    assertEquals(OptionalInt.of(0), strip.slapAt(x + 3, strip.lanes().lineY() - 33));
    assertEquals(OptionalInt.empty(), strip.slapAt(x, strip.lanes().lineY() + 60));
  }

  @Test
  void theWindowEndsAfterTheProtocolsSecondsOrAtTheLastMark() {
    Reading reading =
        Samples.everyKind()
            .withSlaps(
                List.of(
                    Slap.onFrame(Slap.Kind.MISSED, 1, 0.01, Side.PALM, Zone.CENTRE),
                    Slap.onFrame(Slap.Kind.SLAP, 2, 0.01, Side.PALM, Zone.CENTRE),
                    Slap.onFrame(Slap.Kind.SLAP, 9, 0.01, Side.BACK, Zone.CENTRE)));
    assertEquals(new BeatStrip.Window(2, 7), BeatStrip.Window.of(trial(null), reading, 5));
    assertEquals(new BeatStrip.Window(2, 9), BeatStrip.Window.of(trial(null), reading, 8));
    assertEquals(new BeatStrip.Window(9, 9), BeatStrip.Window.of(trial(3.0), reading, 5));
    assertNull(BeatStrip.Window.of(trial(10.0), reading, 5));
  }

  @Test
  void theAxisCountsRealSecondsInASlowedClip() {
    BeatStrip real = strip(Samples.everyKind(), Palette.LIGHT, 192, null);
    BeatStrip slowed =
        new BeatStrip(
            real.slaps(),
            real.spans(),
            null,
            TimeScale.uniform(0.25),
            real.window(),
            real.view(),
            real.lanes(),
            real.palette(),
            List.of(),
            true,
            null);
    assertTrue(svg(real).contains(">5 s<"));
    assertFalse(svg(slowed).contains(">2 s<"));
    assertTrue(svg(slowed).contains(">1 s<"));
  }

  @ParameterizedTest
  @EnumSource(Theme.class)
  void picturesForLooking(Theme theme) throws Exception {
    BeatStrip strip =
        strip(
            Samples.everyKind(),
            theme.palette,
            192,
            new BeatStrip.Playhead(3, "slap 13, palm", 12));
    draw("strip-" + theme, theme, g -> BeatStripPainter.paint(g, strip));
  }

  static void draw(String name, Theme theme, Consumer<Graphics2D> painter) throws IOException {
    BufferedImage image = new BufferedImage(1240, 360, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(theme.palette.paper());
    g.fillRect(0, 0, 1240, 360);
    painter.accept(g);
    File file = new File("target/look/" + name + ".png");
    assertTrue(file.getParentFile().isDirectory() || file.getParentFile().mkdirs());
    assertTrue(ImageIO.write(image, "png", file));
  }

  enum Theme {
    LIGHT(Palette.LIGHT),
    DARK(Palette.DARK);

    private final Palette palette;

    Theme(Palette palette) {
      this.palette = palette;
    }

    Palette palette() {
      return palette;
    }
  }

  private static Trial trial(Double fromS) {
    return new Trial(
        new TrialId(Hand.RIGHT, "baseline", 1),
        new ClipRef("clips/a.mp4", "0".repeat(64), 0.01, Extra.NONE),
        fromS,
        null,
        Mirrored.FALSE,
        null,
        TimeScale.REAL,
        null,
        null,
        List.of(),
        null,
        Extra.NONE);
  }

  private static BeatStrip strip(
      Reading reading, Palette palette, double pixelsPerS, BeatStrip.Playhead now) {
    double first = reading.slaps().get(0).timeS();
    return new BeatStrip(
        reading.slaps(),
        reading.spans(),
        null,
        TimeScale.REAL,
        new BeatStrip.Window(first, first + 5),
        new BeatStrip.View(20, 1220, first - 0.35, pixelsPerS),
        BeatStrip.Lanes.APP,
        palette,
        List.of(),
        true,
        now);
  }

  private static String svg(BeatStrip strip) {
    return SvgChart.svg(
        "strip", "marks <b> & more", 1240, 316, g -> BeatStripPainter.paint(g, strip));
  }

  private static String head(Slap slap) {
    return SvgChart.svg(
        "head",
        "head",
        40,
        40,
        g -> MarkShapes.drawHead(g, slap, 20, 20, 1, Palette.LIGHT.ink(), Palette.LIGHT.sheet()));
  }

  private static int count(String text, String part) {
    return (int) Pattern.compile(Pattern.quote(part)).matcher(text).results().count();
  }
}
