package palmturn.estimate.hands;

import static org.bytedeco.opencv.global.opencv_core.CV_32F;
import static org.bytedeco.opencv.global.opencv_dnn.blobFromImage;
import static org.bytedeco.opencv.global.opencv_dnn.readNetFromTFLite;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_dnn.Net;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import palmturn.clip.ClipException;
import palmturn.clip.FrameReader;

/**
 * The networks as OpenCV runs them give the same numbers as TensorFlow Lite, on two photographed
 * hands and on frames of a hand that spells letters.
 */
class TensorFlowLiteTest {
  private static final String MENDED =
      "OpenCV no longer gives what it gave. If it now adds the constants of the last layers by"
          + " itself, Networks adds them twice: take HeadBias out. ";

  /** A picture and a square of it with a hand. */
  private record Look(Mat picture, Square where) {}

  private static final List<Look> LOOKS = new ArrayList<>();
  private static Path folder = Path.of("");

  @BeforeAll
  static void look() throws IOException, ClipException {
    folder = Installed.folder();
    try (Networks networks = Networks.open(NetworkUse.usual(folder));
        FrameReader reader = Shown.spelling().newReader()) {
      Mat photo = Shown.hands();
      for (PalmDetection palm : networks.palms(photo, 0.5)) {
        LOOKS.add(new Look(photo, Square.of(palm)));
      }
      for (int frame : new int[] {0, 60, 120}) {
        Mat picture = Shown.frame(reader, frame);
        LOOKS.add(new Look(picture, Square.of(networks.palms(picture, 0.5).get(0))));
      }
    }
    assertEquals(5, LOOKS.size());
  }

  @AfterAll
  static void close() {
    LOOKS.forEach(each -> each.picture().close());
    LOOKS.clear();
  }

  private static Path file(ModelFile file) {
    return folder.resolve(file.fileName());
  }

  /** The photo's two hands: both left ones with the back to the camera, one of them upside down. */
  @Test
  void bothHandsOfAPhotoAreFoundWithTheirSide() throws IOException {
    try (Networks networks = Networks.open(NetworkUse.usual(folder))) {
      HandMarks up = networks.hand(LOOKS.get(0).picture(), LOOKS.get(0).where());
      HandMarks down = networks.hand(LOOKS.get(1).picture(), LOOKS.get(1).where());
      assertTrue(up.palmX() < 360 && down.palmX() > 360, "one in each half");
      assertTrue(Math.sin(up.direction()) < -0.9 && Math.sin(down.direction()) > 0.9);
      for (HandMarks each : List.of(up, down)) {
        assertTrue(each.presence() > 0.99);
        assertTrue(each.face() < -0.5, "back " + each.face());
      }
      // Tips of middle finger and thumb, read from the photo by eye.
      assertNear(186, 12, up, 12);
      assertNear(330, 203, up, 4);
      assertNear(534, 368, down, 12);
      assertNear(389, 181, down, 4);
    }
  }

  private static void assertNear(double x, double y, HandMarks hand, int i) {
    double off = Math.hypot(hand.x()[i] - x, hand.y()[i] - y);
    assertTrue(off < 15, "landmark " + i + " is off by " + off);
  }

  @Test
  void landmarksAndPresenceAreTensorFlowLites(TestReporter reporter) throws IOException {
    try (Networks networks = Networks.open(NetworkUse.usual(folder));
        TensorFlowLite reference = new TensorFlowLite(file(ModelFile.HAND_LANDMARK_FULL))) {
      double worst = 0;
      double worstPresence = 0;
      for (Look look : LOOKS) {
        HandMarks ours = networks.hand(look.picture(), look.where());
        Map<String, float[]> theirs = run(reference, look, 224);
        float[] at = output(theirs, "Identity");
        double pxPerPx = look.where().side() / 224;
        for (int i = 0; i < HandMarks.SIZE; i++) {
          double u = at[3 * i] / 224;
          double v = at[3 * i + 1] / 224;
          double x = look.where().toX(u, v) - ours.x()[i];
          double y = look.where().toY(u, v) - ours.y()[i];
          worst = Math.max(worst, Math.hypot(x, y) / pxPerPx);
        }
        double presence = output(theirs, "Identity_1")[0];
        worstPresence = Math.max(worstPresence, Math.abs(presence - ours.presence()));
      }
      reporter.publishEntry(Map.of("px of 224", worst + "", "presence", worstPresence + ""));
      assertEquals(0, worst, 1e-2, MENDED + "Landmarks, px of 224");
      assertEquals(0, worstPresence, 1e-4, MENDED + "Presence");
    }
  }

  @Test
  void withoutTheConstantsOpenCvIsOffByThem() throws IOException {
    byte[] bytes = bytes(ModelFile.HAND_LANDMARK_FULL);
    float[] constants = Objects.requireNonNull(HeadBias.of(bytes).get("Identity"));
    double largest = 0;
    for (float each : constants) {
      largest = Math.max(largest, Math.abs(each));
    }
    assertTrue(largest > 1, "there is something to leave out: " + largest + " px");
    try (TensorFlowLite reference = new TensorFlowLite(file(ModelFile.HAND_LANDMARK_FULL));
        BytePointer memory = new BytePointer(bytes);
        Net raw = readNetFromTFLite(memory, bytes.length)) {
      for (Look look : LOOKS) {
        float[] theirs = output(run(reference, look, 224), "Identity");
        float[] ours = raw(raw, look, 224, "Identity");
        for (int i = 0; i < constants.length; i++) {
          assertEquals(constants[i], theirs[i] - ours[i], 1e-2, MENDED + "Landmark number " + i);
        }
      }
    }
  }

  @Test
  void palmBoxesAreTensorFlowLites(TestReporter reporter) throws IOException {
    try (Networks networks = Networks.open(NetworkUse.usual(folder));
        TensorFlowLite reference = new TensorFlowLite(file(ModelFile.PALM_DETECTION_FULL));
        BytePointer memory = new BytePointer(bytes(ModelFile.PALM_DETECTION_FULL));
        Net raw = readNetFromTFLite(memory, memory.capacity())) {
      double worst = 0;
      double worstScore = 0;
      for (Look look : LOOKS) {
        Map<String, float[]> theirs = run(reference, look, 192);
        worst = Math.max(worst, worst(output(theirs, "Identity"), raw(raw, look, 192, "Identity")));
        float[] scores = output(theirs, "Identity_1");
        worstScore = Math.max(worstScore, worst(scores, raw(raw, look, 192, "Identity_1")));
        try (Mat cut = look.where().cut(look.picture(), 192)) {
          // A square of the detector's own size is shown to it as it is.
          List<PalmDetection> ours = networks.palms(cut, 0.5);
          List<PalmDetection> wanted =
              PalmBoxes.palms(output(theirs, "Identity"), scores, 0.5, 192, 0, 0);
          assertEquals(1, ours.size());
          assertEquals(1, wanted.size());
          assertEquals(wanted.get(0).centreX(), ours.get(0).centreX(), 1e-2);
          assertEquals(wanted.get(0).y()[2], ours.get(0).y()[2], 1e-2);
          assertEquals(wanted.get(0).score(), ours.get(0).score(), 1e-4);
        }
      }
      reporter.publishEntry(Map.of("px of 192", worst + "", "raw score", worstScore + ""));
      assertEquals(0, worst, 1e-2, "boxes, px of 192");
      assertEquals(0, worstScore, 1e-3, "scores before the logistic curve");
    }
  }

  @Test
  void bodiesAreTensorFlowLites(TestReporter reporter) throws IOException {
    try (Networks networks = Networks.open(NetworkUse.usual(folder));
        TensorFlowLite reference = new TensorFlowLite(file(ModelFile.POSE_LANDMARK_FULL))) {
      double worst = 0;
      double worstShare = 0;
      for (Look look : LOOKS) {
        BodyMarks ours = networks.body(look.picture(), look.where());
        Map<String, float[]> theirs = run(reference, look, 256);
        float[] at = output(theirs, "Identity");
        double pxPerPx = look.where().side() / 256;
        for (int i = 0; i < BodyMarks.SIZE; i++) {
          double u = at[5 * i] / 256;
          double v = at[5 * i + 1] / 256;
          double x = look.where().toX(u, v) - ours.x()[i];
          double y = look.where().toY(u, v) - ours.y()[i];
          worst = Math.max(worst, Math.hypot(x, y) / pxPerPx);
          double visible = PalmBoxes.logistic(at[5 * i + 3]);
          worstShare = Math.max(worstShare, Math.abs(visible - ours.visibility()[i]));
        }
        double presence = output(theirs, "Identity_1")[0];
        worstShare = Math.max(worstShare, Math.abs(presence - ours.presence()));
      }
      reporter.publishEntry(Map.of("px of 256", worst + "", "shares", worstShare + ""));
      assertEquals(0, worst, 1e-2, "landmarks, px of 256");
      assertEquals(0, worstShare, 1e-4, "visibility and presence");
    }
  }

  private static byte[] bytes(ModelFile file) throws IOException {
    return Files.readAllBytes(file(file));
  }

  private static Map<String, float[]> run(TensorFlowLite reference, Look look, int n) {
    try (Mat cut = look.where().cut(look.picture(), n)) {
      return reference.run(cut);
    }
  }

  private static float[] output(Map<String, float[]> outputs, String name) {
    return Objects.requireNonNull(outputs.get(name), name);
  }

  private static double worst(float[] one, float[] other) {
    assertEquals(one.length, other.length);
    double worst = 0;
    for (int i = 0; i < one.length; i++) {
      worst = Math.max(worst, Math.abs(one[i] - other[i]));
    }
    return worst;
  }

  /** Returns what OpenCV gives with nothing added. */
  private static float[] raw(Net net, Look look, int n, String name) {
    try (Mat cut = look.where().cut(look.picture(), n);
        Size size = new Size(n, n);
        Scalar none = new Scalar(0);
        Mat input = blobFromImage(cut, 1 / 255.0, size, none, true, false, CV_32F)) {
      net.setInput(input);
      try (Mat out = net.forward(name)) {
        float[] values = new float[(int) out.total()];
        out.data()
            .capacity(4L * values.length)
            .asByteBuffer()
            .order(ByteOrder.nativeOrder())
            .asFloatBuffer()
            .get(values);
        return values;
      }
    }
  }
}
