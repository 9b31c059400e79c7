package palmturn.estimate.hands;

import org.jspecify.annotations.Nullable;
import palmturn.trial.ElbowPath;

/** An elbow's place at any moment of its path. */
public final class ElbowAlong {
  private ElbowAlong() {}

  /**
   * Returns its place in the upright full-size picture, x and y, without the camera's motion; null
   * before the path and in a gap.
   *
   * @param timeS media seconds
   */
  public static double @Nullable [] at(ElbowPath path, double timeS) {
    ElbowPath.Sample last = null;
    for (ElbowPath.Sample sample : path.samples()) {
      if (sample.timeS() > timeS) {
        break;
      }
      last = sample;
    }
    boolean lost =
        last == null
            || path.gaps().stream().anyMatch(gap -> timeS > gap.startS() && timeS < gap.endS());
    return lost || last == null
        ? null
        : new double[] {path.start().x() + last.rightPx(), path.start().y() + last.downPx()};
  }
}
