package palmturn.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import palmturn.measure.Quality;
import palmturn.measure.SlapInterval;
import palmturn.measure.SlapInterval.Use;
import palmturn.measure.TurnClass;

class FigureChartsTest {
  @Test
  void theIntervalChartNamesOnlyWhatItShows() {
    String svg = intervals(List.of(interval(0, Use.RHYTHM), interval(1, Use.RHYTHM)));
    assertTrue(svg.contains(">palm to back<"), svg);
    assertTrue(svg.contains(">back to palm<"));
    assertFalse(svg.contains(">pause<"));
    assertFalse(svg.contains("rgb("), "a fixed colour would not turn with the page");
  }

  @Test
  void pausesAreShownAndKeptOutOfTheMedian() {
    List<SlapInterval> all = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      all.add(interval(i, i % 4 == 3 ? Use.PAUSE : Use.RHYTHM));
    }
    String svg = intervals(all);
    assertTrue(svg.contains(">pause<"));
    assertTrue(svg.contains(">median 200 ms<"), svg);
    assertEquals(svg, intervals(all));
  }

  @Test
  void theLimitIsNamedOnTheHandsScale() {
    String svg = hands(8.0);
    assertTrue(svg.contains(">limit 8<"), svg);
    assertFalse(hands(null).contains(">limit"));
  }

  @Test
  void aScaleEndsWhereItsQualityDoes() {
    double[] shares = {100, 92, 81};
    Axis clean = Axis.of(Quality.ACCURACY, shares, new double[] {71, 100}, 0, 100);
    assertEquals(100, clean.to());
    assertEquals(100, clean.at(100));
    Axis speed = Axis.of(Quality.SPEED, new double[] {0.2, 3}, new double[] {-1, 6}, 0, 100);
    assertEquals(0, speed.from());
    assertTrue(speed.to() >= 3);
    Axis slowDown = Axis.of(Quality.ENDURANCE, new double[] {-2, 3}, new double[] {}, 0, 100);
    assertTrue(slowDown.from() < -2);
  }

  @Test
  void pictureForLooking() throws Exception {
    List<SlapInterval> all = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      all.add(interval(i, i == 11 ? Use.PAUSE : i == 17 ? Use.MISSED_TURN : Use.RHYTHM));
    }
    BufferedImage image = new BufferedImage(720, 330, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(Palette.LIGHT.sheet());
    g.fillRect(0, 0, 720, 330);
    IntervalChart.paint(g, new Rectangle2D.Double(0, 0, 720, 220), all, 5, Palette.LIGHT);
    paintHands(8.0).accept(g);
    Files.createDirectories(Path.of("target", "look"));
    assertTrue(ImageIO.write(image, "png", new File("target/look/figures.png")));
  }

  private static String hands(Double limit) {
    return SvgChart.svg("hands", "hands", 500, 330, paintHands(limit));
  }

  private static Consumer<Graphics2D> paintHands(Double limit) {
    return g ->
        HandsChart.paint(
            g,
            new Rectangle2D.Double(100, 230, 500, 88),
            new HandsChart.OneHand(List.of(6.1, 6.9, 8.3), 7.1, 4.3, 10.0),
            new HandsChart.OneHand(List.of(5.8, 6.2, 6.6), 6.2, 5.2, 7.2),
            Quality.RHYTHM,
            limit,
            Palette.LIGHT);
  }

  private static String intervals(List<SlapInterval> intervals) {
    return SvgChart.svg(
        "intervals",
        "intervals",
        720,
        220,
        g ->
            IntervalChart.paint(
                g, new Rectangle2D.Double(0, 0, 720, 220), intervals, 5, Palette.LIGHT));
  }

  private static SlapInterval interval(int i, Use use) {
    double durationS = use == Use.PAUSE ? 0.5 : use == Use.MISSED_TURN ? 0.41 : 0.2;
    double jitter = use == Use.RHYTHM ? 0.01 * (i % 3 - 1) : 0;
    TurnClass turn = i % 2 == 0 ? TurnClass.PALM_TO_BACK : TurnClass.BACK_TO_PALM;
    return new SlapInterval(0.1 + 0.2 * i, durationS + jitter, turn, use, 1e-5);
  }
}
