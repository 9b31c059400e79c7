package palmturn.work.reel;

import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Point;
import palmturn.trial.Trial;
import palmturn.trial.UserError;

/** The part of a trial's picture that holds hands and elbow. */
public final class HandsRegion {
  /** Margin around what is known, as a share of its larger side. */
  private static final double AROUND = 0.15;

  private HandsRegion() {}

  /** Returns whether it is known where the moving hand is. */
  public static boolean known(Trial trial) {
    return region(trial) != null;
  }

  /**
   * Returns the moving hand and its elbow, as far as a person has pointed at them or they were
   * found, with a little around them.
   *
   * @param width of the upright picture, pixels
   * @param height the same
   * @param above whether a little is added above too, where the face is
   * @throws UserError if where the hand is is not known
   */
  public static Rectangle of(Trial trial, int width, int height, boolean above) throws UserError {
    Estimate.@Nullable Region region = region(trial);
    if (region == null) {
      throw new UserError(
          trial.id().name()
              + ": where the hands are is not known: estimate it first, or point at the hand in the"
              + " app");
    }
    Rectangle all =
        new Rectangle2D.Double(region.x(), region.y(), region.width(), region.height()).getBounds();
    Point elbow = trial.places().elbow();
    Estimate estimate = trial.estimate();
    if (elbow != null) {
      all.add(elbow.x(), elbow.y());
    } else if (estimate != null && estimate.elbow() != null) {
      all.add(estimate.elbow().start().x(), estimate.elbow().start().y());
    }
    int around = (int) Math.round(AROUND * Math.max(all.width, all.height));
    return new Rectangle(
            all.x - around,
            above ? all.y - around : all.y,
            all.width + 2 * around,
            all.height + (above ? 2 : 1) * around)
        .intersection(new Rectangle(0, 0, width, height));
  }

  private static Estimate.@Nullable Region region(Trial trial) {
    Estimate.@Nullable Region pointedAt = trial.places().handRegion();
    Estimate estimate = trial.estimate();
    return pointedAt != null || estimate == null ? pointedAt : estimate.handRegion();
  }
}
