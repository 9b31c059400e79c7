package palmturn.estimate.motion;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;

/**
 * One interpretation of the approach velocity: the direction towards the target, and the contacts
 * that follow from it.
 *
 * @param motion of the blob
 * @param approach the velocity that was used
 * @param sign 1 if its positive part goes towards the target, −1 if its negative does
 * @param crossings where approaches end
 * @param poses the hand's motion between them
 * @param lead logarithm of how much better this half of the cycle fits than the other
 */
public record Contacts(
    BlobMotion motion, Approach approach, int sign, Crossings crossings, Poses poses, double lead) {
  /** Fewest contacts that are distinguishable from other motion. */
  static final int FEWEST = 4;

  /** An interval is near the median within this share of it. */
  private static final double REGULAR = 0.35;

  /**
   * Weight of the rule that hands mostly come down on the target: weak, since some targets are
   * above.
   */
  private static final double GRAVITY = 0.4;

  /**
   * Decides which zero crossings are contacts and which are the tops of the path; null if either
   * has too few.
   */
  static @Nullable Contacts of(BlobMotion motion, Approach approach) {
    double frameS = motion.footage().medianFrameS();
    Crossings down = Crossings.of(approach, 1, frameS);
    Crossings up = Crossings.of(approach, -1, frameS);
    if (down.samples().length < FEWEST || up.samples().length < FEWEST) {
      return null;
    }
    Poses downPoses = Poses.at(motion, times(motion, down));
    Poses upPoses = Poses.at(motion, times(motion, up));
    double lead =
        Math.log(
                downPoses.alternation()
                    * downPoses.size()
                    / (upPoses.alternation() * upPoses.size()))
            + Math.log(
                (downPoses.lookChange() + Poses.LEAST_CHANGE)
                    / (upPoses.lookChange() + Poses.LEAST_CHANGE))
            + Math.log(downPoses.lookAlternation() / upPoses.lookAlternation())
            + GRAVITY * approach.downwards();
    return lead >= 0
        ? new Contacts(motion, approach, 1, down, downPoses, lead)
        : new Contacts(motion, approach, -1, up, upPoses, -lead);
  }

  private static double[] times(BlobMotion motion, Crossings crossings) {
    return Arrays.stream(crossings.samples()).map(motion::timeS).toArray();
  }

  /** Returns some of them, as if they were all. */
  Contacts part(int from, int to) {
    Crossings some =
        new Crossings(
            Arrays.copyOfRange(crossings.samples(), from, to),
            Arrays.copyOfRange(crossings.strengths(), from, to));
    return new Contacts(motion, approach, sign, some, Poses.at(motion, times(motion, some)), lead);
  }

  int size() {
    return crossings.samples().length;
  }

  double medianIntervalS() {
    return Robust.median(poses.intervals());
  }

  /** Returns the share of intervals near their median. */
  public double regularity() {
    double[] intervals = poses.intervals();
    double median = Robust.median(intervals);
    long near =
        Arrays.stream(intervals).filter(d -> Math.abs(d - median) <= REGULAR * median).count();
    return near / (double) intervals.length;
  }

  /** Returns how much this blob looks like a slapping hand: to choose among blobs. */
  double score() {
    return poses.alternation()
        * poses.size()
        / Math.sqrt(motion.blob().area())
        * regularity()
        * Math.sqrt(size());
  }

  /** Returns whether this alone leaves doubt, so that another reading should be tried. */
  boolean doubtful() {
    return poses.alternation() < 0.68 || lead < 1 || regularity() < 0.75;
  }
}
