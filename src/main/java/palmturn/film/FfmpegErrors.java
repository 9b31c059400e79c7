package palmturn.film;

import static org.bytedeco.ffmpeg.global.avutil.av_strerror;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.javacpp.BytePointer;

/** FFmpeg's error codes as exceptions that name the action and the file. */
final class FfmpegErrors {
  private FfmpegErrors() {}

  /**
   * Throws for a negative code.
   *
   * @throws IOException for a negative code, in one line
   */
  static void check(int code, String what, Path path) throws IOException {
    if (code < 0) {
      try (BytePointer text = new BytePointer(256)) {
        av_strerror(code, text, 256);
        throw new IOException("can't %s %s: %s".formatted(what, path.getFileName(), upToNul(text)));
      }
    }
  }

  /** A pointer's text ends at its NUL only where no limit is set. */
  private static String upToNul(BytePointer text) {
    return text.limit(0).getString(StandardCharsets.UTF_8);
  }
}
