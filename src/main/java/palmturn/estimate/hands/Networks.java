package palmturn.estimate.hands;

import static org.bytedeco.opencv.global.opencv_core.CV_32F;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.bytedeco.opencv.global.opencv_dnn.blobFromImage;
import static org.bytedeco.opencv.global.opencv_dnn.readNetFromTFLite;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.MatVector;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.StringVector;
import org.bytedeco.opencv.opencv_dnn.Net;

/**
 * The landmark networks, run by OpenCV on this computer. Not for two threads at once; native memory
 * is given back by {@link #close}.
 */
public final class Networks implements AutoCloseable {
  /** Sides of the networks' input, by their model cards. */
  private static final int HAND_PX = 224;

  private static final int BODY_PX = 256;

  /** Numbers a landmark of a body: three of its place, visibility and presence. */
  private static final int PER_BODY_POINT = 5;

  private final Net palms;
  private final Net hands;
  private final Net bodies;
  private final float[] handBias;
  private final double presenceBias;

  private Networks(Net palms, Net hands, Net bodies, float[] handBias, double presenceBias) {
    this.palms = palms;
    this.hands = hands;
    this.bodies = bodies;
    this.handBias = handBias;
    this.presenceBias = presenceBias;
  }

  /**
   * Opens the networks.
   *
   * @throws IOException if one of them is missing or can't be understood: a line that names it
   */
  public static Networks open(NetworkUse how) throws IOException {
    Path folder = how.folder();
    Net palms = null;
    Net hands = null;
    ModelFile file = ModelFile.PALM_DETECTION_FULL;
    try {
      palms = net(bytes(folder, file));
      file = how.lite() ? ModelFile.HAND_LANDMARK_LITE : ModelFile.HAND_LANDMARK_FULL;
      byte[] hand = bytes(folder, file);
      Map<String, float[]> bias = HeadBias.of(hand);
      float[] points = bias.getOrDefault("Identity", new float[0]);
      float[] presence = bias.getOrDefault("Identity_1", new float[0]);
      if (points.length != 3 * HandMarks.SIZE || presence.length != 1) {
        throw new IllegalArgumentException("it has no last layer of landmarks");
      }
      hands = net(hand);
      file = how.lite() ? ModelFile.POSE_LANDMARK_LITE : ModelFile.POSE_LANDMARK_FULL;
      return new Networks(palms, hands, net(bytes(folder, file)), points, presence[0]);
    } catch (IOException | RuntimeException e) {
      if (palms != null) {
        palms.close();
      }
      if (hands != null) {
        hands.close();
      }
      throw new IOException(
          "The landmark networks in %s can't be used: %s %s (see: tools/palmturn models)"
              .formatted(
                  folder,
                  file.fileName(),
                  e instanceof IOException ? "is missing or can't be opened" : "is damaged"),
          e);
    }
  }

  private static byte[] bytes(Path folder, ModelFile file) throws IOException {
    return Files.readAllBytes(folder.resolve(file.fileName()));
  }

  private static Net net(byte[] bytes) {
    try (BytePointer memory = new BytePointer(bytes)) {
      return readNetFromTFLite(memory, bytes.length);
    }
  }

  /**
   * Returns the palms in a picture, best first.
   *
   * @param picture blue, green, red
   * @param least smallest score, 0 to 1
   */
  public List<PalmDetection> palms(Mat picture, double least) {
    int n = PalmBoxes.INPUT_PX;
    double side = Math.max(picture.cols(), picture.rows());
    int width = (int) Math.round(n * picture.cols() / side);
    int height = (int) Math.round(n * picture.rows() / side);
    int left = (n - width) / 2;
    int top = (n - height) / 2;
    try (Scalar black = new Scalar(0);
        Mat square = new Mat(n, n, CV_8UC3, black);
        Rect place = new Rect(left, top, width, height);
        Mat inside = new Mat(square, place);
        Size size = new Size(width, height)) {
      resize(picture, inside, size, 0, 0, INTER_AREA);
      float[][] out = run(palms, square, n, "Identity", "Identity_1");
      return PalmBoxes.palms(out[0], out[1], least, side, left * side / n, top * side / n);
    }
  }

  /**
   * Returns the hand in a square.
   *
   * @param picture blue, green, red
   * @param where a square about it
   */
  public HandMarks hand(Mat picture, Square where) {
    float[][] out;
    try (Mat cut = where.cut(picture, HAND_PX)) {
      out = run(hands, cut, HAND_PX, "Identity", "Identity_1");
    }
    double[] x = new double[HandMarks.SIZE];
    double[] y = new double[HandMarks.SIZE];
    for (int i = 0; i < HandMarks.SIZE; i++) {
      double u = (out[0][3 * i] + handBias[3 * i]) / HAND_PX;
      double v = (out[0][3 * i + 1] + handBias[3 * i + 1]) / HAND_PX;
      x[i] = where.toX(u, v);
      y[i] = where.toY(u, v);
    }
    return new HandMarks(x, y, biased(out[1][0], presenceBias));
  }

  /**
   * Returns the body in a square.
   *
   * @param picture blue, green, red
   * @param where a square about all of it, or about where all of it would be
   */
  public BodyMarks body(Mat picture, Square where) {
    float[][] out;
    try (Mat cut = where.cut(picture, BODY_PX)) {
      out = run(bodies, cut, BODY_PX, "Identity", "Identity_1");
    }
    double[] x = new double[BodyMarks.SIZE];
    double[] y = new double[BodyMarks.SIZE];
    double[] visibility = new double[BodyMarks.SIZE];
    for (int i = 0; i < BodyMarks.SIZE; i++) {
      int at = PER_BODY_POINT * i;
      x[i] = where.toX(out[0][at] / BODY_PX, out[0][at + 1] / BODY_PX);
      y[i] = where.toY(out[0][at] / BODY_PX, out[0][at + 1] / BODY_PX);
      visibility[i] = PalmBoxes.logistic(out[0][at + 3]);
    }
    return new BodyMarks(x, y, visibility, out[1][0]);
  }

  /** Returns a share of which the logistic curve was taken too early: before the constant. */
  private static double biased(double share, double bias) {
    double within = Math.max(1e-7, Math.min(1 - 1e-7, share));
    return PalmBoxes.logistic(Math.log(within / (1 - within)) + bias);
  }

  private static float[][] run(Net net, Mat picture, int n, String... names) {
    try (Size size = new Size(n, n);
        Scalar none = new Scalar(0);
        Mat input = blobFromImage(picture, 1 / 255.0, size, none, true, false, CV_32F);
        StringVector wanted = new StringVector(names);
        MatVector made = new MatVector()) {
      net.setInput(input);
      net.forward(made, wanted);
      float[][] out = new float[names.length][];
      for (int i = 0; i < names.length; i++) {
        try (Mat each = made.get(i)) {
          out[i] = floats(each);
        }
      }
      return out;
    }
  }

  private static float[] floats(Mat mat) {
    float[] out = new float[(int) mat.total()];
    mat.data()
        .capacity(4L * out.length)
        .asByteBuffer()
        .order(ByteOrder.nativeOrder())
        .asFloatBuffer()
        .get(out);
    return out;
  }

  @Override
  public void close() {
    palms.close();
    hands.close();
    bodies.close();
  }
}
