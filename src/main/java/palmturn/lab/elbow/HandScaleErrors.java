package palmturn.lab.elbow;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.Estimator;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.Request;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Hand;
import palmturn.trial.Point;
import palmturn.work.models.LandmarkModels;

/**
 * The scale that the hand's length gives, against the true one at the elbow, whose place in the
 * first picture is given.
 */
public final class HandScaleErrors {
  private HandScaleErrors() {}

  /**
   * Prints the error of some clips, each on a line.
   *
   * @param handCm length of the hand in all of them
   */
  public static void print(List<Path> files, double handCm, PrintWriter out) throws Exception {
    List<Double> offs = new ArrayList<>();
    out.println("clip                       scale                        cm/px    true    off");
    for (Path file : files) {
      JsonNode truth = new ObjectMapper().readTree(file.toFile());
      boolean own = truth.has("elbowPx");
      JsonNode elbow = own ? truth.get("elbowPx") : truth.get("elbow_px_per_frame").get(0);
      double cmPerPixel =
          (own ? truth.get("cmPerPixel") : truth.get("cm_per_px_at_elbow")).asDouble();
      JsonNode moving = own ? truth.get("parameters").get("hand") : truth.get("moving_hand");
      Hand hand = moving.asText().equals("left") ? Hand.LEFT : Hand.RIGHT;
      Path clip = file.resolveSibling(truth.get("file").asText());
      Request asked = Request.of(hand, ElbowErrors.LIMIT_CM);
      Point place = new Point(elbow.get(0).asDouble(), elbow.get(1).asDouble());
      Request request =
          new Request(
              hand,
              null,
              null,
              null,
              1,
              asked.use(),
              new Hints(null, place, null, null, null, handCm, null),
              ElbowErrors.LIMIT_CM,
              null);
      ElbowPath path =
          Estimator.estimate(
                  ClipFile.open(clip),
                  request,
                  NetworkUse.usual(LandmarkModels.inDataFolder().folder()),
                  Progress.NONE)
              .elbow();
      Double found = path == null ? null : path.cmPerPixel();
      if (path == null || found == null) {
        out.println(clip.getFileName() + " has no scale");
        continue;
      }
      double off = 100 * (found / cmPerPixel - 1);
      offs.add(off);
      out.printf(
          Locale.ROOT,
          "%-26s %-28s %.4f  %.4f  %+5.1f %%%n",
          clip.getFileName(),
          path.pictureScale().source(),
          found,
          cmPerPixel,
          off);
    }
    double[] all = offs.stream().mapToDouble(Double::doubleValue).toArray();
    out.printf(
        Locale.ROOT,
        "%d clips: median %+.1f %%, root mean square %.1f %%%n",
        all.length,
        Stats.median(all),
        Math.sqrt(offs.stream().mapToDouble(off -> off * off).average().orElseThrow()));
  }
}
