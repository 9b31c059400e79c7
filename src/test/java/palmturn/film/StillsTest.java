package palmturn.film;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import palmturn.clip.Picture;

class StillsTest {
  private static BufferedImage read(int maxWidth) throws Exception {
    int[] argb = new int[40 * 20];
    Arrays.fill(argb, 0xffff0000);
    byte[] bytes = Stills.jpeg(new Picture(0, 0, 40, 20, argb), maxWidth);
    return ImageIO.read(new ByteArrayInputStream(bytes));
  }

  @Test
  void aWidePictureIsMadeSmallerInProportion() throws Exception {
    assertEquals(20, read(20).getWidth());
    assertEquals(10, read(20).getHeight());
  }

  @Test
  void aNarrowOneKeepsItsSizeAndItsColour() throws Exception {
    BufferedImage image = read(100);
    assertEquals(40, image.getWidth());
    assertEquals(0xff, image.getRGB(5, 5) >> 16 & 0xff, 3);
  }
}
