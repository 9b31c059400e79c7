package palmturn.estimate.elbow;

import org.jspecify.annotations.Nullable;
import palmturn.clip.Picture;
import palmturn.estimate.image.Footage;
import palmturn.trial.Point;

/**
 * An occlusion test by colour: whether a place shows the arm, as it looks around the elbow in the
 * first frame, or something in front of it.
 *
 * @param footage of the stretch
 * @param colour the arm's
 * @param reachPx radius around a place in which pixels are compared, full-size pixels
 */
record ArmInView(Footage footage, ArmColour colour, double reachPx) {
  /** Share of the tracked disc's radius that is compared: its inner half is arm, not background. */
  private static final double REACH_RADII = 0.5;

  /** Least share of pixels around a place that have the arm's colour. */
  private static final double SHARE = 0.5;

  /**
   * Takes the arm's colour from the first frame.
   *
   * @param elbow in the upright full-size picture
   * @param radiusPx of the tracked disc
   * @return null where the arm is not of one colour there
   */
  static @Nullable ArmInView of(Footage footage, Point elbow, double radiusPx) {
    double cell = footage.pxPerCell();
    ArmColour colour =
        ArmColour.at(footage.picture(0), new Point(elbow.x() / cell, elbow.y() / cell));
    ArmInView view = new ArmInView(footage, colour, REACH_RADII * radiusPx);
    return view.at(footage.timesS()[0], elbow) ? view : null;
  }

  /**
   * Returns whether the arm is in view.
   *
   * @param timeS the moment, as the footage's
   * @param place in the first frame's picture, full-size pixels
   */
  boolean at(double timeS, Point place) {
    double cell = footage.pxPerCell();
    double reach = reachPx / cell;
    double middleX = place.x() / cell;
    double middleY = place.y() / cell;
    Picture picture = footage.picture(footage.nearest(timeS));
    int cells = 0;
    int like = 0;
    for (int y = (int) (middleY - reach); y <= middleY + reach; y++) {
      for (int x = (int) (middleX - reach); x <= middleX + reach; x++) {
        boolean inside = x >= 0 && y >= 0 && x < picture.width() && y < picture.height();
        if (inside && Math.hypot(x - middleX, y - middleY) <= reach) {
          cells++;
          like += colour.like(picture.argb()[y * picture.width() + x]) ? 1 : 0;
        }
      }
    }
    return cells > 0 && like >= SHARE * cells;
  }
}
