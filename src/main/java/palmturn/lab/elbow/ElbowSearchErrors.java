package palmturn.lab.elbow;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.Estimator;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.request.Request;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Point;
import palmturn.work.models.LandmarkModels;

/**
 * Distances of the moving elbow's path from the truth where nobody points at the elbow and the
 * landmark networks are used.
 */
public final class ElbowSearchErrors {
  private ElbowSearchErrors() {}

  /** Returns a clip's path as a whole estimate finds it, null where it does not. */
  public static @Nullable ElbowPath find(ElbowTruth truth, Path networks) throws Exception {
    return Estimator.estimate(
            ClipFile.open(truth.clip()),
            Request.of(truth.hand(), ElbowErrors.LIMIT_CM),
            NetworkUse.usual(networks),
            Progress.NONE)
        .elbow();
  }

  /** Prints the errors of some clips, each on a line. */
  public static void print(List<Path> files, PrintWriter out) throws Exception {
    out.println(
        "clip                                      off cm  p95 cm  within 0.3  within 1  peak / true");
    List<Double> all = new ArrayList<>();
    for (Path file : files) {
      ElbowTruth truth = ElbowTruth.read(file);
      ElbowPath path = find(truth, LandmarkModels.inDataFolder().folder());
      if (path == null) {
        out.println(truth.clip().getFileName() + " not found");
        continue;
      }
      double[] errors = ElbowErrors.errorsCm(path, truth);
      double farthestTrue = 0;
      double farthest = 0;
      for (int i = 0; i < errors.length; i++) {
        all.add(errors[i]);
        ElbowPath.Sample sample = path.samples().get(i);
        Point displacement = truth.displacementCm(sample.timeS());
        farthestTrue = Math.max(farthestTrue, Math.hypot(displacement.x(), displacement.y()));
        farthest = Math.max(farthest, sample.distancePx() * truth.cmPerPixel());
      }
      out.printf(
          Locale.ROOT,
          "%-40.40s  %6.1f  %6.2f  %8.1f %%  %6.1f %%  %5.2f / %5.2f%n",
          truth.clip().getFileName(),
          truth.cmPerPixel()
              * Math.hypot(
                  path.start().x() - truth.elbow().x(), path.start().y() - truth.elbow().y()),
          Stats.percentile(errors, 95),
          ElbowErrors.percentWithin(errors, ElbowErrors.CLOSE_CM),
          ElbowErrors.percentWithin(errors, 1),
          farthest,
          farthestTrue);
    }
    out.println(ElbowErrors.summary(all));
  }
}
