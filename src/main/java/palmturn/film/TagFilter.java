package palmturn.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_AV1;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_H264;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_HEVC;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MJPEG;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MPEG2VIDEO;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MPEG4;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_VP8;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_VP9;
import static org.bytedeco.ffmpeg.global.avcodec.av_bsf_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_bsf_init;
import static org.bytedeco.ffmpeg.global.avcodec.av_bsf_list_parse_str;
import static org.bytedeco.ffmpeg.global.avcodec.av_bsf_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.av_bsf_send_packet;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.av_shrink_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_copy;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;

import java.io.IOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import org.bytedeco.ffmpeg.avcodec.AVBSFContext;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.javacpp.BytePointer;
import palmturn.clip.ClipException;
import palmturn.clip.ClipHash;

/**
 * A filter that leaves in coded pictures nothing but what pictures are made of: no messages of a
 * device, no comments, no tags of a photograph, where a place, a date or a name may stand.
 */
final class TagFilter implements AutoCloseable {
  /** The units of each code that are passed or removed, as FFmpeg's filter names them. */
  private static final Map<Integer, String> FILTERS =
      Map.of(
          // Slices, parameter sets, delimiters and messages, which are looked through: no filler,
          // and no units whose meaning is open.
          AV_CODEC_ID_H264, "filter_units=pass_types=1-11|13-15|19-21",
          // The same; 62 is the range of brightness of some phones.
          AV_CODEC_ID_HEVC, "filter_units=pass_types=0-9|16-21|32-37|39|40|62",
          // All but metadata and padding.
          AV_CODEC_ID_AV1, "filter_units=pass_types=1-4|6-8",
          // All but the application segments APP1 to APP13 and APP15, and comments; APP0 and APP14
          // say how colours are meant.
          AV_CODEC_ID_MJPEG, "filter_units=remove_types=225-237|239|254",
          // User data is taken out here.
          AV_CODEC_ID_MPEG2VIDEO, "null",
          AV_CODEC_ID_MPEG4, "null",
          // There is no place for anything else in these.
          AV_CODEC_ID_VP8, "null",
          AV_CODEC_ID_VP9, "null");

  private static final int USER_DATA = 0xB2;

  private final Path file;
  private final AVBSFContext filter = new AVBSFContext(null);
  private final int codec;

  private TagFilter(Path file, int codec) {
    this.file = file;
    this.codec = codec;
  }

  /**
   * Returns a filter for a clip's pictures.
   *
   * @throws ClipException if tags can't be looked for in pictures of their code
   */
  static TagFilter of(Path file, AVStream video) throws ClipException, IOException {
    int codec = video.codecpar().codec_id();
    String filter = FILTERS.get(codec);
    if (filter == null) {
      throw new ClipException(
          "%s: its pictures are coded as %s, in which a place or a device can't be looked for: pack it with --crop, or without clips"
              .formatted(file.getFileName(), avcodec_get_name(codec).getString()));
    }
    TagFilter made = new TagFilter(file, codec);
    try {
      made.check(av_bsf_list_parse_str(filter, made.filter));
      made.check(avcodec_parameters_copy(made.filter.par_in(), video.codecpar()));
      made.filter.time_base_in(video.time_base());
      made.check(av_bsf_init(made.filter));
      made.clearHeader();
      return made;
    } catch (IOException e) {
      made.close();
      throw e;
    }
  }

  private void clearHeader() {
    AVCodecParameters parameters = parameters();
    if (parameters.extradata_size() > 0) {
      byte[] header = new byte[parameters.extradata_size()];
      parameters.extradata().get(header);
      byte[] cleared = cleared(header);
      parameters.extradata().put(cleared);
      parameters.extradata_size(cleared.length);
    }
  }

  /** Returns what the filtered pictures are coded with. */
  AVCodecParameters parameters() {
    return filter.par_out();
  }

  /** Hands in a packet, which is emptied. */
  void send(AVPacket packet) throws IOException {
    check(av_bsf_send_packet(filter, packet));
  }

  /** Fills a packet with the next filtered one; returns whether there was one. */
  boolean receive(AVPacket packet) throws IOException {
    int code = av_bsf_receive_packet(filter, packet);
    if (code == AVERROR_EAGAIN() || code == AVERROR_EOF) {
      return false;
    }
    check(code);
    byte[] cleared = cleared(bytes(packet));
    if (cleared.length < packet.size()) {
      packet.data().put(cleared);
      av_shrink_packet(packet, cleared.length);
    }
    return true;
  }

  private byte[] cleared(byte[] coded) {
    if (codec == AV_CODEC_ID_MPEG4 || codec == AV_CODEC_ID_MPEG2VIDEO) {
      return withoutUserData(coded);
    }
    return codec == AV_CODEC_ID_H264 || codec == AV_CODEC_ID_HEVC
        ? CodedMessages.filtered(coded, codec == AV_CODEC_ID_HEVC)
        : coded;
  }

  /**
   * Returns MPEG-2 or MPEG-4 without its pieces of user data, each from its start code to the next.
   */
  static byte[] withoutUserData(byte[] coded) {
    byte[] kept = new byte[coded.length];
    int size = 0;
    boolean dropped = false;
    for (int i = 0; i < coded.length; i++) {
      if (i + 3 < coded.length && coded[i] == 0 && coded[i + 1] == 0 && coded[i + 2] == 1) {
        dropped = (coded[i + 3] & 0xFF) == USER_DATA;
      }
      if (!dropped) {
        kept[size++] = coded[i];
      }
    }
    return Arrays.copyOf(kept, size);
  }

  private static byte[] bytes(AVPacket packet) {
    byte[] bytes = new byte[packet.size()];
    if (bytes.length > 0) {
      BytePointer data = packet.data();
      data.get(bytes);
    }
    return bytes;
  }

  /**
   * Returns a digest of all that the filter lets through of a clip's pictures.
   *
   * @throws ClipException as {@link #of}
   */
  static String sha256(Path file) throws ClipException, IOException {
    MessageDigest digest = ClipHash.digest();
    AVFormatContext in = new AVFormatContext(null);
    AVPacket packet = av_packet_alloc();
    try {
      Remuxer.open(in, file);
      AVStream video = Remuxer.first(in, AVMEDIA_TYPE_VIDEO);
      if (video == null) {
        throw new IOException(file.getFileName() + " shows no picture");
      }
      try (TagFilter filter = of(file, video)) {
        while (av_read_frame(in, packet) >= 0) {
          if (packet.stream_index() == video.index()) {
            filter.send(packet);
            while (filter.receive(packet)) {
              byte[] coded = bytes(packet);
              boolean hevc = filter.codec == AV_CODEC_ID_HEVC;
              digest.update(hevc ? CodedMessages.slices(coded) : coded);
              av_packet_unref(packet);
            }
          } else {
            av_packet_unref(packet);
          }
        }
      }
    } finally {
      av_packet_free(packet);
      avformat_close_input(in);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private void check(int code) throws IOException {
    FfmpegErrors.check(code, "clear", file);
  }

  @Override
  public void close() {
    if (!filter.isNull()) {
      av_bsf_free(filter);
    }
  }
}
