package palmturn.estimate.hands;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC4;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imread;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2BGR;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;

import java.net.URISyntaxException;
import java.net.URL;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Objects;
import org.bytedeco.opencv.opencv_core.Mat;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;

/**
 * Pictures for the landmark networks: blue, green, red. What is returned is the caller's to close.
 */
public final class Shown {
  private Shown() {}

  /** Returns the photo of two hands, 720 by 382 pixels: both left ones, both showing the back. */
  public static Mat hands() {
    return imread(file(Shown.class, "hands.jpg").toString());
  }

  /** Returns the clip of one hand that spells letters: 325 frames, 620 by 1080 pixels. */
  static ClipFile spelling() throws ClipException {
    return ClipFile.open(file(ClipFile.class, "asl_hand.25fps.mp4"));
  }

  static Mat frame(FrameReader reader, int index) throws ClipException {
    Picture picture = reader.read(index);
    Mat bgr = new Mat();
    try (Mat all = new Mat(picture.height(), picture.width(), CV_8UC4)) {
      all.data()
          .capacity(4L * picture.argb().length)
          .asByteBuffer()
          .order(ByteOrder.LITTLE_ENDIAN)
          .asIntBuffer()
          .put(picture.argb());
      cvtColor(all, bgr, COLOR_BGRA2BGR);
    }
    return bgr;
  }

  static Path file(Class<?> beside, String name) {
    URL found = Objects.requireNonNull(beside.getResource(name), name);
    try {
      return Path.of(found.toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(name, e);
    }
  }
}
