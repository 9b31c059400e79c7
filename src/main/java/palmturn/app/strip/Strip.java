package palmturn.app.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.chart.BeatStrip;
import palmturn.chart.EstimateOverlay;
import palmturn.chart.Palette;
import palmturn.clip.FrameTable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.wording.MarkNames;

/** The beat strip: the visible stretch of time and its content. */
public final class Strip {
  /** Left of the time: the lanes' names and counts. */
  public static final double GUTTER = 264;

  /** A whole trial, pixels a second. */
  private static final double WHOLE = 192;

  /** Close enough to type along. */
  public static final double TYPING = 480;

  /** Close enough to tell frames apart. */
  public static final double CLOSE = 810;

  private static final double[] STEPS = {24, 48, 96, WHOLE, TYPING, CLOSE, 1600, 2400};
  private static final double CLOSEST = STEPS[STEPS.length - 1];
  private static final double WIDEST = STEPS[0];

  /** While keys are typed along the time runs under a line that stands here. */
  private static final double TYPING_LINE = 0.6;

  private static final double LEAD_S = 0.35;
  private static final double FRAMES_FROM = 480;

  private final Stage stage;
  private final Marking marking;
  private final ShownEstimate found;
  private final ReadOnlyObjectWrapper<@Nullable SoundOutline> outline =
      new ReadOnlyObjectWrapper<>();
  private TimeScale scale = TimeScale.REAL;
  private double windowS = 5;
  private double fromS;
  private double pixelsPerS = WHOLE;
  private double rightX = 1440;
  private boolean typing;
  private final MarkAnimation animation = new MarkAnimation();
  private final ReadOnlyObjectWrapper<List<Double>> messageTimes =
      new ReadOnlyObjectWrapper<>(List.of());

  /** Follows a stage, the marks on it and what was found in it. */
  public Strip(Stage stage, Marking marking, ShownEstimate found) {
    this.stage = stage;
    this.marking = marking;
    this.found = found;
  }

  /** The sound; null until it is read, or where there is none. */
  public ReadOnlyObjectProperty<@Nullable SoundOutline> outlineProperty() {
    return outline.getReadOnlyProperty();
  }

  /** Shows another trial from just before its first slap, or from its start. */
  public void open(TimeScale timeScale, double protocolWindowS) {
    scale = timeScale;
    windowS = protocolWindowS;
    pixelsPerS = WHOLE;
    scrollToFirstSlap();
  }

  /** Scrolls to just before the first slap: a mark, else the estimate's, else the start. */
  public void scrollToFirstSlap() {
    Double first = firstSlapS();
    Estimate shown = found.visibleProperty().getValue();
    if (first == null && shown != null && !shown.slaps().isEmpty()) {
      first = shown.slaps().get(0).timeS();
    }
    fromS = (first == null ? stage.timeS() : first) - LEAD_S;
  }

  /** The moments that messages are about, media seconds. */
  public ReadOnlyObjectProperty<List<Double>> messageTimesProperty() {
    return messageTimes.getReadOnlyProperty();
  }

  /** Shows which moments messages are about, media seconds. */
  public void setMessageTimes(List<Double> timesS) {
    messageTimes.set(timesS);
  }

  /** The animation of snapping marks. */
  public MarkAnimation animation() {
    return animation;
  }

  /** Lets time run under a fixed line, close, while keys are typed along. */
  public void setTyping(boolean now) {
    typing = now;
    pixelsPerS = TYPING;
    keepFrameInView();
  }

  /** Shows the whole trial. */
  public void showWhole() {
    pixelsPerS = WHOLE;
    scrollToFirstSlap();
    keepFrameInView();
  }

  /** Shows a moment in the middle, close. */
  public void showClose(double timeS, double closePixelsPerS) {
    pixelsPerS = closePixelsPerS;
    fromS = timeS - (rightX - GUTTER) / 2 / pixelsPerS;
  }

  /** Shows the next closer stretch of a few fixed ones, or the next wider. */
  public void zoomStep(boolean closer) {
    double to = closer ? CLOSEST : widest();
    for (int i = 0; i < STEPS.length; i++) {
      double each = STEPS[closer ? STEPS.length - 1 - i : i];
      if (closer ? each > pixelsPerS * 1.01 : each < pixelsPerS / 1.01) {
        to = each;
      }
    }
    zoom(to / pixelsPerS);
  }

  /**
   * Returns the scale at which the whole clip is in sight, pixels a second; wider shows nothing
   * more.
   */
  private double widest() {
    FrameTable frames = stage.framesProperty().get();
    if (frames == null) {
      return WHOLE;
    }
    double lengthS = scale.realBetween(frames.timeS(0), frames.timeS(frames.size() - 1));
    return Math.max(WIDEST, Math.min(WHOLE, (rightX - GUTTER) / (lengthS + 2 * LEAD_S)));
  }

  /** The estimate, if it may be seen. */
  ObservableValue<@Nullable Estimate> shownProperty() {
    return found.visibleProperty();
  }

  /** Returns what the estimate shows beside the marks; null for nothing. */
  @Nullable EstimateOverlay hollow() {
    Estimate shown = found.visibleProperty().getValue();
    return shown == null ? null : EstimateOverlay.of(shown, marking.readingProperty().get());
  }

  /** Returns how much later the sound is than the picture, 0 while not known, seconds. */
  public double soundOffsetS() {
    Estimate made = found.estimateProperty().get();
    Double offsetS = made == null ? null : made.soundOffsetS();
    return offsetS == null ? 0 : offsetS;
  }

  /** Returns the label of the turn's curve. */
  String turnWords() {
    Estimate shown = found.visibleProperty().getValue();
    Double hz = shown == null ? null : shown.figures().rotation().frequencyHz();
    return hz == null ? "" : String.format(Locale.ROOT, "%.2f Hz", hz);
  }

  /** Returns the label of the sound's curve. */
  String soundWords() {
    Estimate shown = found.visibleProperty().getValue();
    Double offsetS = shown == null ? null : shown.soundOffsetS();
    if (offsetS == null) {
      return "";
    }
    long ms = Math.round(Math.abs(offsetS) * 1000);
    return ms == 0 ? "in sync" : ms + (offsetS < 0 ? " ms early" : " ms late");
  }

  /** Shows a sound, or none. */
  public void setOutline(@Nullable SoundOutline newWave) {
    outline.set(newWave);
  }

  /** Tells how wide the strip is. */
  public void setRightX(double x) {
    rightX = x;
  }

  /** Shows a stretch closer or wider, keeping the moment at an x where it is. */
  public void zoom(double factor, double aroundX) {
    double atS = view().timeS(aroundX);
    pixelsPerS = Math.max(widest(), Math.min(CLOSEST, pixelsPerS * factor));
    fromS = atS - (aroundX - GUTTER) / pixelsPerS;
  }

  /** Shows a stretch closer or wider around the frame that the stage is at. */
  public void zoom(double factor) {
    zoom(factor, Math.max(GUTTER, Math.min(rightX, view().x(stage.timeS()))));
  }

  /** Shows a later stretch, or an earlier one when negative. */
  public void scroll(double pixels) {
    fromS += pixels / pixelsPerS;
  }

  /** Scrolls just enough for the stage's frame to be in sight. */
  public void keepFrameInView() {
    if (typing) {
      fromS = stage.timeS() - TYPING_LINE * (rightX - GUTTER) / pixelsPerS;
      return;
    }
    double margin = Math.min(96, (rightX - GUTTER) / 8);
    double x = view().x(stage.timeS());
    if (x > rightX - margin) {
      scroll(x - rightX + margin);
    } else if (x < GUTTER + margin / 4) {
      scroll(x - GUTTER - margin);
    }
  }

  /** Returns how time becomes x. */
  public BeatStrip.View view() {
    return new BeatStrip.View(GUTTER, rightX, fromS, pixelsPerS);
  }

  /** Returns the frame nearest to an x, within the trial's stretch. */
  public int frameAt(double x) {
    FrameTable frames = stage.framesProperty().get();
    if (frames == null) {
      return 0;
    }
    int nearest = frames.nearest(view().timeS(x));
    return Math.max(stage.first(), Math.min(stage.last(), nearest));
  }

  /** Returns the content to paint. */
  public BeatStrip content(Palette palette) {
    Reading reading = marking.readingProperty().get();
    Slap current = marking.slapProperty().get();
    List<Slap> slaps = reading == null ? List.of() : reading.slaps();
    FrameTable frames = stage.framesProperty().get();
    BeatStrip.Playhead now =
        frames == null
            ? null
            : new BeatStrip.Playhead(
                stage.timeS(), flagText(), current == null ? -1 : slaps.indexOf(current));
    return new BeatStrip(
        animation.displaced(slaps),
        reading == null ? List.of() : reading.spans(),
        hollow(),
        scale,
        window(),
        view(),
        BeatStrip.Lanes.APP,
        palette,
        frames == null || pixelsPerS < FRAMES_FROM ? List.of() : framesInView(frames),
        true,
        now);
  }

  /** Returns the text of the flag over the line. */
  String flagText() {
    double timeS = stage.timeS();
    BeatStrip.Window window = window();
    double fromFirst = window == null ? timeS : scale.realBetween(window.fromS(), timeS);
    Slap current = marking.slapProperty().get();
    FrameTable frames = stage.framesProperty().get();
    if (current == null
        || frames == null
        || frames.nearest(current.timeS()) != stage.frameProperty().get()) {
      return seconds(fromFirst);
    }
    Reading reading = marking.readingProperty().get();
    int number = reading == null ? 0 : number(reading, current, window);
    String what =
        number == 0
            ? current.kind() == Slap.Kind.SLAP ? "slap" : MarkNames.fault(current)
            : "slap " + number;
    double halfS =
        switch (current.timedBy()) {
          case PICTURE, MOTION -> current.resolutionS() / 2;
          case SOUND, TYPED -> current.resolutionS();
        };
    return "%s, %s, %s ± %s ms"
        .formatted(
            what,
            current.side() == Side.UNKNOWN ? "side unknown" : current.side().code(),
            seconds(
                window == null
                    ? current.timeS()
                    : scale.realBetween(window.fromS(), current.timeS())),
            ms(halfS));
  }

  /** Returns how many slaps of a side stand in the reading, and doubles among them, in words. */
  public String sideCount(Side side) {
    Reading reading = marking.readingProperty().get();
    if (reading == null) {
      return "";
    }
    List<Slap> ofSide = reading.slaps().stream().filter(slap -> slap.side() == side).toList();
    long slaps = ofSide.stream().filter(Slap::counts).count();
    long doubles = ofSide.stream().filter(slap -> slap.kind() == Slap.Kind.DOUBLE).count();
    return slaps + (doubles == 0 ? "" : ", " + doubles + (doubles == 1 ? " double" : " doubles"));
  }

  private BeatStrip.@Nullable Window window() {
    Double first = firstSlapS();
    if (first == null) {
      return null;
    }
    double length = scale.known() ? scale.mediaAfter(first, windowS) : first + windowS;
    return new BeatStrip.Window(first, length);
  }

  private @Nullable Double firstSlapS() {
    Reading reading = marking.readingProperty().get();
    return reading == null
        ? null
        : reading.slaps().stream().filter(Slap::counts).map(Slap::timeS).findFirst().orElse(null);
  }

  private static int number(Reading reading, Slap slap, BeatStrip.@Nullable Window window) {
    if (!slap.counts() || window == null || !window.contains(slap.timeS())) {
      return 0;
    }
    return (int)
        reading.slaps().stream()
            .filter(each -> each.counts() && each.timeS() <= slap.timeS())
            .count();
  }

  private List<Double> framesInView(FrameTable frames) {
    List<Double> in = new ArrayList<>();
    int last = frames.indexAt(view().timeS(rightX));
    for (int i = frames.indexAt(fromS); i <= last; i++) {
      in.add(frames.timeS(i));
    }
    return in;
  }

  /** Returns half a width in ms, rounded down but never to nothing. */
  private static String ms(double halfS) {
    double ms = halfS * 1000 + 1e-6;
    return ms < 1
        ? String.format(Locale.ROOT, "%.1f", Math.max(0.1, Math.floor(ms * 10) / 10))
        : String.format(Locale.ROOT, "%.0f", Math.floor(ms));
  }

  private static String seconds(double timeS) {
    return String.format(Locale.ROOT, "%.3f s", timeS).replace('-', '−');
  }
}
