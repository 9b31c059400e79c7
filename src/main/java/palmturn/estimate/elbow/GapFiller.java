package palmturn.estimate.elbow;

import java.io.IOException;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.hands.HandPaths;
import palmturn.estimate.hands.LandmarkPass;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.Networks;
import palmturn.estimate.image.Footage;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Point;

/**
 * Estimates the elbow's position while its patch was lost. Body landmarks are computed only there,
 * and in a few frames in which the elbow is tracked, to calibrate them against the patch.
 *
 * @param clip the clip
 * @param footage of the stretch, in real seconds
 * @param realPerMediaS real seconds in one of the clip's
 */
public record GapFiller(ClipFile clip, Footage footage, double realPerMediaS) {
  /** Shortest gap worth a look, real seconds: the elbow moves little in a shorter one. */
  private static final double SHORT_S = 0.3;

  /** Interval between two looks in a gap, real seconds. */
  private static final double EVERY_S = 0.2;

  /** Most looks in all gaps together: each costs twelve runs of a network. */
  private static final int MOST_LOOKS = 10;

  /** Looks that are compared with the tracked path. */
  private static final int COMPARED_LOOKS = 10;

  /**
   * Returns a path with the elbow's estimated positions in its gaps.
   *
   * @param radiusPx of the tracked disc, full-size pixels
   * @param networks null where they, or the body's landmarks, are not used
   * @param hands the two hands, null where the networks did not see them
   * @throws ClipException if the clip can't be opened any more
   * @throws palmturn.clip.StoppedException if {@code watch} stops it
   */
  public ElbowPath fillGaps(
      ElbowPath path,
      double radiusPx,
      @Nullable NetworkUse networks,
      @Nullable HandPaths hands,
      Progress watch)
      throws ClipException {
    ElbowByBody body =
        networks == null || hands == null ? null : body(path, radiusPx, networks, hands, watch);
    return path.withGapEstimates(
        ElbowFusion.of(path, clip.frames(), radiusPx, realPerMediaS, body));
  }

  private @Nullable ElbowByBody body(
      ElbowPath path, double radiusPx, NetworkUse use, HandPaths hands, Progress watch)
      throws ClipException {
    int[] frames = frames(path);
    if (frames.length == 0) {
      return null;
    }
    try (Networks networks = Networks.open(use)) {
      ElbowByBody body =
          ElbowByBody.of(
              new LandmarkPass(clip, footage, realPerMediaS, watch).elbow(networks, hands, frames),
              path,
              realPerMediaS,
              radiusPx);
      Point elbow = path.start();
      ArmInView arm = ArmInView.of(footage, elbow, radiusPx);
      // An occluder is not the elbow, however visible the body's landmarks call it.
      return body == null || arm == null
          ? body
          : body.filter(
              sighting ->
                  arm.at(
                      sighting.timeS() * realPerMediaS,
                      new Point(elbow.x() + sighting.rightPx(), elbow.y() + sighting.downPx())));
    } catch (IOException e) {
      return null; // The search for the hands has warned that the networks can't be opened.
    }
  }

  /** Returns the frames whose body landmarks are computed, in order; none where no gap is long. */
  private int[] frames(ElbowPath path) {
    List<Stretch> gaps =
        path.gaps().stream()
            .filter(gap -> (gap.endS() - gap.startS()) * realPerMediaS >= SHORT_S)
            .toList();
    double lostS = gaps.stream().mapToDouble(gap -> gap.endS() - gap.startS()).sum();
    double everyS = Math.max(EVERY_S / realPerMediaS, lostS / MOST_LOOKS);
    TreeSet<Integer> frames = new TreeSet<>();
    for (Stretch gap : gaps) {
      for (double atS = gap.startS() + everyS / 2; atS < gap.endS(); atS += everyS) {
        frames.add(clip.frames().nearest(atS));
      }
    }
    int seen = path.samples().size();
    for (int i = 0; i < COMPARED_LOOKS && !gaps.isEmpty(); i++) {
      frames.add(
          clip.frames()
              .nearest(path.samples().get((2 * i + 1) * seen / (2 * COMPARED_LOOKS)).timeS()));
    }
    return frames.stream().mapToInt(Integer::intValue).toArray();
  }
}
