package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avformat.AV_DISPOSITION_ATTACHED_PIC;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_AUDIO;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/** An opened media file. */
final class Container implements AutoCloseable {
  /** Larger pictures are a damaged or hostile header, not a phone's. */
  static final long MOST_PIXELS = 64L << 20;

  private final Path file;
  private final AVFormatContext context;
  private final AVStream video;

  private Container(Path file, AVFormatContext context, AVStream video) {
    this.file = file;
    this.context = context;
    this.video = video;
  }

  /**
   * Opens a file and finds its video track.
   *
   * @throws ClipException if the file can't be read, is no clip, or has no picture that can be
   *     decoded
   */
  static Container open(Path file) throws ClipException {
    checkReadable(file);
    AVFormatContext context = new AVFormatContext(null);
    if (FilmInput.open(context, file) < 0) {
      throw new ClipException(
          name(file) + " is not a clip that can be read, or is cut off: export it again as MP4");
    }
    boolean kept = false;
    try {
      if (avformat_find_stream_info(context, (PointerPointer<?>) null) < 0) {
        throw new ClipException(name(file) + " is damaged: its tracks can't be read");
      }
      AVStream video = first(context, AVMEDIA_TYPE_VIDEO);
      if (video == null) {
        throw new ClipException(
            name(file) + " has no picture: a clip with a video track is needed");
      }
      if (avcodec_find_decoder(video.codecpar().codec_id()) == null) {
        throw new ClipException(
            "%s is coded as %s, which can't be decoded here: export it again as H.264"
                .formatted(name(file), avcodec_get_name(video.codecpar().codec_id()).getString()));
      }
      if ((long) video.codecpar().width() * video.codecpar().height() > MOST_PIXELS) {
        throw new ClipException(
            name(file) + " claims pictures too large to be real: it is damaged, copy it again");
      }
      kept = true;
      return new Container(file, context, video);
    } finally {
      if (!kept) {
        avformat_close_input(context);
      }
    }
  }

  private static void checkReadable(Path file) throws ClipException {
    if (!Files.exists(file)) {
      throw new ClipException(file + " is not there: check the path");
    }
    if (Files.isDirectory(file)) {
      throw new ClipException(file + " is a folder, not a clip");
    }
    if (!Files.isRegularFile(file)) {
      throw new ClipException(file + " is not a file: copy the clip to one");
    }
    if (!Files.isReadable(file)) {
      throw new ClipException(file + " can't be read: check its permissions");
    }
    try {
      if (Files.size(file) == 0) {
        throw new ClipException(name(file) + " is empty: copy it again");
      }
    } catch (IOException e) {
      throw new ClipException(file + " can't be read: " + e.getMessage(), e);
    }
  }

  private static @Nullable AVStream first(AVFormatContext context, int type) {
    for (int i = 0; i < context.nb_streams(); i++) {
      AVStream stream = context.streams(i);
      boolean cover = (stream.disposition() & AV_DISPOSITION_ATTACHED_PIC) != 0;
      if (stream.codecpar().codec_type() == type && !cover) {
        return stream;
      }
    }
    return null;
  }

  static String name(Path file) {
    Path name = file.getFileName();
    return name == null ? file.toString() : name.toString();
  }

  String name() {
    return name(file);
  }

  AVFormatContext context() {
    return context;
  }

  AVStream video() {
    return video;
  }

  @Nullable AVStream sound() {
    return first(context, AVMEDIA_TYPE_AUDIO);
  }

  @Override
  public void close() {
    avformat_close_input(context);
  }
}
