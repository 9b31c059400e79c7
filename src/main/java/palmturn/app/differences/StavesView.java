package palmturn.app.differences;

import javafx.beans.value.ObservableValue;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.app.strip.SoundOutline;
import palmturn.app.strip.StripGraphics;
import palmturn.chart.BeatStrip;
import palmturn.chart.Palette;
import palmturn.chart.Staves;
import palmturn.chart.StavesPainter;
import palmturn.settle.SettledTrial;
import palmturn.trial.Estimate;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;

/** Both readings around the difference, one above the other, and the line of the current frame. */
final class StavesView extends Pane {
  private static final double LEAST = 262;

  private final DifferenceReview differences;
  private final ObservableValue<@Nullable SoundOutline> wave;
  private final Look look;
  private final Canvas canvas = new Canvas();
  private final Region line = new Region();
  private final Label flag = new Label();
  private BeatStrip.@Nullable View view;

  StavesView(
      DifferenceReview differences,
      ObservableValue<@Nullable SoundOutline> wave,
      Look look,
      Listeners listeners) {
    this.differences = differences;
    this.wave = wave;
    this.look = look;
    setId("staves");
    setMinSize(0, look.px(LEAST));
    line.getStyleClass().setAll("now-line");
    line.setManaged(false);
    flag.setId("afresh-flag");
    flag.getStyleClass().setAll("label", "now-flag");
    flag.setManaged(false);
    getChildren().setAll(canvas, line, flag);
    listeners.onChange(differences.settledProperty(), this::draw);
    listeners.onChange(differences.positionProperty(), this::draw);
    listeners.onChange(wave, this::draw);
    listeners.onChange(differences.stage().frameProperty(), this::showNow);
    listeners.onChange(differences.newMark().activeProperty(), this::showNow);
    listeners.onChange(differences.newMark().slapProperty(), this::showNow);
    listeners.onChange(differences.newMark().spanProperty(), this::showNow);
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    draw();
  }

  private void draw() {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    view = null;
    SettledTrial settled = differences.settledProperty().get();
    ReviewedTrial opened = differences.trialProperty().get();
    ReviewItem item = differences.current();
    DifferenceWords wording = StavesLayout.wording(differences);
    double scale = look.scaleProperty().get();
    if (settled != null && opened != null && item != null && wording != null && getWidth() > 1) {
      Palette palette = look.theme().palette();
      Estimate made = opened.trial().estimate();
      StavesLayout.Heights heights = StavesLayout.Heights.in(getHeight() / scale);
      Staves staves =
          StavesLayout.layOut(
              settled,
              opened,
              item,
              palette,
              getWidth() / scale,
              heights,
              wording.isEstimate(true),
              made);
      view = staves.upper().view();
      g.save();
      g.scale(scale, scale);
      StavesPainter.paint(new StripGraphics(g), staves);
      drawSound(g, staves, opened, made);
      drawGutter(g, palette, staves, wording);
      g.restore();
    }
    showNow();
  }

  private void drawSound(
      GraphicsContext g, Staves staves, ReviewedTrial opened, @Nullable Estimate made) {
    Double y = staves.upper().lanes().soundY();
    SoundOutline heard = wave.getValue();
    // The sound of a stretched clip tells nothing about its slaps.
    if (y != null && heard != null && opened.trial().timeScale().equals(TimeScale.REAL)) {
      Double offsetS = made == null ? opened.trial().soundOffsetS() : made.soundOffsetS();
      heard.draw(g, staves.upper(), y, offsetS == null ? 0 : offsetS);
    }
  }

  private void drawGutter(
      GraphicsContext g, Palette palette, Staves staves, DifferenceWords wording) {
    drawName(
        g, palette, wording.readingNameCapitalised(false), "↑", staves.upper().lanes().lineY());
    drawName(g, palette, wording.readingNameCapitalised(true), "↓", staves.lower().lanes().lineY());
    Double turnY = staves.upper().lanes().turnY();
    Double soundY = staves.upper().lanes().soundY();
    if (turnY != null && staves.curves() != null) {
      drawText(g, palette, "Turn", turnY, true);
    }
    if (soundY != null && wave.getValue() != null) {
      drawText(g, palette, "Sound", soundY, true);
    }
    if (!staves.upper().framesS().isEmpty()) {
      g.setFont(Look.regular(13));
      g.setFill(Theme.fx(palette.ink3()));
      g.fillText("one line per frame", 0, staves.upper().lanes().axisY() + 19);
    }
  }

  private static void drawName(
      GraphicsContext g, Palette palette, String reading, String key, double y) {
    g.save();
    g.beginPath();
    g.rect(0, y - 14, 74, 28);
    g.clip();
    String shown = reading.startsWith("The ") ? "Estimate" : reading;
    drawText(g, palette, shown, y, true);
    g.restore();
    g.setStroke(Theme.fx(palette.edge()));
    g.setLineWidth(1.5);
    g.setLineDashes();
    g.strokeRoundRect(78.75, y - 10.25, 20.5, 20.5, 6, 6);
    g.setFont(Look.bold(13));
    g.setFill(Theme.fx(palette.ink()));
    g.fillText(key, 84.5, y + 4.5);
  }

  private static void drawText(
      GraphicsContext g, Palette palette, String words, double y, boolean bold) {
    g.setFont(bold ? Look.bold(13) : Look.regular(13));
    g.setFill(Theme.fx(palette.ink()));
    g.fillText(words, 0, y + 4.5);
  }

  /** Puts the line on the frame that is shown, with the mark that is being made. */
  private void showNow() {
    BeatStrip.View in = view;
    line.setVisible(in != null);
    flag.setVisible(false);
    if (in == null) {
      return;
    }
    double scale = look.scaleProperty().get();
    double x = in.x(differences.stage().timeS());
    boolean inside = x >= in.leftX() && x <= in.rightX();
    line.setVisible(inside);
    line.resizeRelocate(x * scale - 1, 0, 2, getHeight() - look.px(24));
    if (inside && differences.newMark().activeProperty().get()) {
      Slap slap = differences.newMark().slapProperty().get();
      DifferenceWords wording = StavesLayout.wording(differences);
      flag.setText(slap == null ? "your mark" : "yours: " + DifferenceWords.shortLabel(slap));
      flag.setVisible(true);
      flag.autosize();
      double half = flag.getWidth() / 2;
      double left = in.leftX() * scale;
      double right = in.rightX() * scale - 2 * half;
      flag.relocate(Math.max(left, Math.min(right, x * scale - half)), 0);
    }
  }
}
