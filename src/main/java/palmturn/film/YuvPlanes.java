package palmturn.film;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;

/** ARGB pixels to the three YUV planes of encoders (ITU-R BT.601, video range, 4:2:0). */
final class YuvPlanes {
  private YuvPlanes() {}

  static void fill(AVFrame frame, int[] argb, int width, int height) {
    byte[] luma = new byte[width];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int p = argb[y * width + x];
        int r = p >> 16 & 255;
        int g = p >> 8 & 255;
        int b = p & 255;
        luma[x] = (byte) (16.5 + 0.25679 * r + 0.50413 * g + 0.09791 * b);
      }
      put(frame, 0, y, luma);
    }
    byte[] blue = new byte[width / 2];
    byte[] red = new byte[width / 2];
    for (int y = 0; y < height / 2; y++) {
      for (int x = 0; x < width / 2; x++) {
        int at = 2 * y * width + 2 * x;
        int r = 0;
        int g = 0;
        int b = 0;
        for (int corner : new int[] {at, at + 1, at + width, at + width + 1}) {
          r += argb[corner] >> 16 & 255;
          g += argb[corner] >> 8 & 255;
          b += argb[corner] & 255;
        }
        blue[x] = (byte) (128.5 + (-0.14822 * r - 0.29099 * g + 0.43922 * b) / 4);
        red[x] = (byte) (128.5 + (0.43922 * r - 0.36779 * g - 0.07143 * b) / 4);
      }
      put(frame, 1, y, blue);
      put(frame, 2, y, red);
    }
  }

  private static void put(AVFrame frame, int plane, int row, byte[] values) {
    BytePointer data = frame.data(plane);
    long position = (long) row * frame.linesize(plane);
    data.position(position).put(values, 0, values.length);
  }
}
