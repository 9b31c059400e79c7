package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.jspecify.annotations.Nullable;

/**
 * Decodes any frame of a clip, exactly: the frame with that presentation time, never a neighbour.
 * Reading on from the last frame does not seek. For one thread.
 */
public final class FrameReader implements AutoCloseable {
  private final Container container;
  private final Packets packets;
  private final Decoder decoder;
  private final PixelConverter pixels = new PixelConverter();
  private final int rotationDeg;
  private final int longSidePx;
  private long lastPts = AV_NOPTS_VALUE;
  private boolean gaveUp;

  /** Frames that did not come out even when all from the start was decoded. */
  private final BitSet missing = new BitSet();

  FrameReader(Container container, Packets packets, int longSidePx) throws ClipException {
    this.container = container;
    this.packets = packets;
    this.longSidePx = longSidePx;
    this.rotationDeg = Rotation.clockwiseDeg(container.video());
    this.decoder = Decoder.of(container, container.video());
  }

  /**
   * Returns a frame, upright.
   *
   * @param index its place in the frame table
   * @throws ClipException if the file is damaged there
   */
  public Picture read(int index) throws ClipException {
    AVFrame frame = decode(index, () -> false);
    if (frame == null) {
      throw new IllegalStateException("nothing gave up");
    }
    return picture(frame, index);
  }

  /**
   * Returns a frame as it is decoded, valid until the next call; null if given up on the way, which
   * is gone on with when the same frame is asked for next.
   *
   * @param giveUp is asked after each frame on the way
   * @throws ClipException if the file is damaged there
   */
  @Nullable AVFrame decode(int index, BooleanSupplier giveUp) throws ClipException {
    if (missing.get(index)) {
      throw damaged(index);
    }
    long wanted = packets.ptsTicks()[index];
    int key = keyBefore(wanted);
    decoder.passOverBefore(wanted);
    boolean ahead = lastPts != AV_NOPTS_VALUE && lastPts < wanted;
    if (ahead && (key < 0 || packets.keys().get(key).ptsTicks() <= lastPts)) {
      AVFrame frame = decodeUpTo(wanted, giveUp);
      if (frame != null || gaveUp) {
        return frame;
      }
    }
    // Frames shown before the key frame that they follow in the file can need the one before it.
    for (int from = key; from >= Math.max(0, key - 2); from--) {
      seekTo(packets.keys().get(from));
      AVFrame frame = decodeUpTo(wanted, giveUp);
      if (frame != null || gaveUp) {
        return frame;
      }
    }
    seekTo(null);
    decoder.passOverBefore(Long.MIN_VALUE);
    AVFrame frame = decodeUpTo(wanted, giveUp);
    if (frame == null && !gaveUp) {
      // The neighbours in the same hole would each cost a run from the start.
      missing.set(index, Math.max(index + 1, lastIndex()));
      throw damaged(index);
    }
    return frame;
  }

  /** Returns the place of the frame that came last; the clip's end once all has been decoded. */
  private int lastIndex() {
    return lastPts == AV_NOPTS_VALUE
        ? packets.ptsTicks().length
        : Arrays.binarySearch(packets.ptsTicks(), lastPts);
  }

  private ClipException damaged(int index) {
    return new ClipException(
        String.format(
            Locale.ROOT,
            "%s is damaged at frame %d, %.3f s: that frame can't be decoded",
            container.name(),
            index,
            packets.ptsTicks()[index] * packets.timeBaseS()));
  }

  private int keyBefore(long pts) {
    List<Packets.Key> keys = packets.keys();
    int at = -1;
    while (at + 1 < keys.size() && keys.get(at + 1).ptsTicks() <= pts) {
      at++;
    }
    return at;
  }

  private void seekTo(Packets.@Nullable Key key) {
    decoder.seek(key == null ? Long.MIN_VALUE / 2 : key.dtsTicks());
    lastPts = AV_NOPTS_VALUE;
  }

  /** Returns the wanted frame, or null once a later one or the end has come without it. */
  private @Nullable AVFrame decodeUpTo(long wanted, BooleanSupplier giveUp) {
    gaveUp = false;
    for (AVFrame frame = decoder.next(); frame != null; frame = decoder.next()) {
      long pts = frame.pts() == AV_NOPTS_VALUE ? frame.best_effort_timestamp() : frame.pts();
      if (Arrays.binarySearch(packets.ptsTicks(), pts) < 0) {
        continue;
      }
      lastPts = pts;
      if (pts == wanted) {
        return frame;
      }
      if (pts > wanted) {
        return null;
      }
      if (giveUp.getAsBoolean()) {
        gaveUp = true;
        return null;
      }
    }
    lastPts = AV_NOPTS_VALUE;
    return null;
  }

  /**
   * Returns a decoded frame as it is shown. A frame that is coded in another size than the clip's,
   * as a damaged or joined file has them, is brought to that size.
   */
  Picture picture(AVFrame frame, int index) throws ClipException {
    AVCodecParameters coded = container.video().codecpar();
    boolean told = coded.width() > 0 && coded.height() > 0;
    int fullWidth = told ? coded.width() : frame.width();
    int fullHeight = told ? coded.height() : frame.height();
    double shrink = Math.min(1, longSidePx / (double) Math.max(fullWidth, fullHeight));
    int width = Math.max(1, (int) Math.round(fullWidth * shrink));
    int height = Math.max(1, (int) Math.round(fullHeight * shrink));
    int[] argb = pixels.argb(frame, width, height);
    if (argb == null) {
      throw new ClipException(container.name() + " has a pixel format that can't be converted");
    }
    boolean sideways = rotationDeg == 90 || rotationDeg == 270;
    return new Picture(
        index,
        packets.ptsTicks()[index] * packets.timeBaseS(),
        sideways ? height : width,
        sideways ? width : height,
        Rotation.turn(argb, width, height, rotationDeg));
  }

  @Override
  public void close() {
    pixels.close();
    decoder.close();
    container.close();
  }
}
