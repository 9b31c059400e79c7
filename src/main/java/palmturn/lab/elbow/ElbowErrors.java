package palmturn.lab.elbow;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.elbow.ElbowDrift;
import palmturn.estimate.elbow.ElbowFinder;
import palmturn.estimate.elbow.ElbowScale;
import palmturn.estimate.elbow.ElbowTracker;
import palmturn.estimate.image.Footage;
import palmturn.estimate.motion.Blob;
import palmturn.estimate.motion.FlowPass;
import palmturn.estimate.motion.LivelyParts;
import palmturn.estimate.motion.MovingRegions;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.Point;

/** Distances of the elbow's path from the truth, with the elbow's place given or searched for. */
public final class ElbowErrors {
  /** The displacement, cm, over which a path counts as out in these runs. */
  static final double LIMIT_CM = 3;

  /** The error, cm, that the path is to keep to where place and scale are given. */
  public static final double CLOSE_CM = 0.3;

  /** A smaller blob is no arm: cells of the motion grid. */
  private static final int MIN_CELLS = 300;

  private ElbowErrors() {}

  /** Distances of a path from the truth, cm, one for each frame that saw the elbow. */
  public static double[] errorsCm(ElbowPath path, ElbowTruth truth) {
    double[] errors = new double[path.samples().size()];
    for (int i = 0; i < errors.length; i++) {
      ElbowPath.Sample sample = path.samples().get(i);
      Point displacement = truth.displacementCm(sample.timeS());
      errors[i] =
          Math.hypot(
              sample.rightPx() * truth.cmPerPixel() - displacement.x(),
              -sample.downPx() * truth.cmPerPixel() - displacement.y());
    }
    return errors;
  }

  /** Follows the elbow from a place that is wrong by an amount, with the true scale. */
  public static ElbowTracker.TrackedElbow follow(
      ElbowTruth truth, double offRightCm, double offDownCm) throws ClipException {
    ClipFile clip = ClipFile.open(truth.clip());
    Point at =
        new Point(
            truth.elbow().x() + offRightCm / truth.cmPerPixel(),
            truth.elbow().y() + offDownCm / truth.cmPerPixel());
    return ElbowTracker.follow(
        clip,
        new LivelyParts.FrameRange(0, clip.frames().size()),
        new ElbowTracker.Start(
            at, truth.firstSlapS(), null, new ElbowScale("given", truth.cmPerPixel(), null, null)),
        Progress.NONE);
  }

  /**
   * Prints the errors of some clips, each on a line.
   *
   * @param off error of the given place, cm, to four sides in turn; 0 for none
   * @param search whether the place is the one that the elbow finder finds
   */
  public static void print(List<Path> files, double off, boolean search, PrintWriter out)
      throws Exception {
    double[][] sides =
        off == 0 ? new double[][] {{0, 0}} : new double[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    List<Double> all = new ArrayList<>();
    out.println(
        "clip                       off, cm    p95 cm  max cm  within 0.3  peak / true cm  gaps  out"
            + "  ms/frame");
    for (Path file : files) {
      ElbowTruth truth = ElbowTruth.read(file);
      for (double[] side : sides) {
        double offRight = off * side[0];
        double offDown = off * side[1];
        if (search) {
          Point place = find(ClipFile.open(truth.clip()));
          if (place == null) {
            out.println(truth.clip().getFileName() + " not found");
            continue;
          }
          offRight = (place.x() - truth.elbow().x()) * truth.cmPerPixel();
          offDown = (place.y() - truth.elbow().y()) * truth.cmPerPixel();
        }
        long start = System.nanoTime();
        ElbowTracker.TrackedElbow followed = follow(truth, offRight, offDown);
        double ms = (System.nanoTime() - start) / 1e6;
        ElbowPath path = followed.path();
        if (path == null) {
          out.println(truth.clip().getFileName() + " " + followed.warnings());
          continue;
        }
        double[] errors = errorsCm(path, truth);
        Arrays.stream(errors).forEach(all::add);
        List<EstimatedSpan> spans = ElbowDrift.out(path, LIMIT_CM);
        double peak = 0;
        for (ElbowPath.Sample sample : path.samples()) {
          Point displacement = truth.displacementCm(sample.timeS());
          peak = Math.max(peak, Math.hypot(displacement.x(), displacement.y()));
        }
        out.printf(
            Locale.ROOT,
            "%-26s %+4.1f %+4.1f  %6.2f  %6.2f  %8.1f %%  %5.2f / %5.2f   %3d  %s  %5.2f%n",
            truth.clip().getFileName(),
            offRight,
            offDown,
            Stats.percentile(errors, 95),
            Stats.max(errors),
            percentWithin(errors, CLOSE_CM),
            path.maxCm(),
            peak,
            path.gaps().size(),
            spans.stream()
                .map(
                    s ->
                        String.format(
                            Locale.ROOT, "%.2f-%.2f (%.2f)", s.startS(), s.endS(), s.confidence()))
                .toList(),
            ms / path.samples().size());
      }
    }
    out.println(summary(all));
  }

  /** Returns a line on the errors of all clips together. */
  static String summary(List<Double> all) {
    double[] errors = all.stream().mapToDouble(Double::doubleValue).toArray();
    return String.format(
        Locale.ROOT,
        "all: %d frames, p95 %.2f cm, within 0.3 cm %.1f %%, within 1 cm %.1f %%",
        errors.length,
        Stats.percentile(errors, 95),
        percentWithin(errors, CLOSE_CM),
        percentWithin(errors, 1));
  }

  /** Finds the elbow in the liveliest large blob; the whole estimate chooses by more than size. */
  private static @Nullable Point find(ClipFile clip) throws ClipException {
    double longSidePx = Math.max(clip.facts().width(), clip.facts().height());
    Footage footage =
        Objects.requireNonNull(
            FlowPass.of(clip, 0, clip.frames().size(), longSidePx, Progress.NONE));
    float[] liveliness = MovingRegions.motionEnergy(footage);
    Blob hand =
        MovingRegions.blobs(liveliness, footage.width()).stream()
            .filter(blob -> blob.area() > MIN_CELLS)
            .findFirst()
            .orElseThrow();
    return ElbowFinder.find(
        liveliness, footage.width(), footage.pxPerCell(), footage.pictures().get(0), hand, null);
  }

  /** Returns which share of errors is no longer than so many centimetres, per cent. */
  public static double percentWithin(double[] errors, double cm) {
    return 100.0 * Arrays.stream(errors).filter(error -> error <= cm).count() / errors.length;
  }
}
