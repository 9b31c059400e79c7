package palmturn.app.stage;

import java.nio.IntBuffer;
import java.util.Locale;
import javafx.animation.AnimationTimer;
import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.Found;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.trial.Estimate;

/** Shows the picture, as large as it fits, its time and frame number, and the estimate on it. */
public final class StageView extends StackPane {
  private final Stage stage;
  private final Found found;
  private final double elbowLimitCm;
  private final Look look;
  private final ImageView image = new ImageView();
  private final Canvas overlay = new Canvas();
  private final Label where = new Label();
  private final Label speed = new Label();
  private final Label trouble = new Label();
  private final AnimationTimer clock =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          stage.tick(System.nanoTime());
        }
      };

  /**
   * Builds the pane, which takes what room the others leave.
   *
   * @param elbowLimitCm how far the elbow may go from its place
   * @param line stands on the picture, at the foot of it
   */
  public StageView(
      Stage stage, Found found, double elbowLimitCm, EstimateLine line, Look look, Follow follow) {
    this.stage = stage;
    this.found = found;
    this.elbowLimitCm = elbowLimitCm;
    this.look = look;
    getStyleClass().setAll("stage");
    setId("stage");
    image.setPreserveRatio(true);
    image.setSmooth(true);
    image.setManaged(false);
    overlay.setManaged(false);
    overlay.setMouseTransparent(true);
    StackPane.setAlignment(line, Pos.BOTTOM_CENTER);
    line.getStyleClass().add("stage-line");
    where.setId("stage-where");
    where.getStyleClass().add("on-picture");
    speed.getStyleClass().add("on-picture");
    trouble.setId("stage-trouble");
    trouble.getStyleClass().add("on-picture");
    trouble.setWrapText(true);
    Region space = new Region();
    HBox.setHgrow(space, javafx.scene.layout.Priority.ALWAYS);
    HBox foot = new HBox(look.px(8), where, space, speed);
    foot.setMaxHeight(Region.USE_PREF_SIZE);
    foot.setMouseTransparent(true);
    StackPane.setAlignment(foot, Pos.BOTTOM_CENTER);
    foot.getStyleClass().add("stage-foot");
    getChildren().setAll(image, overlay, foot, line, trouble);
    setMinSize(0, 0);
    follow.changes(stage.frameProperty(), this::words);
    follow.changes(stage.framesProperty(), this::words);
    follow.changes(stage.speedProperty(), this::words);
    follow.changes(stage.troubleProperty(), this::words);
    follow.value(stage.pictureProperty(), this::show);
    follow.changes(found.visibleProperty(), this::drawOverlay);
    follow.value(stage.playingProperty(), this::run);
    follow.atEnd(clock::stop);
    words();
  }

  @Override
  protected void layoutChildren() {
    super.layoutChildren();
    WritableImage shown = (WritableImage) image.getImage();
    if (shown != null) {
      double fit = Math.min(getWidth() / shown.getWidth(), getHeight() / shown.getHeight());
      double width = shown.getWidth() * fit;
      double height = shown.getHeight() * fit;
      image.setFitWidth(width);
      image.setFitHeight(height);
      image.relocate(Math.round((getWidth() - width) / 2), Math.round((getHeight() - height) / 2));
    }
    overlay.setWidth(getWidth());
    overlay.setHeight(getHeight());
    drawOverlay();
  }

  /** Draws only beside the picture of the very frame that it is about. */
  private void drawOverlay() {
    GraphicsContext g = overlay.getGraphicsContext2D();
    g.clearRect(0, 0, overlay.getWidth(), overlay.getHeight());
    Estimate shown = found.visibleProperty().getValue();
    Picture picture = stage.pictureProperty().get();
    if (shown != null && picture != null && image.getImage() != null) {
      new OverlayDrawing(
              g,
              look,
              image.getFitWidth() / picture.width(),
              image.getLayoutX(),
              image.getLayoutY())
          .draw(Overlay.at(shown, picture.timeS(), elbowLimitCm));
    }
  }

  private void show(@Nullable Picture picture) {
    if (picture == null) {
      image.setImage(null);
    } else {
      // The cache's own array is shown without a copy: pictures never change.
      image.setImage(
          new WritableImage(
              new PixelBuffer<>(
                  picture.width(),
                  picture.height(),
                  IntBuffer.wrap(picture.argb()),
                  PixelFormat.getIntArgbPreInstance())));
    }
    requestLayout();
  }

  private void run(boolean playing) {
    if (playing) {
      clock.start();
    } else {
      clock.stop();
    }
    words();
  }

  private void words() {
    FrameTable frames = stage.framesProperty().get();
    boolean open = frames != null;
    where.setVisible(open);
    speed.setVisible(open);
    if (frames != null) {
      where.setText(
          String.format(
              Locale.ROOT,
              "%.3f s   frame %d of %d",
              stage.timeS(),
              stage.frameProperty().get() + 1,
              frames.size()));
    }
    speed.setText(
        (stage.playingProperty().get() ? "playing at " : "speed ")
            + stage.speedProperty().get().words());
    trouble.setText(stage.troubleProperty().get());
    trouble.setVisible(!trouble.getText().isEmpty());
  }
}
