package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.bytedeco.ffmpeg.global.avutil.AV_LOG_QUIET;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_log_set_level;
import static org.bytedeco.ffmpeg.global.avutil.av_max_alloc;

import java.nio.file.Path;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;

/**
 * The only place where FFmpeg opens a file for reading: media files from this computer, with memory
 * bounded against damaged or hostile headers.
 */
public final class FilmInput {
  /** A text or playlist would make FFmpeg open other files or the network. */
  private static final String FORMATS = "mov,matroska,avi,mpegts,mpeg,flv,asf,ogg,wav";

  /** Largest single allocation; the largest accepted picture needs less. */
  private static final long MOST_BYTES = 512L << 20;

  private FilmInput() {}

  /**
   * Opens a file.
   *
   * @param context is initialised here, and freed where opening fails
   * @return FFmpeg's answer, negative where the file is no film that can be read
   */
  public static int open(AVFormatContext context, Path file) {
    av_log_set_level(AV_LOG_QUIET);
    av_max_alloc(MOST_BYTES);
    AVDictionary options = new AVDictionary(null);
    av_dict_set(options, "format_whitelist", FORMATS, 0);
    av_dict_set(options, "protocol_whitelist", "file", 0);
    // Without the prefix a colon in a name would read as a protocol.
    int opened = avformat_open_input(context, "file:" + file.toAbsolutePath(), null, options);
    av_dict_free(options);
    return opened;
  }
}
