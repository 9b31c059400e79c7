package palmturn.app.stage;

import java.nio.IntBuffer;
import java.util.Locale;
import javafx.animation.AnimationTimer;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;

/** Shows the picture, as large as it fits, with its time and frame number on it. */
public final class StageView extends StackPane {
  private final Stage stage;
  private final ImageView image = new ImageView();
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

  /** Builds the pane, which takes what room the others leave. */
  public StageView(Stage stage, Look look, Follow follow) {
    this.stage = stage;
    getStyleClass().setAll("stage");
    setId("stage");
    image.setPreserveRatio(true);
    image.setSmooth(true);
    image.setManaged(false);
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
    getChildren().setAll(image, foot, trouble);
    setMinSize(0, 0);
    follow.changes(stage.frameProperty(), this::words);
    follow.changes(stage.framesProperty(), this::words);
    follow.changes(stage.speedProperty(), this::words);
    follow.changes(stage.troubleProperty(), this::words);
    follow.value(stage.pictureProperty(), this::show);
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
