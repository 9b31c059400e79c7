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
 * The estimate of the elbow's position while its patch was lost: a random walk pinned to the last
 * and next tracked positions, conditioned on the body's landmarks by their covariance. While
 * tracked, the patch is so much more accurate that it is used alone.
 */
final class ElbowFusion {
  /** Standard deviation of the walk, radii of the disc in the root of a second: 2.45 cm. */
  private static final double WALK_RADII = 0.58;

  /** Standard deviation of the patch, radii of the disc: 0.15 cm. */
  private static final double PATCH_SD_RADII = 0.036;

  /** Time constant of the landmarks' error correlation, real seconds. */
  private static final double ERROR_DECAY_S = 0.6;

  /** Largest standard deviation of an estimate that is reported, radii of the disc: 3 cm. */
  private static final double MOST_SD_RADII = 0.72;

  /** An observed position of the elbow, by the body's landmarks or by the patch. */
  private record Observation(double timeS, double rightPx, double downPx, boolean byBody) {}

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
   * Returns the elbow's estimated positions in the frames of a path's gaps.
   *
   * @param frames of the clip
   * @param radiusPx of the tracked disc, full-size pixels: 4.2 cm
   * @param realPerMediaS real seconds in one of the path's
   * @param body positions by the landmarks, null where there are none
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
      unseen.addAll(fusion.estimateGap(gap, timesS));
    }
    return unseen;
  }

  private List<GapEstimate> estimateGap(Stretch gap, double[] timesS) {
    Observation before = null;
    Observation after = null;
    for (ElbowPath.Sample sample : path.samples()) {
      Observation seen = new Observation(sample.timeS(), sample.rightPx(), sample.downPx(), false);
      before = seen.timeS <= gap.startS() ? seen : before;
      after = after == null && seen.timeS >= gap.endS() ? seen : after;
    }
    Observation from = before != null ? before : after;
    if (from == null) {
      return List.of();
    }
    List<Observation> others = bodyObservations(gap);
    if (before != null && after != null) {
      others.add(after);
    }
    return predict(from, others, timesS);
  }

  private List<Observation> bodyObservations(Stretch gap) {
    List<Observation> known = new ArrayList<>();
    for (ElbowByBody.Sighting sighting :
        body == null ? List.<ElbowByBody.Sighting>of() : body.sightings()) {
      if (sighting.timeS() > gap.startS() && sighting.timeS() < gap.endS()) {
        known.add(new Observation(sighting.timeS(), sighting.rightPx(), sighting.downPx(), true));
      }
    }
    return known;
  }

  private List<GapEstimate> predict(Observation from, List<Observation> others, double[] timesS) {
    double[] right = others.stream().mapToDouble(each -> each.rightPx - from.rightPx).toArray();
    double[] down = others.stream().mapToDouble(each -> each.downPx - from.downPx).toArray();
    GaussianProcess walk =
        new GaussianProcess(
            others.stream()
                .map(
                    a ->
                        others.stream()
                            .mapToDouble(
                                b ->
                                    walkCovariance(from.timeS, a.timeS, b.timeS)
                                        + errorCovariance(a, b))
                            .toArray())
                .toArray(double[][]::new));
    List<GapEstimate> estimates = new ArrayList<>();
    for (double timeS : timesS) {
      double[] shared =
          others.stream()
              .mapToDouble(each -> walkCovariance(from.timeS, timeS, each.timeS))
              .toArray();
      double[] weights = walk.weights(shared);
      double variance =
          walkCovariance(from.timeS, timeS, timeS)
              - GaussianProcess.weightedSum(weights, shared)
              + square(PATCH_SD_RADII);
      if (variance <= square(MOST_SD_RADII)) {
        estimates.add(
            new GapEstimate(
                timeS,
                from.rightPx + GaussianProcess.weightedSum(weights, right),
                from.downPx + GaussianProcess.weightedSum(weights, down),
                Math.sqrt(variance)));
      }
    }
    return estimates;
  }

  /** Returns the covariance of the walk at two moments, both after or both before its start. */
  private double walkCovariance(double fromS, double aS, double bS) {
    double sharedS = Math.min(Math.abs(aS - fromS), Math.abs(bS - fromS));
    return square(WALK_RADII) * realPerMediaS * sharedS;
  }

  /** Returns the covariance of two observations' errors. */
  private double errorCovariance(Observation a, Observation b) {
    if (body == null || !a.byBody || !b.byBody) {
      return a == b ? square(PATCH_SD_RADII) : 0;
    }
    // The calibration subtracted the mean error over the compared moments from both.
    double held =
        body.comparedS().stream()
            .mapToDouble(heldS -> meanErrorCorrelation(heldS, body.comparedS()))
            .average()
            .orElse(0);
    return body.sdPx()
        * body.sdPx()
        * (meanErrorCorrelation(a.timeS, List.of(b.timeS))
            - meanErrorCorrelation(a.timeS, body.comparedS())
            - meanErrorCorrelation(b.timeS, body.comparedS())
            + held);
  }

  /** Returns the mean correlation of the landmarks' error at a moment with that at others. */
  private double meanErrorCorrelation(double timeS, List<Double> othersS) {
    return othersS.stream()
        .mapToDouble(otherS -> Math.exp(-realPerMediaS * Math.abs(timeS - otherS) / ERROR_DECAY_S))
        .average()
        .orElse(0);
  }

  private double square(double radii) {
    return radii * radiusPx * radii * radiusPx;
  }
}
