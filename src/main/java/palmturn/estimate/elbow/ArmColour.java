package palmturn.estimate.elbow;

import palmturn.clip.Picture;
import palmturn.trial.Point;

/**
 * The mean colour at a place on the arm: bare skin, or a sleeve.
 *
 * @param red share of the light, 0 to 1
 * @param green share of the light, 0 to 1
 * @param light red, green and blue together, 0 to 765
 */
record ArmColour(double red, double green, double light) {
  /** Largest distance in the shares of red and green within one colour. */
  private static final double CHROMA = 0.05;

  /** Largest relative change of brightness by shading. */
  private static final double LIGHT = 0.45;

  /**
   * Half the side of the square whose mean colour is taken: well inside an arm in pictures of 160
   * to 640 pixels.
   */
  private static final int SEED_PX = 4;

  /** Returns the mean colour around a place of the picture. */
  static ArmColour at(Picture picture, Point middle) {
    int middleX = (int) middle.x();
    int middleY = (int) middle.y();
    double red = 0;
    double green = 0;
    double blue = 0;
    int n = 0;
    for (int y = middleY - SEED_PX; y <= middleY + SEED_PX; y++) {
      for (int x = middleX - SEED_PX; x <= middleX + SEED_PX; x++) {
        if (x >= 0 && y >= 0 && x < picture.width() && y < picture.height()) {
          int p = picture.argb()[y * picture.width() + x];
          red += p >> 16 & 255;
          green += p >> 8 & 255;
          blue += p & 255;
          n++;
        }
      }
    }
    double light = (red + green + blue) / n;
    return new ArmColour(red / n / (light + 1), green / n / (light + 1), light);
  }

  /** Returns whether a pixel has this colour, up to shading. */
  boolean like(int argb) {
    double r = argb >> 16 & 255;
    double g = argb >> 8 & 255;
    double all = r + g + (argb & 255);
    return Math.hypot(r / (all + 1) - red, g / (all + 1) - green) < CHROMA
        && Math.abs(all - light) < LIGHT * light;
  }
}
