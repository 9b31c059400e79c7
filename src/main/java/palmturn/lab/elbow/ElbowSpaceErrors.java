package palmturn.lab.elbow;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.Estimator;
import palmturn.estimate.hands.NetworkUse;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.ElbowInSpace;
import palmturn.work.models.LandmarkModels;

/**
 * The moving elbow's displacement in the picture and in space, against its true displacement in
 * space. The elbow's place in the first picture and the scale there are given; the forearm's length
 * is not.
 */
public final class ElbowSpaceErrors {
  private ElbowSpaceErrors() {}

  /** Returns whether a displacement is right to 1 cm or to a tenth of the true one. */
  static boolean isRight(double cm, double trueCm) {
    return Math.abs(cm - trueCm) <= Math.max(1, 0.1 * trueCm);
  }

  /** Prints the comparison of some clips, each on a line. */
  public static void print(List<Path> files, PrintWriter out) throws Exception {
    out.println(
        "clip                            frames  largest: true  in picture  in space (low to high)"
            + "   right in picture  in space");
    int[] all = new int[3];
    for (Path file : files) {
      JsonNode root = new ObjectMapper().readTree(file.toFile());
      ElbowTruth truth = ElbowTruth.read(file);
      boolean own = root.has("elbowPx");
      JsonNode series = root.get(own ? "elbowInSpaceCm" : "elbow_displacement_cm");
      double hz = root.get(own ? "seriesHz" : "series_hz").asDouble();
      Estimate found =
          Estimator.estimate(
              ClipFile.open(truth.clip()),
              truth.givenPlaceRequest(),
              NetworkUse.usual(LandmarkModels.inDataFolder().folder()),
              Progress.NONE);
      ElbowPath path = found.elbow();
      ElbowInSpace space = found.elbowInSpace();
      if (path == null || space == null) {
        out.println(truth.clip().getFileName() + " has no displacement in space");
        continue;
      }
      int[] rightly = new int[2];
      double most = 0;
      int n = path.samples().size();
      for (ElbowPath.Sample sample : path.samples()) {
        int at = (int) Math.round(sample.timeS() * hz);
        double trueCm = series.get(Math.min(at, series.size() - 1)).asDouble();
        most = Math.max(most, trueCm);
        rightly[0] += isRight(sample.distancePx() * truth.cmPerPixel(), trueCm) ? 1 : 0;
        double cm = space.distancePx(sample) * truth.cmPerPixel();
        rightly[1] += isRight(cm, trueCm) ? 1 : 0;
      }
      all[0] += n;
      all[1] += rightly[0];
      all[2] += rightly[1];
      out.printf(
          Locale.ROOT,
          "%-30.30s  %6d  %13.2f  %10.2f  %8.2f (%.2f to %.2f)  %16.1f %%  %6.1f %%%n",
          truth.clip().getFileName(),
          n,
          most,
          path.maxCm(),
          space.maxCm(),
          space.lowCm(),
          space.highCm(),
          100.0 * rightly[0] / n,
          100.0 * rightly[1] / n);
    }
    out.printf(
        Locale.ROOT,
        "all: %d frames, right in the picture %.1f %%, in space %.1f %%%n",
        all[0],
        100.0 * all[1] / all[0],
        100.0 * all[2] / all[0]);
  }
}
