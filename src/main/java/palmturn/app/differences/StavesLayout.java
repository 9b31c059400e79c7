package palmturn.app.differences;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.chart.EstimateOverlay;
import palmturn.chart.Palette;
import palmturn.chart.Staves;
import palmturn.clip.FrameTable;
import palmturn.settle.ComparedMarks;
import palmturn.settle.Difference;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.trial.Curve;
import palmturn.trial.Estimate;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;

/** The layout of the two readings' staves. */
final class StavesLayout {
  /** Left of the time: the readings' names and keys. */
  static final double GUTTER = 116;

  private static final double CLOSE = 810;
  private static final double FRAMES_FROM = 300;

  /** A stretch takes at most this share of the width. */
  private static final double SHARE = 0.7;

  private StavesLayout() {}

  /** Returns the words for the two that are compared; null until they are. */
  static @Nullable DifferenceWords wording(DifferenceReview differences) {
    ReadingPair pair = differences.comparison().pairProperty().get();
    SettledTrial settled = differences.settledProperty().get();
    ReviewedTrial opened = differences.trialProperty().get();
    return pair == null || settled == null || opened == null
        ? null
        : new DifferenceWords(pair, opened.trial().timeScale(), zeroS(settled.comparison()));
  }

  /**
   * Returns the first slap's time, from which all times are counted; the first reading's if any.
   */
  static double zeroS(ReadingComparison comparison) {
    return Stream.of(comparison.a(), comparison.b())
        .flatMap(marks -> marks.slaps().stream().filter(Slap::counts).limit(1))
        .map(Slap::timeS)
        .findFirst()
        .orElse(0.0);
  }

  static Staves.Focus focus(ReviewItem item) {
    Difference<?> difference = item.difference();
    return new Staves.Focus(
        item.fromS(),
        item.toS(),
        difference.a() instanceof Slap slap ? slap : null,
        difference.b() instanceof Slap slap ? slap : null,
        difference.a() instanceof Span span ? span : null,
        difference.b() instanceof Span span ? span : null);
  }

  /** The lanes in a given height; the turn is left out first, then the sound. */
  record Heights(BeatStrip.Lanes upper, BeatStrip.Lanes lower) {
    private static final double UNDER_AXIS = 24;
    private static final double SOUND_FROM = 326;
    private static final double TURN_FROM = 366;
    private static final double ROOMY_FROM = 300;

    static Heights in(double height) {
      double axis = height - UNDER_AXIS;
      boolean roomy = height >= ROOMY_FROM;
      double spread = roomy ? 114 : 98;
      double line = roomy ? 80 : 72;
      double spans = roomy ? 15 : 9;
      double second = line + spread;
      return new Heights(
          new BeatStrip.Lanes(
              0,
              spans,
              line,
              height >= TURN_FROM ? axis - 58 : null,
              height >= SOUND_FROM ? axis - 20 : null,
              axis),
          new BeatStrip.Lanes(0, second + line - spans - 4, second, null, null, axis));
    }
  }

  /**
   * Returns the staves around a difference.
   *
   * @param width of the pane, pixels, with the names
   * @param curves whose turn and onsets are drawn; null for none
   */
  static Staves layOut(
      SettledTrial settled,
      ReviewedTrial in,
      ReviewItem item,
      Palette palette,
      double width,
      Heights heights,
      boolean program,
      @Nullable Estimate curves) {
    ReadingComparison comparison = settled.comparison();
    double lengthS = item.toS() - item.fromS();
    double pixelsPerS = lengthS > 0 ? Math.min(CLOSE, SHARE * (width - GUTTER) / lengthS) : CLOSE;
    double fromS = (item.fromS() + item.toS()) / 2 - (width - GUTTER) / 2 / pixelsPerS;
    BeatStrip.View view = new BeatStrip.View(GUTTER, width, fromS, pixelsPerS);
    List<Double> framesS = pixelsPerS < FRAMES_FROM ? List.of() : framesInView(in.frames(), view);
    TimeScale scale = in.trial().timeScale();
    double zeroS = zeroS(comparison);
    BeatStrip.Window window =
        new BeatStrip.Window(
            zeroS, scale.known() ? scale.mediaAfter(zeroS, in.windowS()) : zeroS + in.windowS());
    Estimate made = in.trial().estimate();
    BeatStrip upper =
        new BeatStrip(
            comparison.a().slaps(),
            comparison.a().spans(),
            null,
            scale,
            window,
            view,
            heights.upper(),
            palette,
            framesS,
            true,
            null);
    ComparedMarks b = comparison.b();
    BeatStrip lower =
        new BeatStrip(
            b.slaps(),
            program ? List.of() : b.spans(),
            program ? outlines(Objects.requireNonNull(made)) : null,
            scale,
            window,
            view,
            heights.lower(),
            palette,
            framesS,
            true,
            null);
    return new Staves(
        upper,
        lower,
        program,
        curves == null ? null : EstimateOverlay.of(curves, null),
        comparison.matching().pairs().stream()
            .map(pair -> new Staves.Tie(pair.a(), pair.b()))
            .toList(),
        focus(item));
  }

  /** The estimate's stretches alone; its slaps are drawn as marks of the stave. */
  private static EstimateOverlay outlines(Estimate made) {
    return new EstimateOverlay(
        List.of(), List.of(), made.spans(), Curve.EMPTY, Curve.EMPTY, List.of());
  }

  private static List<Double> framesInView(FrameTable frames, BeatStrip.View view) {
    List<Double> in = new ArrayList<>();
    int last = frames.indexAt(view.timeS(view.rightX()));
    for (int i = frames.indexAt(view.fromS()); i <= last; i++) {
      in.add(frames.timeS(i));
    }
    return in;
  }
}
