package palmturn.lab.elbow;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.Estimator;
import palmturn.estimate.elbow.ElbowScale;
import palmturn.estimate.elbow.ElbowTracker;
import palmturn.estimate.elbow.GapFiller;
import palmturn.estimate.hands.HandPaths;
import palmturn.estimate.hands.LandmarkPass;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.Networks;
import palmturn.estimate.image.Footage;
import palmturn.estimate.motion.FlowPass;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Hand;
import palmturn.trial.Point;
import palmturn.work.models.LandmarkModels;

/**
 * Errors of a lost elbow's estimated place, with the landmark networks and without, for drawn clips
 * in which something covers the elbow, a shadow falls on it, or it stays in view and its tracked
 * path is removed. The elbow's place in the first picture and the scale there are given.
 */
public final class LostElbowErrors {
  /** 95 % of the lengths of two-dimensional normal errors: √(−2 ln 0.05) standard deviations. */
  private static final double RADIUS_95 = 2.45;

  private LostElbowErrors() {}

  /** Errors of estimated places, cm, and the standard deviation stated with each. */
  private record PlaceErrors(List<Double> offCm, List<Double> sdCm) {
    PlaceErrors() {
      this(new ArrayList<>(), new ArrayList<>());
    }

    void add(ElbowTruth truth, ElbowPath.GapEstimate unseen) {
      offCm.add(errorCm(truth, unseen));
      sdCm.add(unseen.sdPx() * truth.cmPerPixel());
    }

    void addAll(PlaceErrors other) {
      offCm.addAll(other.offCm);
      sdCm.addAll(other.sdCm);
    }

    @Override
    public String toString() {
      if (offCm.isEmpty()) {
        return "none";
      }
      double[] off = offCm.stream().mapToDouble(Double::doubleValue).toArray();
      double[] sd = sdCm.stream().mapToDouble(Double::doubleValue).toArray();
      double squares = 0;
      int within = 0;
      for (int i = 0; i < off.length; i++) {
        squares += off[i] * off[i];
        within += off[i] <= RADIUS_95 * sd[i] ? 1 : 0;
      }
      return String.format(
          Locale.ROOT,
          "%5d, rms %.2f, p90 %.2f cm, sd %.2f, within %5.1f %%",
          off.length,
          Math.sqrt(squares / off.length),
          Stats.percentile(off, 90),
          Stats.median(sd),
          100.0 * within / off.length);
    }
  }

  /** Returns the error of an estimated place, cm. */
  public static double errorCm(ElbowTruth truth, ElbowPath.GapEstimate unseen) {
    Point displacement = truth.displacementCm(unseen.timeS());
    return Math.hypot(
        unseen.rightPx() * truth.cmPerPixel() - displacement.x(),
        -unseen.downPx() * truth.cmPerPixel() - displacement.y());
  }

  /** Estimates a clip with the elbow and the scale given; null where the elbow is not followed. */
  static @Nullable ElbowPath path(ElbowTruth truth, @Nullable NetworkUse networks)
      throws Exception {
    return Estimator.estimate(
            ClipFile.open(truth.clip()), truth.givenPlaceRequest(), networks, Progress.NONE)
        .elbow();
  }

  /** Returns a path without its frames of a stretch. */
  static ElbowPath withoutStretch(ElbowPath path, double fromS, double toS) {
    List<ElbowPath.Sample> all = path.samples();
    List<ElbowPath.Sample> kept =
        all.stream().filter(each -> each.timeS() <= fromS || each.timeS() >= toS).toList();
    double lastS = all.get(all.size() - 1).timeS();
    return new ElbowPath(
        path.maxCm(),
        path.maxForearms(),
        path.pictureScale(),
        path.start(),
        kept,
        List.of(new Stretch(fromS, Math.min(lastS, toS))),
        List.of());
  }

  /**
   * Returns the tracked path without a stretch, and the places then estimated in it.
   *
   * @param use null for without the networks
   */
  public static ElbowPath pathWithGap(
      ElbowTruth truth, double fromS, double toS, @Nullable NetworkUse use) throws Exception {
    ClipFile clip = ClipFile.open(truth.clip());
    ElbowPath path = ElbowErrors.follow(truth, 0, 0).path();
    if (path == null) {
      throw new IllegalArgumentException(truth.clip() + ": the elbow is not followed");
    }
    double radiusPx =
        ElbowTracker.discFullPx(
            new ElbowScale("given", truth.cmPerPixel(), null, null),
            clip.facts().width(),
            clip.facts().height());
    int end = clip.frames().size();
    double longSidePx = Math.max(clip.facts().width(), clip.facts().height());
    Footage footage = Objects.requireNonNull(FlowPass.of(clip, 0, end, longSidePx, Progress.NONE));
    HandPaths hands = null;
    if (use != null) {
      double[] ends = {truth.firstSlapS(), clip.frames().timeS(end - 1)};
      try (Networks networks = Networks.open(use)) {
        hands =
            Objects.requireNonNull(
                    new LandmarkPass(clip, footage, 1, Progress.NONE)
                        .follow(networks, ends, false, truth.hand() == Hand.RIGHT))
                .paths();
      }
    }
    return new GapFiller(clip, footage, 1)
        .fillGaps(withoutStretch(path, fromS, toS), radiusPx, use, hands, Progress.NONE);
  }

  /**
   * Prints the errors of some clips, each on a line.
   *
   * @param lostS length of the lost stretch
   * @param covered whether the elbow is covered, instead of its path being removed
   */
  public static void print(List<Path> files, double lostS, boolean covered, PrintWriter out)
      throws Exception {
    NetworkUse use = NetworkUse.usual(LandmarkModels.inDataFolder().folder());
    List<ElbowTruth> truths = new ArrayList<>();
    for (Path file : files) {
      truths.add(ElbowTruth.read(file));
    }
    if (covered) {
      covered(lostS, truths, use, out);
    } else {
      inView(lostS, truths, use, out);
    }
  }

  private static void inView(double lostS, List<ElbowTruth> truths, NetworkUse use, PrintWriter out)
      throws Exception {
    printCase(
        out,
        "in view",
        truths,
        (truth, networks) -> {
          double fromS = Math.max(truth.firstSlapS(), CoveredElbow.farthestS(truth) - lostS / 2);
          return pathWithGap(truth, fromS, fromS + lostS, networks);
        },
        use);
    printCase(
        out,
        "in view to the end",
        truths,
        (truth, networks) ->
            pathWithGap(
                truth,
                Math.max(truth.firstSlapS() + 1, CoveredElbow.farthestS(truth) - lostS / 2),
                Double.POSITIVE_INFINITY,
                networks),
        use);
  }

  private static void covered(
      double lostS, List<ElbowTruth> truths, NetworkUse use, PrintWriter out) throws Exception {
    Path folder = Files.createTempDirectory("covered");
    for (CoveredElbow.Cover cover :
        new CoveredElbow.Cover[] {
          CoveredElbow.Cover.GREY, CoveredElbow.Cover.SHADOW, CoveredElbow.Cover.SKIN
        }) {
      printCase(
          out,
          cover.toString(),
          truths,
          (truth, networks) -> {
            ElbowTruth hidden = CoveredElbow.write(truth, cover, lostS, folder).truth();
            ElbowPath path = path(hidden, networks);
            Files.delete(hidden.clip());
            return path;
          },
          use);
    }
    Files.delete(folder);
  }

  /** An estimate of a clip's elbow path. */
  private interface PathEstimate {
    @Nullable ElbowPath of(ElbowTruth truth, @Nullable NetworkUse networks) throws Exception;
  }

  private static void printCase(
      PrintWriter out, String how, List<ElbowTruth> truths, PathEstimate estimate, NetworkUse use)
      throws Exception {
    PlaceErrors with = new PlaceErrors();
    PlaceErrors also = new PlaceErrors();
    PlaceErrors without = new PlaceErrors();
    for (ElbowTruth truth : truths) {
      ElbowPath byBoth = estimate.of(truth, use);
      ElbowPath byPatch = estimate.of(truth, null);
      PlaceErrors here = errors(truth, byBoth, null);
      PlaceErrors alsoHere = errors(truth, byBoth, byPatch);
      PlaceErrors withoutHere = errors(truth, byPatch, null);
      printErrors(out, how, truth.clip().getFileName().toString(), here, alsoHere, withoutHere);
      with.addAll(here);
      also.addAll(alsoHere);
      without.addAll(withoutHere);
    }
    printErrors(out, how, "all", with, also, without);
  }

  private static void printErrors(
      PrintWriter out,
      String how,
      String clip,
      PlaceErrors with,
      PlaceErrors also,
      PlaceErrors without) {
    out.printf("%s, %s%n", how, clip);
    out.printf("  with                        %s%n", with);
    out.printf("  with, where known without   %s%n", also);
    out.printf("  without                     %s%n", without);
  }

  /** Returns the errors of a path at those moments at which another has a place too. */
  private static PlaceErrors errors(
      ElbowTruth truth, @Nullable ElbowPath path, @Nullable ElbowPath other) {
    PlaceErrors errors = new PlaceErrors();
    if (path != null) {
      Set<Double> timesS =
          (other == null ? path : other)
              .gapEstimates().stream()
                  .map(ElbowPath.GapEstimate::timeS)
                  .collect(Collectors.toSet());
      path.gapEstimates().stream()
          .filter(each -> timesS.contains(each.timeS()))
          .forEach(each -> errors.add(truth, each));
    }
    return errors;
  }
}
