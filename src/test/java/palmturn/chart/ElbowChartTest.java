package palmturn.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Point;

class ElbowChartTest {
  @Test
  void limitIsNamedWhereThereIsAScale() {
    String svg = svg(path(0.1, 250.0));
    assertTrue(svg.contains(">limit 3<"));
    assertTrue(svg.contains("distance from its place, cm"));
  }

  @Test
  void withoutAScaleNoLimitIsDrawn() {
    String svg = svg(path(null, 250.0));
    assertFalse(svg.contains(">limit"));
    assertTrue(svg.contains("forearm lengths"));
    assertTrue(svg.contains(">0.1<"), "a quarter of the forearm's 250 pixels at most");
    assertTrue(svg(path(null, null)).contains("distance from its place, pixels"));
  }

  @Test
  void lineBreaksWhereTheElbowWasLost() {
    ElbowPath lost = path(0.1, null);
    ElbowPath whole =
        new ElbowPath(
            4.0,
            null,
            new ElbowPath.PictureScale("given", 0.1, null),
            new Point(0, 0),
            lost.samples(),
            List.of(),
            List.of());
    assertTrue(svg(lost).contains(">lost<"));
    assertFalse(svg(whole).contains(">lost<"));
    assertEquals(moves(svg(whole)) + 2, moves(svg(lost)), "path and curve break once each");
  }

  @ParameterizedTest
  @EnumSource(BeatStripPainterTest.Theme.class)
  void picturesForLooking(BeatStripPainterTest.Theme theme) throws Exception {
    BeatStripPainterTest.draw(
        "elbow-" + theme,
        theme,
        g ->
            ElbowChart.paint(
                g,
                new Rectangle2D.Double(10, 10, 720, 200),
                ElbowChart.Drawing.of(Samples.estimate().elbow(), 3, 0.8, 5, 1),
                theme.palette()));
  }

  @Test
  void whereALostElbowIsTakenToBeIsDashedWithItsSpread() {
    ElbowPath lost = path(0.1, null);
    ElbowPath taken =
        lost.withGapEstimates(
            List.of(
                new ElbowPath.GapEstimate(0.2, 22, 3, 4),
                new ElbowPath.GapEstimate(0.25, 24, 4, 5),
                new ElbowPath.GapEstimate(0.45, 28, 5, 4),
                new ElbowPath.GapEstimate(0.49, 29, 5, 2)));
    String before = svg(lost);
    String after = svg(taken);
    assertFalse(before.contains("--sea-band"));
    assertEquals(2, count(after, "fill:var\\(--sea-band\\)"), "a band for each part");
    assertEquals(moves(before) + 4, moves(after), "two parts of path and curve");
  }

  @Test
  void theScaleReachesAsFarAsALostElbowMayHaveGone() {
    ElbowPath lost =
        path(0.1, null).withGapEstimates(List.of(new ElbowPath.GapEstimate(0.3, 90, 0, 20)));
    assertEquals(11 * 1.15, ElbowChart.Drawing.of(lost, 3, 0, 1, 1).reach(), 1e-9);
  }

  private static ElbowPath path(Double cmPerPixel, Double forearmPx) {
    return new ElbowPath(
        cmPerPixel == null ? null : 4.0,
        null,
        new ElbowPath.PictureScale(cmPerPixel == null ? "none" : "given", cmPerPixel, forearmPx),
        new Point(300, 200),
        List.of(
            new ElbowPath.Sample(0.0, 0.0, 0.0, 0.0),
            new ElbowPath.Sample(0.05, 10.0, 0.0, 10.0),
            new ElbowPath.Sample(0.1, 20.0, 0.0, 20.0),
            new ElbowPath.Sample(0.5, 30.0, 0.0, 30.0),
            new ElbowPath.Sample(0.55, 40.0, 0.0, 40.0)),
        List.of(new Stretch(0.1, 0.5)),
        List.of());
  }

  private static String svg(ElbowPath path) {
    return SvgChart.svg(
        "elbow",
        "elbow",
        720,
        200,
        g ->
            ElbowChart.paint(
                g,
                new Rectangle2D.Double(0, 0, 720, 200),
                ElbowChart.Drawing.of(path, 3, 0, 1, 1),
                Palette.LIGHT));
  }

  private static long count(String text, String pattern) {
    return Pattern.compile(pattern).matcher(text).results().count();
  }

  /** Counts how often the pen is put down for lines of the estimate's colour. */
  private static long moves(String svg) {
    return Pattern.compile("var\\(--sea\\)[^>]*>\\s*<path d='([^']*)'")
        .matcher(svg)
        .results()
        .flatMapToInt(found -> found.group(1).chars())
        .filter(c -> c == 'M')
        .count();
  }
}
