package palmturn.app.board;

import java.util.Map;
import java.util.WeakHashMap;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import palmturn.clip.Picture;

/** Pictures as the screen wants them, each turned into that once. */
public final class ImageCache {
  private final Map<Picture, Image> made = new WeakHashMap<>();

  /** Returns a picture for the screen. */
  public Image of(Picture picture) {
    return made.computeIfAbsent(picture, ImageCache::make);
  }

  private static Image make(Picture picture) {
    WritableImage image = new WritableImage(picture.width(), picture.height());
    image
        .getPixelWriter()
        .setPixels(
            0,
            0,
            picture.width(),
            picture.height(),
            PixelFormat.getIntArgbInstance(),
            picture.argb(),
            0,
            picture.width());
    return image;
  }
}
