package palmturn.estimate;

import java.util.ArrayDeque;
import java.util.Deque;
import palmturn.clip.Picture;

/**
 * Which pixels around a place have its colour and hang together with it: bare skin, or a sleeve.
 */
final class ArmMask {
  /** Farther off in the shares of red and green a pixel has another colour. */
  private static final double CHROMA = 0.05;

  /** Shading may make it so much darker or lighter. */
  private static final double LIGHT = 0.45;

  private static final int SEED_PX = 4;

  private ArmMask() {}

  /** Returns for each pixel, row by row, whether it belongs to what lies at {@code middle}. */
  static boolean[] around(Picture picture, Point middle, double radiusPx) {
    int width = picture.width();
    int height = picture.height();
    boolean[] inside = new boolean[width * height];
    int startX = (int) middle.x();
    int startY = (int) middle.y();
    double[] seed = mean(picture, startX, startY);
    double light = seed[0] + seed[1] + seed[2];
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
        if (near && !inside[y * width + x] && alike(picture.argb()[y * width + x], seed, light)) {
          inside[y * width + x] = true;
          open.add(y * width + x);
        }
      }
    }
    return inside;
  }

  private static double[] mean(Picture picture, int middleX, int middleY) {
    double[] sum = new double[3];
    int n = 0;
    for (int y = middleY - SEED_PX; y <= middleY + SEED_PX; y++) {
      for (int x = middleX - SEED_PX; x <= middleX + SEED_PX; x++) {
        if (x >= 0 && y >= 0 && x < picture.width() && y < picture.height()) {
          int p = picture.argb()[y * picture.width() + x];
          sum[0] += p >> 16 & 255;
          sum[1] += p >> 8 & 255;
          sum[2] += p & 255;
          n++;
        }
      }
    }
    return new double[] {sum[0] / n, sum[1] / n, sum[2] / n};
  }

  private static boolean alike(int argb, double[] seed, double seedLight) {
    double red = argb >> 16 & 255;
    double green = argb >> 8 & 255;
    double light = red + green + (argb & 255);
    double chroma =
        Math.hypot(
            red / (light + 1) - seed[0] / (seedLight + 1),
            green / (light + 1) - seed[1] / (seedLight + 1));
    return chroma < CHROMA && Math.abs(light - seedLight) < LIGHT * seedLight;
  }
}
