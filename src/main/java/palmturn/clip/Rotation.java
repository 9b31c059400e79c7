package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_side_data_get;
import static org.bytedeco.ffmpeg.global.avutil.av_display_rotation_get;

import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.javacpp.IntPointer;

/** The rotation from stored to upright pictures, as the file states it. */
final class Rotation {
  private Rotation() {}

  /** Returns the clockwise turn from the stored to the upright picture: 0, 90, 180 or 270. */
  static int clockwiseDeg(AVStream stream) {
    AVPacketSideData data =
        av_packet_side_data_get(
            stream.codecpar().coded_side_data(),
            stream.codecpar().nb_coded_side_data(),
            AV_PKT_DATA_DISPLAYMATRIX);
    if (data == null || data.isNull()) {
      return 0;
    }
    double counterClockwise = av_display_rotation_get(new IntPointer(data.data()));
    if (Double.isNaN(counterClockwise)) {
      return 0;
    }
    return Math.floorMod((int) Math.round(-counterClockwise / 90) * 90, 360);
  }

  /** Rotates pixels clockwise. */
  static int[] turn(int[] stored, int width, int height, int rotationDeg) {
    if (rotationDeg == 0) {
      return stored;
    }
    int[] turned = new int[stored.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int to =
            switch (rotationDeg) {
              case 90 -> x * height + (height - 1 - y);
              case 180 -> (height - 1 - y) * width + (width - 1 - x);
              default -> (width - 1 - x) * height + y;
            };
        turned[to] = stored[y * width + x];
      }
    }
    return turned;
  }
}
