package palmturn.estimate.image;

import static org.bytedeco.opencv.global.opencv_core.CV_32FC1;
import static org.bytedeco.opencv.global.opencv_core.CV_64FC1;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC4;

import java.nio.ByteOrder;
import org.bytedeco.javacpp.indexer.DoubleIndexer;
import org.bytedeco.opencv.opencv_core.Mat;
import palmturn.clip.Picture;

/** Arrays into matrices and back; what is returned is the caller's to close. */
public final class Mats {
  private Mats() {}

  /** Returns a frame as four bytes a pixel: blue, green, red and one that means nothing. */
  public static Mat bgra(Picture picture) {
    Mat mat = new Mat(picture.height(), picture.width(), CV_8UC4);
    mat.data()
        .capacity(4L * picture.argb().length)
        .asByteBuffer()
        .order(ByteOrder.LITTLE_ENDIAN)
        .asIntBuffer()
        .put(picture.argb());
    return mat;
  }

  /** Returns a map of one float a cell. */
  public static Mat field(float[] values, int width, int height) {
    Mat mat = new Mat(height, width, CV_32FC1);
    mat.data()
        .capacity(4L * values.length)
        .asByteBuffer()
        .order(ByteOrder.nativeOrder())
        .asFloatBuffer()
        .put(values);
    return mat;
  }

  /** Returns a small picture of three bytes a cell. */
  public static Mat bgr(byte[] values, int width, int height) {
    Mat mat = new Mat(height, width, CV_8UC3);
    mat.data().capacity(values.length).put(values);
    return mat;
  }

  /** Returns a similarity as two rows of three. */
  public static Mat matrix(Similarity s) {
    Mat mat = new Mat(2, 3, CV_64FC1);
    try (DoubleIndexer m = mat.createIndexer()) {
      m.put(0, 0, s.a(), -s.b(), s.dx());
      m.put(1, 0, s.b(), s.a(), s.dy());
    }
    return mat;
  }

  /** Returns the values of a continuous matrix of floats. */
  public static float[] floats(Mat mat) {
    int n = (int) (mat.total() * mat.channels());
    float[] out = new float[n];
    mat.data()
        .capacity(4L * n)
        .asByteBuffer()
        .order(ByteOrder.nativeOrder())
        .asFloatBuffer()
        .get(out);
    return out;
  }

  /** Returns the bytes of a continuous matrix of bytes. */
  public static byte[] bytes(Mat mat) {
    byte[] out = new byte[(int) (mat.total() * mat.channels())];
    mat.data().capacity(out.length).get(out);
    return out;
  }
}
