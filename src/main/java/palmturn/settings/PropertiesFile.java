package palmturn.settings;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Properties;

/** A small file of names and values, replaced as a whole so that a crash leaves the old one. */
public final class PropertiesFile {
  private PropertiesFile() {}

  /**
   * Returns what a file holds; nothing where it can't be read, so use it where that loses nothing.
   */
  public static Properties readOrEmpty(Path file) {
    try {
      return read(file);
    } catch (IOException | IllegalArgumentException e) {
      return new Properties();
    }
  }

  /**
   * Returns what a file holds.
   *
   * @throws IllegalArgumentException when it is not of this form
   */
  static Properties read(Path file) throws IOException {
    Properties values = new Properties();
    try (Reader in = new StringReader(Files.readString(file))) {
      values.load(in);
    }
    return values;
  }

  /** Writes a file where that can be done. */
  static void tryWrite(Path file, Properties values) {
    try {
      write(file, values);
    } catch (IOException e) {
      // Without it the program still does everything, and only asks again.
      return;
    }
  }

  /** Writes a file beside and moves it into place. */
  public static void write(Path file, Properties values) throws IOException {
    StringWriter text = new StringWriter();
    values.store(text, null);
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
