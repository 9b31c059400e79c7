package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_JPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT2020_NCL;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_UNSPECIFIED;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGRA;
import static org.bytedeco.ffmpeg.global.swscale.SWS_AREA;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BICUBIC;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_BT2020;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU601;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU709;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCachedContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import java.nio.ByteOrder;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/** A converter from decoded frames of any pixel format to opaque ARGB. */
final class PixelConverter implements AutoCloseable {
  private static final int FIXED_POINT_ONE = 1 << 16;
  private static final int HD_HEIGHT = 720;

  private @Nullable SwsContext context;
  private @Nullable BytePointer out;

  /**
   * Returns a frame's pixels as stored, row by row, scaled to a size; null if its format is
   * unknown.
   */
  int @Nullable [] argb(AVFrame frame, int width, int height) {
    context =
        sws_getCachedContext(
            context,
            frame.width(),
            frame.height(),
            frame.format(),
            width,
            height,
            AV_PIX_FMT_BGRA,
            width == frame.width() ? SWS_BICUBIC : SWS_AREA,
            null,
            null,
            (DoublePointer) null);
    if (context == null) {
      return null;
    }
    int full = frame.color_range() == AVCOL_RANGE_JPEG ? 1 : 0;
    IntPointer coefficients = sws_getCoefficients(matrix(frame));
    sws_setColorspaceDetails(
        context, coefficients, full, coefficients, 1, 0, FIXED_POINT_ONE, FIXED_POINT_ONE);
    // Vectorised conversion may write a little past a row's end.
    long bytes = 4L * width * height + 64;
    if (out == null || out.capacity() < bytes) {
      if (out != null) {
        out.close();
      }
      out = new BytePointer(bytes);
    }
    int[] argb = new int[width * height];
    try (PointerPointer<BytePointer> planes = new PointerPointer<>(4);
        IntPointer strides = new IntPointer(4 * width, 0, 0, 0)) {
      planes.put(0, out);
      sws_scale(context, frame.data(), frame.linesize(), 0, frame.height(), planes, strides);
      out.limit(4L * width * height)
          .asByteBuffer()
          .order(ByteOrder.LITTLE_ENDIAN)
          .asIntBuffer()
          .get(argb);
      out.limit(out.capacity());
    }
    return argb;
  }

  private static int matrix(AVFrame frame) {
    int space = frame.colorspace();
    if (space == AVCOL_SPC_BT2020_NCL) {
      return SWS_CS_BT2020;
    }
    boolean hd = frame.height() >= HD_HEIGHT || frame.width() >= HD_HEIGHT * 16 / 9;
    return space == AVCOL_SPC_BT709 || space == AVCOL_SPC_UNSPECIFIED && hd
        ? SWS_CS_ITU709
        : SWS_CS_ITU601;
  }

  @Override
  public void close() {
    if (context != null) {
      sws_freeContext(context);
      context = null;
    }
    if (out != null) {
      out.close();
      out = null;
    }
  }
}
