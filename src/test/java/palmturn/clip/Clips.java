package palmturn.clip;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The clips of the tests, whose README names their sources. */
final class Clips {
  private Clips() {}

  /** Copies a clip out of the test resources. */
  static Path copy(Path folder, String name) throws IOException {
    Path to = folder.resolve(name);
    try (InputStream in = Clips.class.getResourceAsStream(name)) {
      Files.copy(in, to);
    }
    return to;
  }

  /** Returns the times that ffprobe printed for a clip. */
  static String times(String name) throws IOException {
    try (InputStream in = Clips.class.getResourceAsStream(name + ".times.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
