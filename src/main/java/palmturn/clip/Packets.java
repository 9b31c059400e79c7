package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_DISCARD;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_KEY;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.av_q2d;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bytedeco.ffmpeg.avcodec.AVPacket;

/**
 * The frames of a clip as its packets tell them, without decoding.
 *
 * @param timeBaseS seconds in one tick
 * @param ptsTicks presentation times of the shown frames, ascending
 * @param keys places where decoding can start, in order of presentation
 */
@SuppressWarnings("ArrayRecordComponent") // Inside this room only.
record Packets(double timeBaseS, long[] ptsTicks, List<Key> keys) {
  /** A frame that needs no other; seeking goes by its decoding time. */
  record Key(long ptsTicks, long dtsTicks) {}

  /**
   * Reads all packets of the picture.
   *
   * @throws ClipException if there is none, or one has no time
   */
  static Packets read(Container container) throws ClipException {
    int stream = container.video().index();
    List<Long> shown = new ArrayList<>();
    List<Key> keys = new ArrayList<>();
    AVPacket packet = av_packet_alloc();
    try {
      while (av_read_frame(container.context(), packet) >= 0) {
        if (packet.stream_index() == stream) {
          long pts = packet.pts() == AV_NOPTS_VALUE ? packet.dts() : packet.pts();
          if (pts == AV_NOPTS_VALUE) {
            throw new ClipException(
                container.name() + " has frames without a time: export it again as MP4");
          }
          if ((packet.flags() & AV_PKT_FLAG_DISCARD) == 0) {
            shown.add(pts);
          }
          if ((packet.flags() & AV_PKT_FLAG_KEY) != 0) {
            keys.add(new Key(pts, packet.dts() == AV_NOPTS_VALUE ? pts : packet.dts()));
          }
        }
        av_packet_unref(packet);
      }
    } finally {
      av_packet_free(packet);
    }
    if (shown.isEmpty()) {
      throw new ClipException(container.name() + " holds no frame: it is cut off or damaged");
    }
    keys.sort(Comparator.comparingLong(Key::ptsTicks));
    long[] pts = shown.stream().mapToLong(Long::longValue).sorted().distinct().toArray();
    return new Packets(av_q2d(container.video().time_base()), pts, List.copyOf(keys));
  }

  FrameTable table() {
    double[] timesS = new double[ptsTicks.length];
    for (int i = 0; i < timesS.length; i++) {
      timesS[i] = ptsTicks[i] * timeBaseS;
    }
    return new FrameTable(timesS);
  }
}
