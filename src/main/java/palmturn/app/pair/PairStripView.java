package palmturn.app.pair;

import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Theme;
import palmturn.app.strip.StripGraphics;
import palmturn.chart.BeatStrip;
import palmturn.chart.BeatStripPainter;
import palmturn.chart.Palette;
import palmturn.measure.TrialAlignment;
import palmturn.trial.Slap;

/** The marks of both trials in two rows, aligned slaps tied; a click or drag goes there. */
final class PairStripView extends Pane {
  private static final double GUTTER = 150;
  private static final double MARGIN = 24;

  /** Rows are drawn smaller than the beat strip, since two must do with its room. */
  private static final double SMALL = 0.8;

  private static final double TOP = 27;
  private static final double BETWEEN = 18;
  private static final double ROW = PairStrip.ROW * SMALL;
  private static final double LOWER = TOP + ROW + BETWEEN;
  private static final double AXIS = LOWER + ROW;
  private static final double HEIGHT = AXIS + 30;

  /** Height left to the pictures and their labels, at any text size. */
  private static final double ABOVE = 250;

  private final TrialPair pair;
  private final Look look;
  private final Canvas canvas = new Canvas();
  private double scale;

  PairStripView(TrialPair pair, Look look, Listeners listeners) {
    this.pair = pair;
    this.look = look;
    setId("pair-strip");
    getStyleClass().setAll("strip");
    setAccessibleText("Beat strip of both hands");
    getChildren().add(canvas);
    scale = look.scaleProperty().get();
    Nodes.setHeight(this, look.px(HEIGHT));
    setMinWidth(0);
    listeners.onChange(pair.meetingProperty(), this::draw);
    listeners.onChange(pair.one().stage().frameProperty(), this::draw);
    setOnMousePressed(event -> goTo(event.getX()));
    setOnMouseDragged(event -> goTo(event.getX()));
  }

  /** Gives way to the pictures where text is large; height is that of all panes, pixels. */
  void fitInto(double height) {
    double fits = look.scaleFitting(height, HEIGHT, ABOVE);
    if (fits != scale) {
      scale = fits;
      Nodes.setHeight(this, HEIGHT * fits);
    }
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    draw();
  }

  private void goTo(double x) {
    PairStrip strip = strip();
    double at = x / scale;
    if (strip != null && at > GUTTER - 12) {
      pair.goTo(view(strip).timeS(at));
    }
  }

  private @Nullable PairStrip strip() {
    TrialAlignment meeting = pair.meetingProperty().get();
    return meeting == null ? null : new PairStrip(meeting, pair.left() == pair.one());
  }

  private BeatStrip.View view(PairStrip strip) {
    return strip.view(GUTTER, getWidth() / scale - MARGIN);
  }

  private void draw() {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    PairStrip strip = strip();
    if (strip == null) {
      return;
    }
    Palette palette = look.theme().palette();
    BeatStrip.View view = view(strip);
    g.save();
    g.scale(scale, scale);
    drawSheet(g, strip, true, TOP, view);
    drawSheet(g, strip, false, LOWER, view);
    BeatStrip axis =
        PairStrip.axis(view, TOP, AXIS, palette, pair.nowS(), flagText(strip.meeting()));
    BeatStripPainter.ground(new StripGraphics(g), axis);
    drawTimeOwner(g, strip.meeting());
    g.restore();
    drawRow(g, strip, true, TOP, view);
    drawRow(g, strip, false, LOWER, view);
    g.save();
    g.scale(scale, scale);
    drawTies(g, strip, view);
    BeatStripPainter.marks(new StripGraphics(g), axis);
    g.restore();
  }

  private void drawSheet(
      GraphicsContext g, PairStrip strip, boolean above, double top, BeatStrip.View view) {
    Palette palette = look.theme().palette();
    BeatStrip.Window window = strip.window(above);
    double line = top + PairStrip.LINE * SMALL;
    if (window != null) {
      double from = view.x(window.fromS());
      g.setFill(Theme.fx(palette.sheet()));
      g.fillRect(from, top, view.x(window.toS()) - from, ROW);
    }
    g.setStroke(Theme.fx(palette.ink()));
    g.setLineWidth(1.5);
    g.strokeLine(view.leftX(), line, view.rightX(), line);
    PairMember half = above ? pair.left() : pair.right();
    PairTrial trial = half.trialProperty().get();
    if (trial != null) {
      g.setFill(Theme.fx(palette.ink()));
      g.setFont(Look.bold(14));
      g.fillText(PairWords.shortName(trial.id()), 24, line - 4);
      g.setFill(Theme.fx(palette.ink2()));
      g.setFont(Look.regular(13));
      g.fillText(PairWords.block(trial.id()), 24, line + 14);
      int slaps = strip.handClock(above).slaps().size();
      g.fillText(
          slaps == 0 ? "no slaps" : slaps + (slaps == 1 ? " slap" : " slaps"), 24, line + 31);
    }
  }

  /** Names the trial whose time the axis shows, if the other's is stretched. */
  private void drawTimeOwner(GraphicsContext g, TrialAlignment meeting) {
    PairTrial one = pair.one().trialProperty().get();
    PairTrial other = pair.other().trialProperty().get();
    if (meeting.samePace() && one != null && other != null) {
      g.setFill(Theme.fx(look.theme().palette().ink3()));
      g.setFont(Look.regular(13));
      g.fillText("time of the " + PairWords.nameBeside(one, other), 24, AXIS + 19);
    }
  }

  private void drawRow(
      GraphicsContext g, PairStrip strip, boolean above, double top, BeatStrip.View view) {
    g.save();
    g.scale(scale, scale);
    g.translate(0, top);
    g.scale(SMALL, SMALL);
    BeatStripPainter.marks(
        new StripGraphics(g),
        strip.row(
            above,
            new BeatStrip.View(
                view.leftX() / SMALL,
                view.rightX() / SMALL,
                view.fromS(),
                view.pixelsPerS() / SMALL),
            look.theme().palette()));
    g.restore();
  }

  /** A tie that stands upright: both hands slap at once. Every fifth is numbered. */
  private void drawTies(GraphicsContext g, PairStrip strip, BeatStrip.View view) {
    TrialAlignment meeting = strip.meeting();
    Palette palette = look.theme().palette();
    double from = TOP + ROW - 5;
    double to = LOWER + 1;
    for (int number = meeting.first(); number <= meeting.last(); number++) {
      Slap here = meeting.one().slaps().get(number - 1);
      Slap there = meeting.other().slaps().get(number - 1 + meeting.shift());
      double one = view.x(strip.axis(strip.oneAbove()).applyAsDouble(here.timeS()));
      double other = view.x(strip.axis(!strip.oneAbove()).applyAsDouble(there.timeS()));
      boolean met = number == meeting.slap();
      g.setStroke(Theme.fx(met ? palette.iris() : palette.edge()));
      g.setLineWidth(met ? 2.5 : 1.25);
      g.strokeLine(strip.oneAbove() ? one : other, from, strip.oneAbove() ? other : one, to);
      if (number % 5 == 0 && !met && meeting.shift() == 0) {
        drawNumber(g, number, (one + other) / 2, (from + to) / 2);
      }
    }
  }

  private void drawNumber(GraphicsContext g, int number, double x, double y) {
    Palette palette = look.theme().palette();
    g.setFill(Theme.fx(palette.paper()));
    g.fillRect(x - 10, y - 8, 20, 15);
    g.setFill(Theme.fx(palette.ink3()));
    g.setFont(Look.regular(13));
    g.setTextAlign(TextAlignment.CENTER);
    g.fillText(Integer.toString(number), x, y + 4.5);
    g.setTextAlign(TextAlignment.LEFT);
  }

  private String flagText(TrialAlignment meeting) {
    if (!meeting.onSlap()) {
      return PairWords.signed(pair.nowS());
    }
    double since = pair.nowS() - meeting.one().slapS(meeting.slap());
    return Math.abs(since) < 0.0005
        ? "slap " + meeting.slap()
        : "slap " + meeting.slap() + " " + PairWords.signed(since);
  }
}
