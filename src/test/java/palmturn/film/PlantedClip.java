package palmturn.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_KEY;
import static org.bytedeco.ffmpeg.global.avcodec.av_new_packet;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_copy;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.avutil.av_rescale_q;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;

/** A writer of clips whose coded pictures were changed on the way. */
final class PlantedClip implements AutoCloseable {
  private static final Path NONE = Path.of("pictures");

  private final AVFormatContext out = new AVFormatContext(null);
  private final Path to;

  private PlantedClip(Path to) {
    this.to = to;
  }

  /** Copies a clip's pictures, each packet changed. */
  static void copy(Path from, Path to, UnaryOperator<byte[]> how) throws IOException {
    AVFormatContext in = new AVFormatContext(null);
    AVPacket packet = av_packet_alloc();
    try (PlantedClip clip = new PlantedClip(to)) {
      Remuxer.open(in, from);
      AVStream video = Remuxer.first(in, AVMEDIA_TYPE_VIDEO);
      AVStream copy = clip.begin();
      avcodec_parameters_copy(copy.codecpar(), video.codecpar());
      copy.codecpar().codec_tag(0);
      copy.time_base(video.time_base());
      clip.header();
      while (av_read_frame(in, packet) >= 0) {
        if (packet.stream_index() == video.index()) {
          byte[] bytes = new byte[packet.size()];
          packet.data().get(bytes);
          AVPacket changed = packet(how.apply(bytes), packet.flags());
          changed.pts(av_rescale_q(packet.pts(), video.time_base(), copy.time_base()));
          changed.dts(av_rescale_q(packet.dts(), video.time_base(), copy.time_base()));
          changed.duration(av_rescale_q(packet.duration(), video.time_base(), copy.time_base()));
          clip.write(changed);
        }
        av_packet_unref(packet);
      }
      av_write_trailer(clip.out);
    } finally {
      av_packet_free(packet);
      avformat_close_input(in);
    }
  }

  /** Writes coded pictures at 30 frames a second. */
  static void write(List<byte[]> pictures, int codec, int width, int height, Path to)
      throws IOException {
    try (PlantedClip clip = new PlantedClip(to)) {
      AVStream stream = clip.begin();
      AVCodecParameters parameters = stream.codecpar();
      parameters.codec_type(AVMEDIA_TYPE_VIDEO);
      parameters.codec_id(codec);
      parameters.width(width);
      parameters.height(height);
      stream.time_base(av_make_q(1, 30));
      stream.avg_frame_rate(av_make_q(30, 1));
      clip.header();
      for (int i = 0; i < pictures.size(); i++) {
        AVPacket packet = packet(pictures.get(i), AV_PKT_FLAG_KEY);
        long at = av_rescale_q(i, av_make_q(1, 30), stream.time_base());
        packet.pts(at);
        packet.dts(at);
        packet.duration(av_rescale_q(1, av_make_q(1, 30), stream.time_base()));
        clip.write(packet);
      }
      av_write_trailer(clip.out);
    }
  }

  /** Returns coded pictures of a grey that changes, each one whole by itself. */
  static List<byte[]> encoded(int codec, int width, int height, int count) throws IOException {
    AVCodecContext encoder = avcodec_alloc_context3(avcodec_find_encoder(codec));
    encoder.width(width);
    encoder.height(height);
    encoder.pix_fmt(AV_PIX_FMT_YUV420P);
    encoder.time_base(av_make_q(1, 30));
    encoder.gop_size(0);
    encoder.max_b_frames(0);
    AVFrame frame = av_frame_alloc();
    frame.format(AV_PIX_FMT_YUV420P);
    frame.width(width);
    frame.height(height);
    AVPacket packet = av_packet_alloc();
    List<byte[]> pictures = new ArrayList<>();
    try {
      FfmpegErrors.check(avcodec_open2(encoder, (AVCodec) null, (AVDictionary) null), "open", NONE);
      av_frame_get_buffer(frame, 0);
      for (int i = 0; i <= count; i++) {
        for (int plane = 0; i < count && plane < 3; plane++) {
          int size = frame.linesize(plane) * (plane == 0 ? height : height / 2);
          byte[] grey = new byte[size];
          Arrays.fill(grey, (byte) (40 + 20 * i));
          frame.data(plane).capacity(size).put(grey);
        }
        frame.pts(i);
        avcodec_send_frame(encoder, i < count ? frame : null);
        while (avcodec_receive_packet(encoder, packet) >= 0) {
          byte[] bytes = new byte[packet.size()];
          packet.data().get(bytes);
          pictures.add(bytes);
          av_packet_unref(packet);
        }
      }
    } finally {
      av_packet_free(packet);
      av_frame_free(frame);
      avcodec_free_context(encoder);
    }
    return pictures;
  }

  private static AVPacket packet(byte[] bytes, int flags) {
    AVPacket packet = av_packet_alloc();
    av_new_packet(packet, bytes.length);
    packet.data().put(bytes);
    packet.flags(flags);
    packet.stream_index(0);
    return packet;
  }

  private AVStream begin() throws IOException {
    FfmpegErrors.check(avformat_alloc_output_context2(out, null, null, to.toString()), "open", to);
    return avformat_new_stream(out, null);
  }

  private void header() throws IOException {
    AVIOContext io = new AVIOContext(null);
    FfmpegErrors.check(avio_open(io, to.toString(), AVIO_FLAG_WRITE), "write", to);
    out.pb(io);
    FfmpegErrors.check(avformat_write_header(out, (AVDictionary) null), "begin", to);
  }

  private void write(AVPacket packet) throws IOException {
    FfmpegErrors.check(av_interleaved_write_frame(out, packet), "write", to);
    av_packet_free(packet);
  }

  @Override
  public void close() {
    AVIOContext io = out.pb();
    if (io != null && !io.isNull()) {
      avio_closep(io);
      out.pb(null);
    }
    avformat_free_context(out);
  }
}
