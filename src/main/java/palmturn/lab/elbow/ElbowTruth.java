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
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Picture;
import palmturn.estimate.frames.FrameFeed;
import palmturn.estimate.frames.Mats;
import palmturn.estimate.frames.StillPoints;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.Request;
import palmturn.estimate.request.Scale;
import palmturn.numbers.Stats;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Hand;
import palmturn.trial.Point;

/**
 * What is certain of the elbow in a drawn clip.
 *
 * @param clip the clip's file
 * @param hand the moving one
 * @param elbow its place in the first frame, pixels
 * @param cmPerPixel at the elbow
 * @param firstSlapS the first contact
 * @param hz samples a second of the series
 * @param rightCm way of the elbow to the right of the picture from its place, in the picture plane
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
    return steadied(root, clip);
  }

  /**
   * The other form gives the elbow's pixel in every frame, the camera's shake included, which is
   * taken out by the points of the room.
   */
  private static ElbowTruth steadied(JsonNode root, Path file) throws IOException {
    JsonNode pixels = root.get("elbow_px_per_frame");
    double cmPerPixel = root.get("cm_per_px_at_elbow_per_frame").get(0).asDouble();
    Point first = point(pixels.get(0));
    int n = pixels.size();
    double[] right = new double[n];
    double[] up = new double[n];
    try {
      ClipFile clip = ClipFile.open(file);
      double shrink = Math.max(1, Math.max(clip.facts().width(), clip.facts().height()) / 640.0);
      try (FrameFeed frames = new FrameFeed(clip, 0, n, 640)) {
        StillPoints still = null;
        for (int i = 0; i < n; i++) {
          Picture frame = frames.next();
          try (Mat colour = Mats.bgra(frame);
              Mat gray = new Mat()) {
            cvtColor(colour, gray, COLOR_BGRA2GRAY);
            if (still == null) {
              still =
                  StillPoints.choose(
                      gray, new Point(first.x() / shrink, first.y() / shrink), 75, null);
            }
            Point seen = point(pixels.get(i));
            Point steady =
                still.motion(gray).inverse().of(new Point(seen.x() / shrink, seen.y() / shrink));
            right[i] = (steady.x() * shrink - first.x()) * cmPerPixel;
            up[i] = -(steady.y() * shrink - first.y()) * cmPerPixel;
          }
        }
        still.close();
      }
    } catch (ClipException e) {
      throw new IOException(e);
    }
    double firstSlapS = root.get("contacts").get(0).get("t_s").asDouble();
    double fps = root.get("fps").asDouble();
    fromPlace(right, firstSlapS, fps);
    fromPlace(up, firstSlapS, fps);
    return new ElbowTruth(
        file, hand(root.get("moving_hand")), first, cmPerPixel, firstSlapS, fps, right, up);
  }

  private static Hand hand(JsonNode node) {
    return node.asText().equals("left") ? Hand.LEFT : Hand.RIGHT;
  }

  private static void fromPlace(double[] way, double firstSlapS, double fps) {
    double place =
        Stats.median(
            Arrays.copyOfRange(way, (int) ((firstSlapS - 0.3) * fps), (int) (firstSlapS * fps)));
    for (int i = 0; i < way.length; i++) {
      way[i] -= place;
    }
  }

  /**
   * Returns a request that is given the elbow's place in the first picture, and the scale there.
   */
  Request given() {
    return new Request(
        hand,
        null,
        null,
        null,
        1,
        EnumSet.allOf(Source.class),
        new Hints(null, elbow, null, new Scale(0, 0, 100, 0, 100 * cmPerPixel), null, null, null),
        ElbowErrors.LIMIT_CM,
        null);
  }

  /** Returns the true way at a moment, right and up, cm. */
  Point wayCm(double timeS) {
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
