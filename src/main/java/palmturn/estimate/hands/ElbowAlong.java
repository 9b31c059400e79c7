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
    int at = -1;
    for (int i = 0; i < path.timesS().size() && path.timesS().get(i) <= timeS; i++) {
      at = i;
    }
    boolean lost =
        at < 0 || path.gaps().stream().anyMatch(gap -> timeS > gap.startS() && timeS < gap.endS());
    return lost
        ? null
        : new double[] {
          path.startXPx() + path.rightPx().get(at), path.startYPx() + path.downPx().get(at)
        };
  }
}
