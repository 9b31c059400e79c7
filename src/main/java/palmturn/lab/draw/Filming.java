package palmturn.lab.draw;

/**
 * The camera's settings for a clip.
 *
 * @param framesPerS whole frames a second, before any is dropped
 * @param width pixels, even
 * @param height pixels, even; over {@code width} for a phone held upright
 * @param shakePx standard deviation of the camera's shake, pixels
 * @param dropShare share of the frames that are left out at random, 0 to under 1; the others keep
 *     their times
 */
public record Filming(int framesPerS, int width, int height, double shakePx, double dropShare) {
  public Filming {
    if (framesPerS < 1 || shakePx < 0 || !(dropShare >= 0 && dropShare < 1)) {
      throw new IllegalArgumentException(
          "filming needs 1 frame/s or more, no negative shake, and under all frames dropped");
    }
  }

  boolean isUpright() {
    return height > width;
  }
}
