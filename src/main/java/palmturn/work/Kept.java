package palmturn.work;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Properties;

/**
 * A small file among the user's own settings. One that can't be read or written is as good as none:
 * it holds nothing that can't be said again.
 */
final class Kept {
  private Kept() {}

  /** Returns what a file holds; nothing where it can't be read. */
  static Properties read(Path file) {
    Properties kept = new Properties();
    try (Reader in = new StringReader(Files.readString(file))) {
      kept.load(in);
      return kept;
    } catch (IOException | IllegalArgumentException e) {
      return new Properties();
    }
  }

  /** Puts a file in place as a whole, so that a program that ends halfway leaves the old one. */
  static void write(Path file, Properties kept) {
    try {
      StringWriter text = new StringWriter();
      kept.store(text, null);
      Path folder = Files.createDirectories(file.toAbsolutePath().getParent());
      Path next = Files.createTempFile(folder, "palmturn", ".part");
      try {
        Files.writeString(next, text.toString(), StandardCharsets.UTF_8);
        Files.move(next, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(next);
      }
    } catch (IOException e) {
      // Without it the program still does everything, and only asks again.
      return;
    }
  }
}
