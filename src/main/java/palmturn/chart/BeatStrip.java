package palmturn.chart;

import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;

/**
 * The content and layout of a beat strip: everything its painter needs and nothing else. All times
 * are media seconds; only the axis is labelled in real seconds from the window's start.
 *
 * @param slaps the marks, in order of time
 * @param spans faults over a stretch, in order of their start
 * @param overlay the estimate drawn beside the marks; null for none
 * @param scale conversion of media seconds to the axis's real seconds
 * @param window the trial window, drawn as a lighter sheet; null before the first slap is marked
 * @param view mapping of time to x
 * @param lanes y of each lane
 * @param palette colours of the theme
 * @param framesS times of the visible frames, one faint line each; empty for none
 * @param words whether anything is written: fault words, numbers, seconds
 * @param playhead where the playhead stands; null on paper
 */
public record BeatStrip(
    List<Slap> slaps,
    List<Span> spans,
    @Nullable EstimateOverlay overlay,
    TimeScale scale,
    @Nullable Window window,
    View view,
    Lanes lanes,
    Palette palette,
    List<Double> framesS,
    boolean words,
    @Nullable Playhead playhead) {

  /** The stretch in which slaps count, both ends included. */
  public record Window(double fromS, double toS) {
    /**
     * Returns the window of a reading: from its first slap for the protocol's seconds, or to its
     * last mark if that comes sooner; null before the first slap is marked.
     *
     * @param windowS the protocol's seconds, real time
     */
    public static @Nullable Window of(Trial trial, Reading reading, double windowS) {
      double fromS = trial.fromS() == null ? Double.NEGATIVE_INFINITY : trial.fromS();
      double toS = trial.toS() == null ? Double.POSITIVE_INFINITY : trial.toS();
      List<Slap> marks =
          reading.slaps().stream()
              .filter(mark -> mark.timeS() >= fromS && mark.timeS() <= toS)
              .dropWhile(mark -> !mark.counts())
              .toList();
      if (marks.isEmpty()) {
        return null;
      }
      double firstS = marks.get(0).timeS();
      double lastS = marks.get(marks.size() - 1).timeS();
      TimeScale scale = trial.timeScale();
      return new Window(
          firstS, scale.known() ? Math.min(lastS, scale.mediaAfter(firstS, windowS)) : lastS);
    }

    /** Returns whether a moment lies inside. */
    public boolean contains(double timeS) {
      return fromS <= timeS && timeS <= toS;
    }
  }

  /**
   * The mapping of time to x.
   *
   * @param leftX where the strip begins, pixels
   * @param rightX where it ends, pixels
   * @param fromS the moment at {@code leftX}
   * @param pixelsPerS pixels in one media second
   */
  public record View(double leftX, double rightX, double fromS, double pixelsPerS) {
    /** Returns the x of a moment. */
    public double x(double timeS) {
      return leftX + (timeS - fromS) * pixelsPerS;
    }

    /** Returns the moment at an x. */
    public double timeS(double x) {
      return fromS + (x - leftX) / pixelsPerS;
    }

    /** Returns whether something from one x to another can be seen. */
    boolean shows(double fromX, double toX) {
      return toX >= leftX - MARGIN && fromX <= rightX + MARGIN;
    }
  }

  /**
   * The y of each lane, pixels from the top.
   *
   * @param topY top of the sheet; the flag stands on it
   * @param spansY middle of the first row of spans
   * @param lineY the hand line: palm above, back below
   * @param turnY middle of the turn's curve; null for no such lane
   * @param soundY middle of the sound's curve; null for no such lane
   * @param axisY the time axis; its labels hang under it
   */
  public record Lanes(
      double topY,
      double spansY,
      double lineY,
      @Nullable Double turnY,
      @Nullable Double soundY,
      double axisY) {
    /** The strip of the app, 316 high. */
    public static final Lanes APP = new Lanes(31, 49, 148, 238.0, 273.0, 290);

    /** Returns lanes without curves. */
    public static Lanes plain(double topY, double spansY, double lineY, double axisY) {
      return new Lanes(topY, spansY, lineY, null, null, axisY);
    }
  }

  /**
   * The playhead.
   *
   * @param timeS the moment of the picture that is shown
   * @param flag what the flag above it says
   * @param current place in {@code slaps} of the chosen mark, or −1
   */
  public record Playhead(double timeS, String flag, int current) {}

  /** A mark's head reaches this far beyond its x. */
  private static final double MARGIN = 12;

  public BeatStrip {
    slaps = List.copyOf(slaps);
    spans = List.copyOf(spans);
    framesS = List.copyOf(framesS);
  }

  /** Returns the same strip in other colours. */
  public BeatStrip withPalette(Palette other) {
    return new BeatStrip(
        slaps, spans, overlay, scale, window, view, lanes, other, framesS, words, playhead);
  }

  /** Returns the place in {@code slaps} of the mark whose head or stem lies under a point. */
  public OptionalInt slapAt(double x, double y) {
    double best = MARGIN;
    int found = -1;
    for (int i = 0; i < slaps.size(); i++) {
      double away = away(i, x, y);
      if (away < best) {
        best = away;
        found = i;
      }
    }
    return found < 0 ? OptionalInt.empty() : OptionalInt.of(found);
  }

  private double away(int slap, double x, double y) {
    double dx = x - view.x(slaps.get(slap).timeS());
    double stem = stemHeight(slap);
    double towards = Math.max(Math.min(0, -stem), Math.min(Math.max(0, -stem), y - lanes.lineY()));
    return Math.hypot(dx, y - lanes.lineY() - towards);
  }

  /**
   * Returns how far above the line a mark's head stands, pixels: negative below it, 0 for a clean
   * slap whose side is unknown. A double stands as high as the slap it repeats.
   */
  double stemHeight(int slap) {
    Slap mark = slaps.get(slap);
    int repeated = repeatedBy(slap);
    if (repeated >= 0) {
      double height = stemHeight(repeated);
      if (height == 0) {
        return EstimateOverlay.BESIDE_THE_LINE;
      }
      return slaps.get(repeated).side() == mark.side() ? height : -height;
    }
    double height = mark.faulty() && mark.kind() != Slap.Kind.DOUBLE ? 48 : 33;
    return switch (mark.side()) {
      case PALM -> height;
      case BACK -> -height;
      case UNKNOWN -> mark.faulty() ? height : 0;
    };
  }

  /** Returns the place of the slap that a double repeats, −1 for none. */
  int repeatedBy(int slap) {
    if (slaps.get(slap).kind() != Slap.Kind.DOUBLE) {
      return -1;
    }
    for (int i = slap - 1; i >= 0; i--) {
      if (slaps.get(i).counts()) {
        return i;
      }
    }
    return -1;
  }

  /** Returns the number of a slap among those that count in the window, from 1; 0 for others. */
  public int countNumber(int slap) {
    Slap mark = slaps.get(slap);
    if (window == null || !mark.counts() || !window.contains(mark.timeS())) {
      return 0;
    }
    int number = 0;
    for (int i = 0; i <= slap; i++) {
      if (slaps.get(i).counts() && window.contains(slaps.get(i).timeS())) {
        number++;
      }
    }
    return number;
  }

  /** Returns whether a mark's side is known. */
  static boolean hasKnownSide(Slap slap) {
    return slap.side() != Side.UNKNOWN;
  }
}
