package palmturn.estimate.image;

import java.util.Arrays;
import java.util.List;
import palmturn.clip.Picture;
import palmturn.numbers.Robust;

/**
 * The motion in the picture over a stretch, on a coarse grid fixed to the background of the first
 * frame: the camera's own motion is subtracted.
 *
 * @param width of the grid
 * @param height of the grid
 * @param pxPerCell pixels of the upright full-size picture along a grid cell
 * @param timesS presentation times of the frames, media seconds
 * @param right for each frame, motion to the right since the frame before, in cells, row by row;
 *     all zero for the first
 * @param down the same downwards
 * @param pictures for each frame, blue, green and red of every cell
 * @param camera for each frame, where the first frame's background lies in it, in cells
 * @param unreadable how many frames could not be decoded
 */
@SuppressWarnings("ArrayRecordComponent")
public // Large, made once and only read.
record Footage(
    int width,
    int height,
    double pxPerCell,
    double[] timesS,
    List<float[]> right,
    List<float[]> down,
    List<byte[]> pictures,
    List<Similarity> camera,
    int unreadable) {

  public int frames() {
    return timesS.length;
  }

  /** Returns the frame nearest to a moment, the later of two. */
  public int nearest(double timeS) {
    int at = 0;
    while (at + 1 < frames() && Math.abs(timesS[at + 1] - timeS) <= Math.abs(timesS[at] - timeS)) {
      at++;
    }
    return at;
  }

  /** Returns a frame on the grid, laid onto the first frame's background. */
  public Picture picture(int frame) {
    byte[] bgr = pictures.get(frame);
    int[] argb = new int[width * height];
    for (int i = 0; i < argb.length; i++) {
      argb[i] =
          0xff000000
              | (bgr[3 * i + 2] & 255) << 16
              | (bgr[3 * i + 1] & 255) << 8
              | bgr[3 * i] & 255;
    }
    return new Picture(frame, timesS[frame], width, height, argb);
  }

  /** Returns the same with times in real seconds. */
  public Footage inRealTime(double realPerMediaS) {
    double[] real = Arrays.stream(timesS).map(t -> t * realPerMediaS).toArray();
    return new Footage(width, height, pxPerCell, real, right, down, pictures, camera, unreadable);
  }

  /** Returns the median distance between frames, media seconds. */
  public double medianFrameS() {
    double[] gaps = new double[timesS.length - 1];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = timesS[i + 1] - timesS[i];
    }
    return Robust.median(gaps);
  }
}
