package palmturn.report;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.chart.BeatStripPainter;
import palmturn.chart.ElbowChart;
import palmturn.chart.EstimateOverlay;
import palmturn.chart.HandsChart;
import palmturn.chart.IntervalChart;
import palmturn.chart.Palette;
import palmturn.chart.StripLegend;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;

/** The report's charts at their sizes on the page. */
final class ReportCharts {
  private static final double WIDTH = 720;
  private static final double SMALL_WIDTH = 344;
  private static final double HANDS_WIDTH = 400;
  private static final double SMALL = 0.62;
  private static final double AROUND_S = 0.12;

  private ReportCharts() {}

  /**
   * Returns the beat strip of a trial over the whole page, with what the estimate adds to it; null
   * where there is nothing to show.
   */
  static @Nullable Chart strip(
      String id, String title, Trial trial, @Nullable Reading reading, double windowS) {
    Estimate estimate = trial.estimate();
    EstimateOverlay hollow =
        estimate == null || estimate.slaps().isEmpty()
            ? null
            : EstimateOverlay.of(estimate, reading);
    Reading marks = reading == null ? Reading.begin("", StartedFrom.NOTHING) : reading;
    if (marks.slaps().isEmpty() && marks.spans().isEmpty() && hollow == null) {
      return null;
    }
    boolean spans = !marks.spans().isEmpty() || hollow != null && !hollow.spans().isEmpty();
    double line = spans ? 116 : 84;
    BeatStrip.Lanes lanes =
        hollow != null
            ? new BeatStrip.Lanes(4, 20, line, line + 96, line + 134, line + 151)
            : BeatStrip.Lanes.plain(4, 20, line, line + 84);
    BeatStrip strip = strip(trial, marks, hollow, windowS, lanes, WIDTH, true);
    double legendY = lanes.axisY() + 26;
    return new Chart(
        id,
        title,
        WIDTH,
        legendY + StripLegend.rows(strip, WIDTH) * StripLegend.ROW,
        (g, palette) -> {
          BeatStrip coloured = strip.withPalette(palette);
          BeatStripPainter.paint(g, coloured);
          StripLegend.paint(g, coloured, 0, legendY, WIDTH);
        });
  }

  /** Returns the way of an elbow, against the limit where it has a scale. */
  static Chart elbow(
      String id,
      String title,
      Trial trial,
      @Nullable Reading reading,
      ElbowPath path,
      double windowS,
      double limitCm) {
    BeatStrip.Window window = reading == null ? null : BeatStrip.Window.of(trial, reading, windowS);
    Estimate estimate = trial.estimate();
    double zeroS =
        window != null
            ? window.fromS()
            : estimate != null && !estimate.slaps().isEmpty()
                ? estimate.slaps().get(0).timeS()
                : path.samples().get(0).timeS();
    double real = trial.timeScale().known() ? trial.timeScale().realBetween(zeroS, zeroS + 1) : 1;
    ElbowChart.Drawing drawing = ElbowChart.Drawing.of(path, limitCm, zeroS, windowS, real);
    return new Chart(
        id,
        title,
        WIDTH,
        200,
        (g, palette) ->
            ElbowChart.paint(g, new Rectangle2D.Double(0, 0, WIDTH, 200), drawing, palette));
  }

  /** Returns the beat strip of a trial in small, without words. */
  static Chart smallStrip(String id, String title, Trial trial, Reading reading, double windowS) {
    BeatStrip.Lanes lanes = BeatStrip.Lanes.plain(4, 14, 70, 134);
    BeatStrip strip = strip(trial, reading, null, windowS, lanes, SMALL_WIDTH / SMALL, false);
    return new Chart(
        id,
        title,
        SMALL_WIDTH,
        (lanes.axisY() + 8) * SMALL,
        (g, palette) -> {
          g.scale(SMALL, SMALL);
          BeatStripPainter.paint(g, strip.withPalette(palette));
        });
  }

  private static BeatStrip strip(
      Trial trial,
      Reading reading,
      @Nullable EstimateOverlay hollow,
      double windowS,
      BeatStrip.Lanes lanes,
      double width,
      boolean words) {
    BeatStrip.Window window = BeatStrip.Window.of(trial, reading, windowS);
    double fromS = Double.POSITIVE_INFINITY;
    double toS = Double.NEGATIVE_INFINITY;
    for (Slap slap : reading.slaps()) {
      fromS = Math.min(fromS, slap.timeS());
      toS = Math.max(toS, slap.timeS());
    }
    for (Span span : reading.spans()) {
      fromS = Math.min(fromS, span.startS());
      toS = Math.max(toS, span.endS());
    }
    if (hollow != null) {
      for (EstimatedSlap slap : hollow.slaps()) {
        fromS = Math.min(fromS, slap.timeS());
        toS = Math.max(toS, slap.timeS());
      }
    }
    double around = Math.max(AROUND_S, (toS - fromS) * AROUND_S / 5);
    fromS -= around;
    toS += around;
    double left = 10;
    double right = width - 18;
    return new BeatStrip(
        reading.slaps(),
        reading.spans(),
        hollow,
        trial.timeScale(),
        window,
        new BeatStrip.View(left, right, fromS, (right - left) / (toS - fromS)),
        lanes,
        Palette.LIGHT,
        List.of(),
        words,
        null);
  }

  /** Returns the interval chart of a trial, null where it would be empty. */
  static @Nullable Chart intervals(String id, String title, TrialScore score, double windowS) {
    if (!score.timeRefusedWhy().isEmpty() || !IntervalChart.hasRhythm(score.intervals())) {
      return null;
    }
    return new Chart(
        id,
        title,
        WIDTH,
        200,
        (g, palette) ->
            IntervalChart.paint(
                g, new Rectangle2D.Double(0, 0, WIDTH, 200), score.intervals(), windowS, palette));
  }

  /** Returns both hands' figures on one scale. */
  static Chart hands(
      String id,
      String title,
      HandsChart.OneHand left,
      HandsChart.OneHand right,
      Quality quality,
      @Nullable Double limit) {
    return new Chart(
        id,
        title,
        HANDS_WIDTH,
        HandsChart.HEIGHT,
        (g, palette) ->
            HandsChart.paint(
                g,
                new Rectangle2D.Double(0, 0, HANDS_WIDTH, HandsChart.HEIGHT),
                left,
                right,
                quality,
                limit,
                palette));
  }
}
