package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.FrameTable;
import palmturn.numbers.GaussianProcess;
import palmturn.trial.ElbowPath;
import palmturn.trial.ElbowPath.GapEstimate;
import palmturn.trial.Estimate.Stretch;

/**
 * Where the elbow is taken to have been while its patch was lost: a random walk from where it was
 * seen last to where it was seen again, on which the body's landmarks count by what they are known
 * to. While it is seen, the patch is known so much better that it stands alone.
 */
final class ElbowFusion {
  /** How far the walk spreads, radii of the disc in the root of a second: 2.45 cm. */
  private static final double WALK_RADII = 0.58;

  /** What the patch is known to, radii of the disc: 0.15 cm. */
  private static final double PATCH_RADII = 0.036;

  /** What the landmarks are off by fades by e in so many seconds of real time. */
  private static final double FADES_S = 0.6;

  /** Where less is known nothing is told, radii of the disc: 3 cm. */
  private static final double MOST_RADII = 0.72;

  /** A moment at which something tells where the elbow was, and whether that is the body. */
  private record Known(double timeS, double rightPx, double downPx, boolean byBody) {}

  private final ElbowPath path;
  private final double radiusPx;
  private final double realPerMediaS;
  private final @Nullable ElbowByBody body;

  private ElbowFusion(
      ElbowPath path, double radiusPx, double realPerMediaS, @Nullable ElbowByBody body) {
    this.path = path;
    this.radiusPx = radiusPx;
    this.realPerMediaS = realPerMediaS;
    this.body = body;
  }

  /**
   * Returns where the elbow is taken to have been in the frames of a path's gaps.
   *
   * @param frames of the clip
   * @param radiusPx of the disc that was followed, full-size pixels: 4.2 cm
   * @param realPerMediaS real seconds in one of the path's
   * @param body what the landmarks tell of it, null where there are none
   */
  static List<GapEstimate> of(
      ElbowPath path,
      FrameTable frames,
      double radiusPx,
      double realPerMediaS,
      @Nullable ElbowByBody body) {
    ElbowFusion fusion = new ElbowFusion(path, radiusPx, realPerMediaS, body);
    List<GapEstimate> unseen = new ArrayList<>();
    for (Stretch gap : path.gaps()) {
      double[] timesS =
          Arrays.stream(frames.timesS())
              .filter(timeS -> timeS >= gap.startS() && timeS <= gap.endS())
              .filter(timeS -> path.samples().stream().noneMatch(seen -> seen.timeS() == timeS))
              .toArray();
      unseen.addAll(fusion.across(gap, timesS));
    }
    return unseen;
  }

  private List<GapEstimate> across(Stretch gap, double[] timesS) {
    Known before = null;
    Known after = null;
    for (ElbowPath.Sample sample : path.samples()) {
      Known seen = new Known(sample.timeS(), sample.rightPx(), sample.downPx(), false);
      before = seen.timeS <= gap.startS() ? seen : before;
      after = after == null && seen.timeS >= gap.endS() ? seen : after;
    }
    Known from = before != null ? before : after;
    if (from == null) {
      return List.of();
    }
    List<Known> others = byBody(gap);
    if (before != null && after != null) {
      others.add(after);
    }
    return told(from, others, timesS);
  }

  private List<Known> byBody(Stretch gap) {
    List<Known> known = new ArrayList<>();
    for (ElbowByBody.Look told : body == null ? List.<ElbowByBody.Look>of() : body.looks()) {
      if (told.timeS() > gap.startS() && told.timeS() < gap.endS()) {
        known.add(new Known(told.timeS(), told.rightPx(), told.downPx(), true));
      }
    }
    return known;
  }

  private List<GapEstimate> told(Known from, List<Known> others, double[] timesS) {
    double[] right = others.stream().mapToDouble(each -> each.rightPx - from.rightPx).toArray();
    double[] down = others.stream().mapToDouble(each -> each.downPx - from.downPx).toArray();
    GaussianProcess walk =
        new GaussianProcess(
            others.stream()
                .map(
                    a ->
                        others.stream()
                            .mapToDouble(b -> walked(from.timeS, a.timeS, b.timeS) + off(a, b))
                            .toArray())
                .toArray(double[][]::new));
    List<GapEstimate> told = new ArrayList<>();
    for (double timeS : timesS) {
      double[] shared =
          others.stream().mapToDouble(each -> walked(from.timeS, timeS, each.timeS)).toArray();
      double[] weights = walk.weights(shared);
      double variance =
          walked(from.timeS, timeS, timeS)
              - GaussianProcess.weightedSum(weights, shared)
              + square(PATCH_RADII);
      if (variance <= square(MOST_RADII)) {
        told.add(
            new GapEstimate(
                timeS,
                from.rightPx + GaussianProcess.weightedSum(weights, right),
                from.downPx + GaussianProcess.weightedSum(weights, down),
                Math.sqrt(variance)));
      }
    }
    return told;
  }

  /** Returns the covariance of the walk at two moments, both after or both before its start. */
  private double walked(double fromS, double aS, double bS) {
    double sharedS = Math.min(Math.abs(aS - fromS), Math.abs(bS - fromS));
    return square(WALK_RADII) * realPerMediaS * sharedS;
  }

  /** Returns the covariance of what two moments are off by. */
  private double off(Known a, Known b) {
    if (body == null || !a.byBody || !b.byBody) {
      return a == b ? square(PATCH_RADII) : 0;
    }
    // Taken out of both is the mean over the moments at which they were held against the path.
    double held =
        body.comparedS().stream()
            .mapToDouble(heldS -> faded(heldS, body.comparedS()))
            .average()
            .orElse(0);
    return body.sdPx()
        * body.sdPx()
        * (faded(a.timeS, List.of(b.timeS))
            - faded(a.timeS, body.comparedS())
            - faded(b.timeS, body.comparedS())
            + held);
  }

  /** Returns which share of what is off at a moment is so at others, by their mean. */
  private double faded(double timeS, List<Double> othersS) {
    return othersS.stream()
        .mapToDouble(otherS -> Math.exp(-realPerMediaS * Math.abs(timeS - otherS) / FADES_S))
        .average()
        .orElse(0);
  }

  private double square(double radii) {
    return radii * radiusPx * radii * radiusPx;
  }
}
