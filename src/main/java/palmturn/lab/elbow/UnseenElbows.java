package palmturn.lab.elbow;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.Estimator;
import palmturn.estimate.elbow.ElbowTracker;
import palmturn.estimate.elbow.LostElbow;
import palmturn.estimate.elbow.ScaleOf;
import palmturn.estimate.frames.Footage;
import palmturn.estimate.hands.HandPaths;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.Networks;
import palmturn.estimate.hands.ShapePass;
import palmturn.estimate.motion.FlowPass;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Burst;
import palmturn.trial.Hand;
import palmturn.trial.Point;
import palmturn.work.LandmarkModels;

/**
 * Prints how far off a lost elbow is taken to be, with the landmark networks and without, for drawn
 * clips in which something covers the elbow, a shadow falls on it, or it stays in view and its
 * patch's path is taken away: {@code UnseenElbows [--covered] SECONDS TRUTH.json …}. The elbow's
 * place in the first picture and the scale there are given.
 */
public final class UnseenElbows {
  /** Within so many standard deviations lie nineteen of twenty of two normal errors together. */
  private static final double NINETEEN_OF_TWENTY = 2.45;

  private UnseenElbows() {}

  /** What was told of some moments: how far off, and its standard deviation, cm. */
  private record Told(List<Double> offCm, List<Double> sdCm) {
    Told() {
      this(new ArrayList<>(), new ArrayList<>());
    }

    void add(ElbowTruth truth, ElbowPath.Unseen unseen) {
      offCm.add(errorCm(truth, unseen));
      sdCm.add(unseen.sdPx() * truth.cmPerPixel());
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
  public static double errorCm(ElbowTruth truth, ElbowPath.Unseen unseen) {
    Point way = truth.wayCm(unseen.timeS());
    return Math.hypot(
        unseen.rightPx() * truth.cmPerPixel() - way.x(),
        -unseen.downPx() * truth.cmPerPixel() - way.y());
  }

  /** Estimates a clip with the elbow and the scale given; null where the elbow is not followed. */
  static @Nullable ElbowPath path(ElbowTruth truth, @Nullable NetworkUse networks)
      throws Exception {
    return Estimator.estimate(ClipFile.open(truth.clip()), truth.given(), networks, Progress.NONE)
        .elbow();
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
  public static ElbowPath hidden(
      ElbowTruth truth, double fromS, double toS, @Nullable NetworkUse use) throws Exception {
    ClipFile clip = ClipFile.open(truth.clip());
    ElbowPath path = ElbowErrors.follow(truth, 0, 0).path();
    if (path == null) {
      throw new IllegalArgumentException(truth.clip() + ": the elbow is not followed");
    }
    double radiusPx =
        ElbowTracker.discFullPx(
            new ScaleOf("given", truth.cmPerPixel(), null, null),
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
                    new ShapePass(clip, footage, 1, Progress.NONE)
                        .follow(networks, ends, false, truth.hand() == Hand.RIGHT))
                .paths();
      }
    }
    return new LostElbow(clip, footage, 1)
        .taken(without(path, fromS, toS), radiusPx, use, hands, Progress.NONE);
  }

  public static void main(String[] args) throws Exception {
    boolean covered = args[0].equals("--covered");
    int first = covered ? 1 : 0;
    double lostS = Double.parseDouble(args[first]);
    NetworkUse use = NetworkUse.usual(LandmarkModels.inDataFolder().folder());
    List<ElbowTruth> truths = new ArrayList<>();
    for (int i = first + 1; i < args.length; i++) {
      truths.add(ElbowTruth.read(Path.of(args[i])));
    }
    if (covered) {
      covered(lostS, truths, use);
    } else {
      inView(lostS, truths, use);
    }
  }

  private static void inView(double lostS, List<ElbowTruth> truths, NetworkUse use)
      throws Exception {
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
  }

  private static void covered(double lostS, List<ElbowTruth> truths, NetworkUse use)
      throws Exception {
    Path folder = Files.createTempDirectory("covered");
    for (CoveredElbow.Cover cover :
        new CoveredElbow.Cover[] {
          CoveredElbow.Cover.GREY, CoveredElbow.Cover.SHADOW, CoveredElbow.Cover.SKIN
        }) {
      row(
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

  /** What is told of a clip in one way. */
  private interface Telling {
    @Nullable ElbowPath of(ElbowTruth truth, @Nullable NetworkUse networks) throws Exception;
  }

  private static void row(String how, List<ElbowTruth> truths, Telling telling, NetworkUse use)
      throws Exception {
    Told with = new Told();
    Told also = new Told();
    Told without = new Told();
    for (ElbowTruth truth : truths) {
      ElbowPath byBoth = telling.of(truth, use);
      ElbowPath byPatch = telling.of(truth, null);
      Told here = told(truth, byBoth, null);
      Told alsoHere = told(truth, byBoth, byPatch);
      Told withoutHere = told(truth, byPatch, null);
      print(how, truth.clip().getFileName().toString(), here, alsoHere, withoutHere);
      with.addAll(here);
      also.addAll(alsoHere);
      without.addAll(withoutHere);
    }
    print(how, "all", with, also, without);
  }

  private static void print(String how, String clip, Told with, Told also, Told without) {
    System.out.printf("%s, %s%n", how, clip);
    System.out.printf("  with                        %s%n", with);
    System.out.printf("  with, where told without    %s%n", also);
    System.out.printf("  without                     %s%n", without);
  }

  /** Returns what a path tells of those moments of which another tells something too. */
  private static Told told(ElbowTruth truth, @Nullable ElbowPath path, @Nullable ElbowPath other) {
    Told told = new Told();
    if (path != null) {
      Set<Double> timesS =
          (other == null ? path : other)
              .unseen().stream().map(ElbowPath.Unseen::timeS).collect(Collectors.toSet());
      path.unseen().stream()
          .filter(each -> timesS.contains(each.timeS()))
          .forEach(each -> told.add(truth, each));
    }
    return told;
  }
}
