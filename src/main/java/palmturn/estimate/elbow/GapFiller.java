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
 * Tells where an elbow was while its patch was lost. The body is looked at only then, and a few
 * times while the elbow is seen, to hold it against the patch.
 *
 * @param clip the clip
 * @param footage of the stretch, in real seconds
 * @param realPerMediaS real seconds in one of the clip's
 */
public record GapFiller(ClipFile clip, Footage footage, double realPerMediaS) {
  /** The elbow goes little way in a shorter gap, real seconds. */
  private static final double SHORT_S = 0.3;

  /** Distance of two looks in a gap, real seconds. */
  private static final double EVERY_S = 0.2;

  /** Looks in all gaps together: each costs twelve runs of a network. */
  private static final int MOST_LOOKS = 10;

  /** So many looks are held against the path. */
  private static final int HELD = 10;

  /**
   * Returns a path with where its elbow is taken to have been in its gaps.
   *
   * @param radiusPx of the disc that was followed, full-size pixels
   * @param networks null where they are not used, or where the body is not to be looked at
   * @param hands the two hands, null where the networks did not see them
   * @throws ClipException if the clip can't be opened any more
   * @throws StoppedException if {@code watch} stops it
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
      // What covers the elbow is not where it is, however surely the body's landmarks say so.
      return body == null || arm == null
          ? body
          : body.where(
              told ->
                  arm.at(
                      told.timeS() * realPerMediaS,
                      new Point(elbow.x() + told.rightPx(), elbow.y() + told.downPx())));
    } catch (IOException e) {
      return null; // That the networks can't be opened was said when the hands were looked for.
    }
  }

  /** Returns the frames in which the body is looked at, in order; none where no gap is long. */
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
    for (int i = 0; i < HELD && !gaps.isEmpty(); i++) {
      frames.add(
          clip.frames().nearest(path.samples().get((2 * i + 1) * seen / (2 * HELD)).timeS()));
    }
    return frames.stream().mapToInt(Integer::intValue).toArray();
  }
}
