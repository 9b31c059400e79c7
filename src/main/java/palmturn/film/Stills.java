package palmturn.film;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import palmturn.clip.Picture;

/** Still pictures of a clip, encoded. */
public final class Stills {
  static {
    // Pictures are small: a cache on the disk would only fail where the temporary folder is full.
    ImageIO.setUseCache(false);
  }

  private Stills() {}

  /**
   * Returns a picture as JPEG, made smaller where it is wider than asked for.
   *
   * @param maxWidth pixels
   */
  public static byte[] jpeg(Picture picture, int maxWidth) {
    BufferedImage image = image(picture);
    BufferedImage fitted = image.getWidth() > maxWidth ? shrunk(image, maxWidth) : image;
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      if (!ImageIO.write(fitted, "jpeg", bytes)) {
        throw new IllegalStateException("every Java writes JPEG");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  static BufferedImage image(Picture picture) {
    BufferedImage image =
        new BufferedImage(picture.width(), picture.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, picture.width(), picture.height(), picture.argb(), 0, picture.width());
    return image;
  }

  private static BufferedImage shrunk(BufferedImage image, int width) {
    int height = Math.max(1, Math.round((float) image.getHeight() * width / image.getWidth()));
    BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = small.createGraphics();
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    graphics.drawImage(image, 0, 0, width, height, null);
    graphics.dispose();
    return small;
  }
}
