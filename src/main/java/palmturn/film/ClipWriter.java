package palmturn.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_BITEXACT;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_AAC;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MPEG4;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_SMPTE170M;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AV_LOG_ERROR;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLTP;
import static org.bytedeco.ffmpeg.global.avutil.av_channel_layout_default;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;
import static org.bytedeco.ffmpeg.global.avutil.av_log_set_level;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.FloatPointer;
import org.jspecify.annotations.Nullable;

/**
 * A writer of one MP4 clip: pictures at exactly the given times, and mono sound. The same input
 * gives the same bytes: neither date nor machine is written.
 */
public final class ClipWriter implements AutoCloseable {
  /** Ticks a second in which picture times are stored where nothing else is asked for. */
  public static final int TICKS_PER_S = 90_000;

  /**
   * The encoding of a clip.
   *
   * @param width pixels, even
   * @param height pixels, even
   * @param framesPerS nominal rate, for the encoder's planning only
   * @param videoBitsPerS aimed at
   * @param framesPerKeyframe distance between pictures that need no other one
   * @param soundHz samples a second; 0 for a clip without sound
   * @param soundBitsPerS aimed at
   */
  public record Settings(
      int width,
      int height,
      int framesPerS,
      int videoBitsPerS,
      int framesPerKeyframe,
      int soundHz,
      int soundBitsPerS) {
    public Settings {
      if (width < 16 || height < 16 || width % 2 != 0 || height % 2 != 0) {
        throw new IllegalArgumentException(
            "a clip needs an even width and height of 16 pixels or more, not "
                + width
                + "x"
                + height);
      }
    }
  }

  private final Path path;
  private final Settings settings;
  private final int ticksPerS;
  private final AVFormatContext format = new AVFormatContext(null);
  private final AVPacket packet = av_packet_alloc();
  private @Nullable Track video;
  private @Nullable Track sound;
  private float[] waiting = new float[0];
  private long samplesSent;
  private long lastTick = -1;
  private boolean finished;

  private record Track(AVCodecContext codec, AVStream stream, AVFrame frame) {}

  private ClipWriter(Path path, Settings settings, int ticksPerS) {
    this.path = path;
    this.settings = settings;
    this.ticksPerS = ticksPerS;
  }

  /**
   * Begins a clip, replacing a file of that name.
   *
   * @throws IOException if the file can't be written or an encoder is missing, in one line
   */
  public static ClipWriter create(Path path, Settings settings) throws IOException {
    return create(path, settings, TICKS_PER_S);
  }

  /**
   * Begins a clip whose picture times are kept in ticks of another length, to keep those of another
   * clip exactly.
   */
  public static ClipWriter create(Path path, Settings settings, int ticksPerS) throws IOException {
    av_log_set_level(AV_LOG_ERROR);
    ClipWriter writer = new ClipWriter(path, settings, ticksPerS);
    try {
      writer.begin();
      return writer;
    } catch (IOException | RuntimeException e) {
      writer.close();
      throw e;
    }
  }

  private void begin() throws IOException {
    check(avformat_alloc_output_context2(format, null, "mp4", (String) null), "open");
    format.flags(format.flags() | AVFormatContext.AVFMT_FLAG_BITEXACT);
    video = videoTrack();
    if (settings.soundHz() > 0) {
      sound = soundTrack();
    }
    AVIOContext io = new AVIOContext(null);
    try (BytePointer name =
        new BytePointer(
            ("file:" + path.toAbsolutePath() + "\0").getBytes(StandardCharsets.UTF_8))) {
      check(avio_open(io, name, AVIO_FLAG_WRITE), "write");
      format.pb(io);
      format.url(org.bytedeco.ffmpeg.global.avutil.av_strdup(name));
    }
    AVDictionary options = new AVDictionary(null);
    av_dict_set(options, "movflags", "+faststart", 0);
    av_dict_set(options, "video_track_timescale", Integer.toString(ticksPerS), 0);
    int code = avformat_write_header(format, options);
    av_dict_free(options);
    check(code, "begin");
  }

  private Track videoTrack() throws IOException {
    AVCodec encoder = avcodec_find_encoder_by_name("libopenh264");
    boolean h264 = encoder != null;
    if (encoder == null) {
      encoder = avcodec_find_encoder(AV_CODEC_ID_MPEG4);
    }
    AVCodecContext codec = context(encoder, settings.videoBitsPerS());
    codec.width(settings.width());
    codec.height(settings.height());
    codec.pix_fmt(AV_PIX_FMT_YUV420P);
    codec.color_range(AVCOL_RANGE_MPEG);
    codec.colorspace(AVCOL_SPC_SMPTE170M);
    // MPEG-4's own clock has 16 bits; H.264 takes the file's.
    codec.time_base(av_make_q(1, h264 ? ticksPerS : 60_000));
    codec.framerate(av_make_q(settings.framesPerS(), 1));
    codec.gop_size(settings.framesPerKeyframe());
    codec.max_b_frames(0);
    AVDictionary options = new AVDictionary(null);
    if (h264) {
      av_dict_set(options, "profile", "high", 0);
      av_dict_set(options, "coder", "cabac", 0);
      av_dict_set(options, "rc_mode", "bitrate", 0);
      av_dict_set(options, "allow_skip_frames", "0", 0);
    }
    AVFrame frame = av_frame_alloc();
    frame.format(AV_PIX_FMT_YUV420P);
    frame.width(settings.width());
    frame.height(settings.height());
    return open(encoder, codec, options, frame);
  }

  private Track soundTrack() throws IOException {
    AVCodec encoder = avcodec_find_encoder(AV_CODEC_ID_AAC);
    AVCodecContext codec = context(encoder, settings.soundBitsPerS());
    codec.sample_rate(settings.soundHz());
    codec.sample_fmt(AV_SAMPLE_FMT_FLTP);
    av_channel_layout_default(codec.ch_layout(), 1);
    codec.time_base(av_make_q(1, settings.soundHz()));
    AVFrame frame = av_frame_alloc();
    frame.format(AV_SAMPLE_FMT_FLTP);
    frame.sample_rate(settings.soundHz());
    av_channel_layout_default(frame.ch_layout(), 1);
    frame.nb_samples(1024);
    return open(encoder, codec, new AVDictionary(null), frame);
  }

  private AVCodecContext context(@Nullable AVCodec encoder, int bitsPerS) throws IOException {
    if (encoder == null) {
      throw new IOException("can't write " + path.getFileName() + ": no encoder for it is here");
    }
    AVCodecContext codec = avcodec_alloc_context3(encoder);
    codec.bit_rate(bitsPerS);
    // One thread: how work is cut into slices would change the bytes.
    codec.thread_count(1);
    codec.flags(codec.flags() | AV_CODEC_FLAG_BITEXACT | AV_CODEC_FLAG_GLOBAL_HEADER);
    return codec;
  }

  private Track open(AVCodec encoder, AVCodecContext codec, AVDictionary options, AVFrame frame)
      throws IOException {
    AVStream stream = avformat_new_stream(format, null);
    Track track = new Track(codec, stream, frame);
    int code = avcodec_open2(codec, encoder, options);
    av_dict_free(options);
    try {
      check(code, "encode");
      check(avcodec_parameters_from_context(stream.codecpar(), codec), "encode");
      check(av_frame_get_buffer(frame, 0), "encode");
    } catch (IOException e) {
      free(track);
      throw e;
    }
    stream.time_base(codec.time_base());
    return track;
  }

  /**
   * Adds a picture.
   *
   * @param timeS when it is shown, seconds, later than the one before; kept to a tick
   * @param argb width x height pixels, row by row
   */
  public void picture(double timeS, int[] argb) throws IOException {
    Track track = video;
    long tick = Math.round(timeS * ticksPerS);
    if (track == null || tick <= lastTick) {
      throw new IllegalArgumentException("pictures must come in order of time");
    }
    lastTick = tick;
    AVFrame frame = track.frame();
    check(av_frame_make_writable(frame), "encode");
    YuvPlanes.fill(frame, argb, settings.width(), settings.height());
    int den = track.codec().time_base().den();
    frame.pts(Math.round(timeS * den));
    // A keyframe is placed by the encoder alone.
    frame.pict_type(0);
    send(track, frame);
  }

  /** Adds sound, one channel from time 0 on without a gap, in -1 to 1. */
  public void sound(float[] samples) throws IOException {
    float[] all = new float[waiting.length + samples.length];
    System.arraycopy(waiting, 0, all, 0, waiting.length);
    System.arraycopy(samples, 0, all, waiting.length, samples.length);
    int at = 0;
    for (; at + 1024 <= all.length; at += 1024) {
      sendSound(all, at, 1024);
    }
    waiting = java.util.Arrays.copyOfRange(all, at, all.length);
  }

  private void sendSound(float[] all, int at, int count) throws IOException {
    Track track = sound;
    if (track == null) {
      throw new IllegalArgumentException("this clip was begun without sound");
    }
    AVFrame frame = track.frame();
    check(av_frame_make_writable(frame), "encode");
    frame.nb_samples(count);
    try (FloatPointer data = new FloatPointer(frame.data(0))) {
      data.put(all, at, count);
    }
    frame.pts(samplesSent);
    samplesSent += count;
    send(track, frame);
  }

  private void send(Track track, @Nullable AVFrame frame) throws IOException {
    check(avcodec_send_frame(track.codec(), frame), "encode");
    while (true) {
      int code = avcodec_receive_packet(track.codec(), packet);
      if (code == AVERROR_EAGAIN() || code == AVERROR_EOF) {
        return;
      }
      check(code, "encode");
      packet.stream_index(track.stream().index());
      if (track == video && packet.duration() == 0) {
        packet.duration(track.codec().time_base().den() / settings.framesPerS());
      }
      av_packet_rescale_ts(packet, track.codec().time_base(), track.stream().time_base());
      check(av_interleaved_write_frame(format, packet), "write");
      av_packet_unref(packet);
    }
  }

  /** Ends the clip: only after this is the file whole. */
  public void finish() throws IOException {
    if (sound != null) {
      if (waiting.length > 0) {
        sendSound(waiting, 0, waiting.length);
      }
      send(sound, null);
    }
    if (video != null) {
      send(video, null);
    }
    check(av_write_trailer(format), "end");
    finished = true;
  }

  /** Frees everything; a clip that was not finished is removed. */
  @Override
  public void close() throws IOException {
    free(video);
    free(sound);
    video = null;
    sound = null;
    av_packet_free(packet);
    boolean begun = !format.isNull() && format.pb() != null && !format.pb().isNull();
    if (begun) {
      AVIOContext io = format.pb();
      avio_closep(io);
      format.pb(null);
    }
    if (!format.isNull()) {
      avformat_free_context(format);
      format.setNull();
    }
    if (begun && !finished) {
      Files.deleteIfExists(path);
    }
  }

  private static void free(@Nullable Track track) {
    if (track != null) {
      av_frame_free(track.frame());
      avcodec_free_context(track.codec());
    }
  }

  private void check(int code, String what) throws IOException {
    FfmpegErrors.check(code, what, path);
  }
}
