package palmturn.estimate;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.estimate.shape.HandPaths;
import palmturn.estimate.shape.NetworkUse;
import palmturn.estimate.shape.Networks;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Burst;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Hand;
import palmturn.work.LandmarkModels;

/**
 * Prints how far off a lost elbow is taken to be, with the landmark networks and without, for drawn
 * clips in which something covers the elbow, a shadow falls on it, or it stays in view and its
 * patch's path is taken away: {@code UnseenElbows SECONDS TRUTH.json …}. The elbow's place in the
 * first picture and the scale there are given.
 */
final class UnseenElbows {
  /** Within so many standard deviations lie nineteen of twenty of two normal errors together. */
  private static final double NINETEEN_OF_TWENTY = 2.45;

  private UnseenElbows() {}

  /** What was told of some moments: how far off, and its standard deviation, cm. */
  private record Told(List<Double> offCm, List<Double> sdCm) {
    Told() {
      this(new ArrayList<>(), new ArrayList<>());
    }

    void add(ElbowTruth truth, ElbowPath path) {
      for (ElbowPath.Unseen unseen : path.unseen()) {
        offCm.add(errorCm(truth, unseen));
        sdCm.add(unseen.sdPx() * truth.cmPerPixel());
      }
    }

    void addAll(Told other) {
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
        within += off[i] <= NINETEEN_OF_TWENTY * sd[i] ? 1 : 0;
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

  /** Returns how far off an elbow is taken to be, cm. */
  static double errorCm(ElbowTruth truth, ElbowPath.Unseen unseen) {
    Point way = truth.wayCm(unseen.timeS());
    return Math.hypot(
        unseen.rightPx() * truth.cmPerPixel() - way.x(),
        -unseen.downPx() * truth.cmPerPixel() - way.y());
  }

  /** Estimates a clip with the elbow and the scale given; null where the elbow is not followed. */
  static @Nullable ElbowPath path(ElbowTruth truth, @Nullable NetworkUse networks)
      throws Exception {
    Request request =
        new Request(
            truth.hand(),
            null,
            null,
            null,
            1,
            EnumSet.allOf(Source.class),
            new Hints(
                null,
                truth.elbow(),
                null,
                new Scale(0, 0, 100, 0, 100 * truth.cmPerPixel()),
                null,
                null,
                null),
            ElbowErrors.LIMIT_CM,
            null);
    return Estimator.estimate(ClipFile.open(truth.clip()), request, networks, Watch.NONE).elbow();
  }

  /** Returns a path without its frames of a stretch. */
  static ElbowPath without(ElbowPath path, double fromS, double toS) {
    List<Integer> kept =
        IntStream.range(0, path.timesS().size())
            .filter(i -> path.timesS().get(i) <= fromS || path.timesS().get(i) >= toS)
            .boxed()
            .toList();
    double lastS = path.timesS().get(path.timesS().size() - 1);
    return new ElbowPath(
        path.maxCm(),
        path.maxForearms(),
        path.scale(),
        path.cmPerPixel(),
        path.forearmPx(),
        path.startXPx(),
        path.startYPx(),
        kept.stream().map(path.timesS()::get).toList(),
        kept.stream().map(path.rightPx()::get).toList(),
        kept.stream().map(path.downPx()::get).toList(),
        kept.stream().map(path.distancePx()::get).toList(),
        List.of(new Burst(fromS, Math.min(lastS, toS))),
        List.of());
  }

  /**
   * Returns the patch's path without a stretch, and what is then told of the stretch.
   *
   * @param use null for without the networks
   */
  static ElbowPath hidden(ElbowTruth truth, double fromS, double toS, @Nullable NetworkUse use)
      throws Exception {
    ClipFile clip = ClipFile.open(truth.clip());
    ElbowPath path = without(ElbowErrors.follow(truth, 0, 0).path(), fromS, toS);
    double radiusPx =
        ElbowTracker.discFullPx(
            new ScaleOf("given", truth.cmPerPixel(), null, null),
            clip.facts().width(),
            clip.facts().height());
    int end = clip.frames().size();
    double longSidePx = Math.max(clip.facts().width(), clip.facts().height());
    Footage footage = FlowPass.of(clip, 0, end, longSidePx, Watch.NONE);
    HandPaths hands = null;
    if (use != null) {
      double[] ends = {truth.firstSlapS(), clip.frames().timeS(end - 1)};
      try (Networks networks = Networks.open(use)) {
        hands =
            new ShapePass(clip, footage, 1, Watch.NONE)
                .follow(networks, ends, false, truth.hand() == Hand.RIGHT)
                .paths();
      }
    }
    return new LostElbow(clip, footage, 1).taken(path, radiusPx, use, hands, Watch.NONE);
  }

  public static void main(String[] args) throws Exception {
    double lostS = Double.parseDouble(args[0]);
    NetworkUse use = NetworkUse.usual(LandmarkModels.inDataFolder().folder());
    List<ElbowTruth> truths = new ArrayList<>();
    for (int i = 1; i < args.length; i++) {
      truths.add(ElbowTruth.read(Path.of(args[i])));
    }
    row(
        "in view",
        truths,
        (truth, networks) -> {
          double fromS = Math.max(truth.firstSlapS(), CoveredElbow.farthestS(truth) - lostS / 2);
          return hidden(truth, fromS, fromS + lostS, networks);
        },
        use);
    row(
        "in view to the end",
        truths,
        (truth, networks) ->
            hidden(
                truth,
                Math.max(truth.firstSlapS() + 1, CoveredElbow.farthestS(truth) - lostS / 2),
                Double.POSITIVE_INFINITY,
                networks),
        use);
    Path folder = Files.createTempDirectory("covered");
    for (CoveredElbow.Cover cover :
        new CoveredElbow.Cover[] {
          CoveredElbow.Cover.GREY, CoveredElbow.Cover.SHADOW, CoveredElbow.Cover.SKIN
        }) {
      row(
          cover.toString(),
          truths,
          (truth, networks) -> {
            ElbowTruth covered = CoveredElbow.write(truth, cover, lostS, folder).truth();
            ElbowPath path = path(covered, networks);
            Files.delete(covered.clip());
            return path;
          },
          use);
    }
    Files.delete(folder);
  }

  /** What is told of a clip in one way. */
  private interface Telling {
    @Nullable ElbowPath of(ElbowTruth truth, @Nullable NetworkUse networks) throws Exception;
  }

  private static void row(String how, List<ElbowTruth> truths, Telling telling, NetworkUse use)
      throws Exception {
    Told with = new Told();
    Told without = new Told();
    for (ElbowTruth truth : truths) {
      Told with1 = told(truth, telling.of(truth, use));
      Told without1 = told(truth, telling.of(truth, null));
      System.out.printf(
          "%-18s %-30.30s with: %s; without: %s%n",
          how, truth.clip().getFileName(), with1, without1);
      with.addAll(with1);
      without.addAll(without1);
    }
    System.out.printf("%-18s all: with: %s; without: %s%n", how, with, without);
  }

  private static Told told(ElbowTruth truth, @Nullable ElbowPath path) {
    Told told = new Told();
    if (path != null) {
      told.add(truth, path);
    }
    return told;
  }
}
