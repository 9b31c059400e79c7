package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avcodec.AVDISCARD_DEFAULT;
import static org.bytedeco.ffmpeg.global.avcodec.AVDISCARD_NONREF;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_H264;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_flush_buffers;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_to_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_frame;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_packet;
import static org.bytedeco.ffmpeg.global.avformat.AVSEEK_FLAG_BACKWARD;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_seek_frame;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;

import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.jspecify.annotations.Nullable;

/** A decoder of one track, frame by frame from the last seek. */
final class Decoder implements AutoCloseable {
  private static final int MAX_THREADS = 4;

  private final Container container;
  private final AVStream stream;
  private final AVCodecContext codec;
  private final AVPacket packet = av_packet_alloc();
  private final AVFrame frame = av_frame_alloc();
  private boolean drained;
  private long passOverBefore = Long.MIN_VALUE;

  private Decoder(Container container, AVStream stream, AVCodecContext codec) {
    this.container = container;
    this.stream = stream;
    this.codec = codec;
  }

  /**
   * Opens a decoder; the container stays the caller's to close.
   *
   * @throws ClipException if this kind of track can't be decoded
   */
  static Decoder of(Container container, AVStream stream) throws ClipException {
    int id = stream.codecpar().codec_id();
    AVCodec codec = avcodec_find_decoder(id);
    AVCodecContext context = codec == null ? null : avcodec_alloc_context3(codec);
    if (context == null) {
      throw undecodable(container, id);
    }
    avcodec_parameters_to_context(context, stream.codecpar());
    context.pkt_timebase(stream.time_base());
    // The coded pictures may claim another size than the file's header.
    context.max_pixels(Container.MOST_PIXELS);
    context.thread_count(Math.min(MAX_THREADS, Runtime.getRuntime().availableProcessors()));
    if (avcodec_open2(context, codec, (AVDictionary) null) < 0) {
      avcodec_free_context(context);
      throw undecodable(container, id);
    }
    return new Decoder(container, stream, context);
  }

  private static ClipException undecodable(Container container, int id) {
    return new ClipException(
        "%s is coded as %s, which can't be decoded here: export it again as H.264 and AAC"
            .formatted(container.name(), avcodec_get_name(id).getString()));
  }

  /**
   * Returns the next decoded frame, which is valid until the next call, or null at the end. Packets
   * that can't be decoded are passed over: their frames stay missing.
   */
  @Nullable AVFrame next() {
    while (true) {
      if (avcodec_receive_frame(codec, frame) >= 0) {
        return frame;
      }
      if (drained) {
        return null;
      }
      if (av_read_frame(container.context(), packet) < 0) {
        avcodec_send_packet(codec, null);
        drained = true;
      } else {
        if (packet.stream_index() == stream.index()) {
          boolean passOver = packet.pts() != AV_NOPTS_VALUE && packet.pts() < passOverBefore;
          codec.skip_frame(passOver ? AVDISCARD_NONREF : AVDISCARD_DEFAULT);
          avcodec_send_packet(codec, packet);
        }
        av_packet_unref(packet);
      }
    }
  }

  /**
   * Skips unreferenced frames shown before a time in ticks; {@code Long.MIN_VALUE} for none. Only
   * in H.264 are they certain to be unreferenced: in HEVC a higher temporal layer may need them.
   */
  void passOverBefore(long ptsTicks) {
    passOverBefore = codec.codec_id() == AV_CODEC_ID_H264 ? ptsTicks : Long.MIN_VALUE;
  }

  /** Goes to the last key frame that is decoded at or before a time, given in ticks. */
  void seek(long dtsTicks) {
    av_seek_frame(container.context(), stream.index(), dtsTicks, AVSEEK_FLAG_BACKWARD);
    avcodec_flush_buffers(codec);
    drained = false;
  }

  @Override
  public void close() {
    av_frame_free(frame);
    av_packet_free(packet);
    avcodec_free_context(codec);
  }
}
