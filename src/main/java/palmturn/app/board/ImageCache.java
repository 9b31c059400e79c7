package palmturn.app.board;

import java.util.Map;
import java.util.WeakHashMap;
import javafx.scene.image.Image;
import palmturn.app.stage.PictureNode;
import palmturn.clip.Picture;

/** Pictures converted for the screen, each only once. */
public final class ImageCache {
  private final Map<Picture, Image> made = new WeakHashMap<>();

  /** Returns a picture for the screen. */
  public Image of(Picture picture) {
    return made.computeIfAbsent(picture, PictureNode::toImage);
  }
}
