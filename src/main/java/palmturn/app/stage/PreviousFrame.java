package palmturn.app.stage;

import java.util.concurrent.CompletableFuture;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Picture;

/** The picture of the previous frame, while it is overlaid. */
final class PreviousFrame {
  private final Stage stage;
  private final ReadOnlyObjectWrapper<@Nullable Picture> picture = new ReadOnlyObjectWrapper<>();

  PreviousFrame(Stage stage) {
    this.stage = stage;
  }

  /** The picture before; null where there is none, it is not wanted, or it is not there yet. */
  ReadOnlyObjectProperty<@Nullable Picture> pictureProperty() {
    return picture.getReadOnlyProperty();
  }

  /** Follows the picture that is shown by now. */
  void follow() {
    Picture now = stage.pictureProperty().get();
    boolean wanted =
        stage.viewing().previousFrameProperty().get() && !stage.playingProperty().get();
    if (!wanted || now == null || now.index() <= stage.first()) {
      picture.set(null);
      return;
    }
    int before = now.index() - 1;
    Picture there = picture.get();
    if (there != null && there.index() == before) {
      return;
    }
    picture.set(null);
    CompletableFuture<Picture> coming = stage.fetch(before);
    if (coming != null) {
      coming.thenAccept(came -> stage.onScreen(() -> arrived(now, came)));
    }
  }

  private void arrived(Picture of, Picture came) {
    if (stage.pictureProperty().get() == of
        && came.index() == of.index() - 1
        && stage.viewing().previousFrameProperty().get()) {
      picture.set(came);
    }
  }
}
