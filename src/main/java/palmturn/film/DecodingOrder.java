package palmturn.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_DISCARD;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.av_q2d;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.jspecify.annotations.Nullable;

/**
 * The decoding times of a file's pictures, and the range of them that is shown. A file whose
 * beginning was cut off can have decoding times after presentation times, with which no file can be
 * written.
 *
 * @param decodeTicks for each picture in the file's order; null where the file's own will do
 * @param firstS when the first picture is shown, seconds
 * @param endS a moment after the last picture that is shown and before those that are hidden; null
 *     where none is
 */
@SuppressWarnings("ArrayRecordComponent") // Inside this room only.
record DecodingOrder(long @Nullable [] decodeTicks, double firstS, @Nullable Double endS) {

  static DecodingOrder of(Path file) throws IOException {
    List<Long> shownAt = new ArrayList<>();
    boolean sound = true;
    TreeSet<Long> visible = new TreeSet<>();
    double tickS = 0;
    AVFormatContext in = new AVFormatContext(null);
    AVPacket packet = av_packet_alloc();
    try {
      Remuxer.open(in, file);
      AVStream video = Remuxer.first(in, AVMEDIA_TYPE_VIDEO);
      while (video != null && av_read_frame(in, packet) >= 0) {
        if (packet.stream_index() == video.index()) {
          tickS = av_q2d(video.time_base());
          sound &= packet.pts() != AV_NOPTS_VALUE && packet.pts() >= packet.dts();
          long pts = packet.pts() == AV_NOPTS_VALUE ? packet.dts() : packet.pts();
          shownAt.add(pts);
          if ((packet.flags() & AV_PKT_FLAG_DISCARD) == 0) {
            visible.add(pts);
          }
        }
        av_packet_unref(packet);
      }
    } finally {
      av_packet_free(packet);
      avformat_close_input(in);
    }
    if (visible.isEmpty()) {
      throw new IOException(file.getFileName() + " shows no picture");
    }
    long last = visible.last();
    Long hidden = shownAt.stream().filter(pts -> pts > last).min(Long::compare).orElse(null);
    return new DecodingOrder(
        sound ? null : before(shownAt),
        visible.first() * tickS,
        hidden == null ? null : (last + hidden) / 2.0 * tickS);
  }

  /**
   * Returns decoding times in the file's order, each as late as the most reordered picture allows.
   */
  private static long[] before(List<Long> shownAt) {
    long[] sorted = shownAt.stream().mapToLong(Long::longValue).sorted().toArray();
    long late = 0;
    for (int i = 0; i < sorted.length; i++) {
      late = Math.max(late, sorted[i] - shownAt.get(i));
    }
    for (int i = 0; i < sorted.length; i++) {
      sorted[i] -= late;
    }
    return sorted;
  }

  /** Gives a picture its decoding time. */
  void time(AVPacket packet, int place) {
    if (packet.pts() == AV_NOPTS_VALUE) {
      packet.pts(packet.dts());
    }
    if (decodeTicks != null) {
      packet.dts(decodeTicks[place]);
    }
  }
}
