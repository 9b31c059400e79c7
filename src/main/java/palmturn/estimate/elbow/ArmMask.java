package palmturn.estimate.elbow;

import java.util.ArrayDeque;
import java.util.Deque;
import palmturn.clip.Picture;
import palmturn.trial.Point;

/** A mask of the pixels of similar colour connected to a place: bare skin, or a sleeve. */
final class ArmMask {
  private ArmMask() {}

  /**
   * Returns for each pixel, row by row, whether it belongs to the region that holds {@code middle}.
   */
  static boolean[] around(Picture picture, Point middle, double radiusPx) {
    int width = picture.width();
    int height = picture.height();
    boolean[] inside = new boolean[width * height];
    int startX = (int) middle.x();
    int startY = (int) middle.y();
    ArmColour arm = ArmColour.at(picture, middle);
    Deque<Integer> open = new ArrayDeque<>();
    inside[startY * width + startX] = true;
    open.add(startY * width + startX);
    int[] stepX = {1, -1, 0, 0};
    int[] stepY = {0, 0, 1, -1};
    while (!open.isEmpty()) {
      int at = open.remove();
      for (int k = 0; k < stepX.length; k++) {
        int x = at % width + stepX[k];
        int y = at / width + stepY[k];
        boolean near =
            x >= 0
                && y >= 0
                && x < width
                && y < height
                && Math.hypot(x - middle.x(), y - middle.y()) <= radiusPx;
        if (near && !inside[y * width + x] && arm.like(picture.argb()[y * width + x])) {
          inside[y * width + x] = true;
          open.add(y * width + x);
        }
      }
    }
    return inside;
  }
}
