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
 * A small file among the user's own settings. Of most, one that can't be read or written is as good
 * as none: they hold nothing that can't be said again.
 */
final class Kept {
  private Kept() {}

  /** Returns what a file holds; nothing where it can't be read. */
  static Properties read(Path file) {
    try {
      return load(file);
    } catch (IOException | IllegalArgumentException e) {
      return new Properties();
    }
  }

  /**
   * Returns what a file holds.
   *
   * @throws IllegalArgumentException when it is not of this form
   */
  static Properties load(Path file) throws IOException {
    Properties kept = new Properties();
    try (Reader in = new StringReader(Files.readString(file))) {
      kept.load(in);
    }
    return kept;
  }

  /** Puts a file in place where that can be done. */
  static void write(Path file, Properties kept) {
    try {
      store(file, kept);
    } catch (IOException e) {
      // Without it the program still does everything, and only asks again.
      return;
    }
  }

  /** Puts a file in place as a whole, so that a program that ends halfway leaves the old one. */
  static void store(Path file, Properties kept) throws IOException {
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
  }
}
