package palmturn.app.stage;

import java.nio.IntBuffer;
import javafx.animation.PauseTransition;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.clip.Picture;

/** The visible part of a picture, dimmed while another one is loading. */
public final class PictureNode extends ImageView {
  /** A picture that stays this long after another was asked for is dimmed. */
  private static final Duration PATIENCE = Duration.millis(120);

  private static final double DIMMED = 0.45;

  /** From here on the pixels themselves are looked at, so they are not smoothed away. */
  private static final double PIXELS = 4;

  /** A picture that is handed over. */
  PictureNode() {
    setPreserveRatio(true);
    setManaged(false);
    setMouseTransparent(true);
  }

  /** The picture of a stage. */
  public PictureNode(Stage stage, Listeners listeners) {
    this();
    PauseTransition patience = new PauseTransition(PATIENCE);
    patience.setOnFinished(event -> setOpacity(isStale(stage) ? DIMMED : 1));
    listeners.onValue(
        stage.pictureProperty(),
        picture -> {
          show(picture);
          setOpacity(1);
        });
    listeners.onChange(
        stage.frameProperty(),
        () -> {
          if (isStale(stage)) {
            patience.playFromStart();
          }
        });
    listeners.onEnd(patience::stop);
  }

  private static boolean isStale(Stage stage) {
    Picture shown = stage.pictureProperty().get();
    return shown != null && shown.index() != stage.frameProperty().get();
  }

  /** Shows a picture, or none. */
  void show(@Nullable Picture picture) {
    setImage(picture == null ? null : toImage(picture));
  }

  /** Returns a picture for views; the cache's own array, since pictures never change. */
  public static WritableImage toImage(Picture picture) {
    return new WritableImage(
        new PixelBuffer<>(
            picture.width(),
            picture.height(),
            IntBuffer.wrap(picture.argb()),
            PixelFormat.getIntArgbPreInstance()));
  }

  /**
   * Lays it out in a pane, and tells how it is looked at what room there is.
   *
   * @param shown the picture whose size counts; null without one
   * @param width of the pane, pixels of the screen
   * @param height of the pane, pixels of the screen
   */
  public void layOut(Viewport viewing, @Nullable Picture shown, double width, double height) {
    viewing.setSizes(
        shown == null || width < 1 || height < 1
            ? null
            : new Framing.Sizes(width, height, shown.width(), shown.height()));
    Framing.Placement lie = viewing.placement();
    if (shown != null && lie != null) {
      setSmooth(lie.scale() < PIXELS);
      setFitWidth(shown.width() * lie.scale());
      setFitHeight(shown.height() * lie.scale());
      relocate(lie.left(), lie.top());
    }
  }
}
