package palmturn.film;

import static org.bytedeco.ffmpeg.global.avcodec.FF_COMPLIANCE_UNOFFICIAL;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_copy;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.AV_DISPOSITION_ATTACHED_PIC;
import static org.bytedeco.ffmpeg.global.avformat.av_guess_format;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_AUDIO;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.av_strdup;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FilmInput;
import palmturn.clip.FrameReader;
import palmturn.clip.StreamHash;

/**
 * A copy of a clip's coded picture and sound into a new file without any metadata (place, device,
 * name, date), in the file or inside the coded pictures, or other track.
 */
public final class Remuxer implements AutoCloseable {
  private final Path from;
  private final Path to;
  private final AVFormatContext in = new AVFormatContext(null);
  private final AVFormatContext out = new AVFormatContext(null);
  private final AVPacket packet = av_packet_alloc();
  private @Nullable TagFilter filter;

  private Remuxer(Path from, Path to) {
    this.from = from;
    this.to = to;
  }

  /**
   * Remuxes a clip into the container that the new name implies, and verifies that picture and
   * sound are unchanged.
   *
   * @throws ClipException if it is no clip that can be read, tags can't be looked for in it, or the
   *     new file would not be the same to the last bit and moment; then it is not there
   * @throws IOException if the new file can't be written; then it is not there
   */
  public static void write(Path from, Path to) throws ClipException, IOException {
    StreamHash before = StreamHash.of(from);
    double[] timesS = ClipFile.open(from).frames().timesS();
    boolean same = false;
    try {
      DecodingOrder order = DecodingOrder.of(from);
      try (Remuxer remux = new Remuxer(from, to)) {
        remux.all(order);
      }
      Double endS = order.endS();
      if (endS != null) {
        EditListEnd.set(to, endS - order.firstS());
      }
      same =
          TagFilter.sha256(from).equals(TagFilter.sha256(to))
              && sameSound(before, StreamHash.of(to))
              && sameTimes(timesS, ClipFile.open(to).frames().timesS())
              && (before.equals(StreamHash.of(to)) || samePictures(from, to));
    } finally {
      if (!same) {
        Files.deleteIfExists(to);
      }
    }
    if (!same) {
      throw new ClipException(
          from.getFileName()
              + " can't be cleared of its other data without a change in picture or times");
    }
  }

  /** Containers round times to ticks of their own, far finer than any frame. */
  private static boolean sameTimes(double[] one, double[] other) {
    boolean same = one.length == other.length;
    for (int i = 0; same && i < one.length; i++) {
      same = Math.abs(one[i] - other[i]) < 1e-6;
    }
    return same;
  }

  private static boolean sameSound(StreamHash before, StreamHash after) {
    return Objects.equals(before.sound(), after.sound());
  }

  /** Where something was removed, a decoder could have missed it. */
  private static boolean samePictures(Path from, Path to) throws ClipException {
    ClipFile before = ClipFile.open(from);
    int frames = before.frames().size();
    try (FrameReader one = before.newReader();
        FrameReader other = ClipFile.open(to).newReader()) {
      for (int frame : new int[] {0, frames / 3, frames / 2, frames - 1}) {
        if (!Arrays.equals(one.read(frame).argb(), other.read(frame).argb())) {
          return false;
        }
      }
    }
    return true;
  }

  private void all(DecodingOrder order) throws ClipException, IOException {
    open(in, from);
    check(
        avformat_alloc_output_context2(
            out, av_guess_format(null, to.toString(), null), null, to.toString()),
        "open");
    out.flags(out.flags() | AVFormatContext.AVFMT_FLAG_BITEXACT);
    // Some phones' boxes are not in the standard, and yet belong to the picture.
    out.strict_std_compliance(FF_COMPLIANCE_UNOFFICIAL);
    AVStream video = first(in, AVMEDIA_TYPE_VIDEO);
    AVStream sound = first(in, AVMEDIA_TYPE_AUDIO);
    if (video == null) {
      throw new IOException(from.getFileName() + " shows no picture");
    }
    filter = TagFilter.of(from, video);
    int[] placeOf = new int[in.nb_streams()];
    Arrays.fill(placeOf, -1);
    for (int i = 0; i < in.nb_streams(); i++) {
      AVStream stream = in.streams(i);
      if (i == video.index() || sound != null && i == sound.index()) {
        placeOf[i] = out.nb_streams();
        copied(stream, i == video.index() ? filter.parameters() : stream.codecpar());
      }
    }
    AVIOContext io = new AVIOContext(null);
    try (BytePointer name =
        new BytePointer(("file:" + to.toAbsolutePath() + "\0").getBytes(StandardCharsets.UTF_8))) {
      check(avio_open(io, name, AVIO_FLAG_WRITE), "write");
      out.pb(io);
      out.url(av_strdup(name));
    }
    check(avformat_write_header(out, (AVDictionary) null), "begin");
    int pictures = 0;
    while (av_read_frame(in, packet) >= 0) {
      int place = placeOf[packet.stream_index()];
      if (packet.stream_index() == video.index()) {
        order.time(packet, pictures++);
        filter.send(packet);
        while (filter.receive(packet)) {
          write(video, place);
        }
      } else if (place >= 0) {
        write(in.streams(packet.stream_index()), place);
      }
      av_packet_unref(packet);
    }
    check(av_write_trailer(out), "end");
  }

  private void write(AVStream stream, int place) throws IOException {
    av_packet_rescale_ts(packet, stream.time_base(), out.streams(place).time_base());
    packet.stream_index(place);
    packet.pos(-1);
    check(av_interleaved_write_frame(out, packet), "write");
  }

  private void copied(AVStream stream, AVCodecParameters coded) throws IOException {
    AVStream copy = avformat_new_stream(out, null);
    check(avcodec_parameters_copy(copy.codecpar(), coded), "copy");
    // A tag of another kind of file may mean something else here: the writer knows its own.
    if (!sameFamily()) {
      copy.codecpar().codec_tag(0);
    }
    copy.time_base(stream.time_base());
    copy.avg_frame_rate(stream.avg_frame_rate());
    // A file may say one thing and its coded pictures another: the file's word holds, and no file
    // can be begun with both.
    copy.sample_aspect_ratio(stream.sample_aspect_ratio());
    copy.codecpar().sample_aspect_ratio(stream.sample_aspect_ratio());
    copy.disposition(stream.disposition());
  }

  private boolean sameFamily() {
    String was = in.iformat().name().getString();
    return was.contains(out.oformat().name().getString());
  }

  /** Opens a file that is known for a clip. */
  static void open(AVFormatContext in, Path from) throws IOException {
    FfmpegErrors.check(FilmInput.open(in, from), "read", from);
    FfmpegErrors.check(avformat_find_stream_info(in, (PointerPointer<?>) null), "read", from);
  }

  static @Nullable AVStream first(AVFormatContext in, int type) {
    for (int i = 0; i < in.nb_streams(); i++) {
      AVStream stream = in.streams(i);
      boolean cover = (stream.disposition() & AV_DISPOSITION_ATTACHED_PIC) != 0;
      if (stream.codecpar().codec_type() == type && !cover) {
        return stream;
      }
    }
    return null;
  }

  private void check(int code, String what) throws IOException {
    FfmpegErrors.check(code, what, to);
  }

  @Override
  public void close() {
    av_packet_free(packet);
    if (filter != null) {
      filter.close();
    }
    if (!in.isNull()) {
      avformat_close_input(in);
    }
    if (!out.isNull()) {
      if (out.pb() != null && !out.pb().isNull()) {
        AVIOContext io = out.pb();
        avio_closep(io);
        out.pb(null);
      }
      avformat_free_context(out);
    }
  }
}
