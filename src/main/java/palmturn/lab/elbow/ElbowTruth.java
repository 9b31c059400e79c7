package palmturn.lab.elbow;

import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2GRAY;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Picture;
import palmturn.estimate.image.BackgroundPoints;
import palmturn.estimate.image.FrameFeed;
import palmturn.estimate.image.Mats;
import palmturn.estimate.image.Similarity;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.Request;
import palmturn.numbers.Stats;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Hand;
import palmturn.trial.KnownLength;
import palmturn.trial.Point;

/**
 * The true path of the elbow in a drawn clip.
 *
 * @param clip the clip's file
 * @param hand the moving one
 * @param elbow its place in the first frame, pixels
 * @param cmPerPixel at the elbow
 * @param firstSlapS the first contact
 * @param hz samples a second of the series
 * @param rightCm displacement of the elbow to the right, in the picture plane
 * @param upCm the same, up the picture
 */
public record ElbowTruth(
    Path clip,
    Hand hand,
    Point elbow,
    double cmPerPixel,
    double firstSlapS,
    double hz,
    double[] rightCm,
    double[] upCm) {
  /** The camera's shake is measured on pictures whose long side is this. */
  private static final int STEADIED_PX = 640;

  /** Points that tell the shake lie at least so far from the elbow, where no arm passes. */
  private static final double AWAY_FROM_ARM_PX = 75;

  /** Reads the truth that lies beside a clip; knows Palmturn's own form and one with other keys. */
  public static ElbowTruth read(Path json) throws IOException {
    JsonNode root = new ObjectMapper().readTree(json.toFile());
    Path clip = json.resolveSibling(root.get("file").asText());
    if (root.has("elbowPx")) {
      return new ElbowTruth(
          clip,
          hand(root.get("parameters").get("hand")),
          point(root.get("elbowPx")),
          root.get("cmPerPixel").asDouble(),
          root.get("contacts").get(0).get("timeS").asDouble(),
          root.get("seriesHz").asDouble(),
          numbers(root.get("elbowRightCm"), 1),
          numbers(root.get("elbowUpCm"), 1));
    }
    return readSteadied(root, clip);
  }

  /**
   * The other form gives the elbow's pixel in every frame, the camera's shake included, which is
   * taken out by the points of the room.
   */
  private static ElbowTruth readSteadied(JsonNode root, Path file) throws IOException {
    JsonNode pixels = root.get("elbow_px_per_frame");
    double cmPerPixel = root.get("cm_per_px_at_elbow_per_frame").get(0).asDouble();
    Point first = point(pixels.get(0));
    int n = pixels.size();
    double[] right = new double[n];
    double[] up = new double[n];
    try {
      ClipFile clip = ClipFile.open(file);
      double shrink =
          Math.max(1, Math.max(clip.facts().width(), clip.facts().height()) / (double) STEADIED_PX);
      try (FrameFeed frames = new FrameFeed(clip, 0, n, STEADIED_PX);
          Mat firstGray = gray(frames.next());
          BackgroundPoints still =
              BackgroundPoints.choose(
                  firstGray,
                  new Point(first.x() / shrink, first.y() / shrink),
                  AWAY_FROM_ARM_PX,
                  null)) {
        // The first frame is where the elbow's place is counted from: its displacement is 0.
        for (int i = 1; i < n; i++) {
          try (Mat gray = gray(frames.next())) {
            Similarity shake = still.cameraMotion(gray);
            if (shake == null) {
              throw new IOException(file + ": the camera's motion is unknown in frame " + i);
            }
            Point seen = point(pixels.get(i));
            Point steady = shake.inverse().apply(new Point(seen.x() / shrink, seen.y() / shrink));
            right[i] = (steady.x() * shrink - first.x()) * cmPerPixel;
            up[i] = -(steady.y() * shrink - first.y()) * cmPerPixel;
          }
        }
      }
    } catch (ClipException e) {
      throw new IOException(e);
    }
    double firstSlapS = root.get("contacts").get(0).get("t_s").asDouble();
    double fps = root.get("fps").asDouble();
    subtractRestPlace(right, firstSlapS, fps);
    subtractRestPlace(up, firstSlapS, fps);
    return new ElbowTruth(
        file, hand(root.get("moving_hand")), first, cmPerPixel, firstSlapS, fps, right, up);
  }

  private static Mat gray(@Nullable Picture picture) throws IOException {
    if (picture == null) {
      throw new IOException("the clip has fewer frames than its truth");
    }
    Mat gray = new Mat();
    try (Mat colour = Mats.bgra(picture)) {
      cvtColor(colour, gray, COLOR_BGRA2GRAY);
    }
    return gray;
  }

  private static Hand hand(JsonNode node) {
    return node.asText().equals("left") ? Hand.LEFT : Hand.RIGHT;
  }

  private static void subtractRestPlace(double[] displacement, double firstSlapS, double fps) {
    Double place =
        Stats.median(
            Arrays.copyOfRange(
                displacement, (int) ((firstSlapS - 0.3) * fps), (int) (firstSlapS * fps)));
    if (place == null) {
      throw new IllegalArgumentException("no frame before the first slap");
    }
    for (int i = 0; i < displacement.length; i++) {
      displacement[i] -= place;
    }
  }

  /**
   * Returns a request that is given the elbow's place in the first picture, and the scale there.
   */
  Request givenPlaceRequest() {
    return new Request(
        hand,
        null,
        null,
        null,
        1,
        EnumSet.allOf(Source.class),
        new Hints(
            null,
            elbow,
            null,
            new KnownLength(new Point(0, 0), new Point(100, 0), 100 * cmPerPixel),
            null,
            null,
            null),
        ElbowErrors.LIMIT_CM,
        null);
  }

  /** Returns the true displacement at a moment, right and up, cm. */
  Point displacementCm(double timeS) {
    double at = Math.max(0, Math.min(rightCm.length - 1.0, timeS * hz));
    int i = Math.min(rightCm.length - 2, (int) at);
    double share = at - i;
    return new Point(
        rightCm[i] + share * (rightCm[i + 1] - rightCm[i]),
        upCm[i] + share * (upCm[i + 1] - upCm[i]));
  }

  private static Point point(JsonNode pair) {
    return new Point(pair.get(0).asDouble(), pair.get(1).asDouble());
  }

  private static double[] numbers(JsonNode list, double factor) {
    double[] numbers = new double[list.size()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = factor * list.get(i).asDouble();
    }
    return numbers;
  }
}
