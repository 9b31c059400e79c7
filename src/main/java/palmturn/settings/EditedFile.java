package palmturn.settings;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import palmturn.json.JsonException;

/** A JSON file that a coach may edit, in the user's settings or in a session. */
public final class EditedFile {
  private static final long MAX_BYTES = 4L << 20;

  private EditedFile() {}

  /**
   * The form of a file.
   *
   * @param <T> what a file of it holds
   */
  @FunctionalInterface
  public interface Form<T> {
    T read(String text) throws JsonException;
  }

  /**
   * Reads a file.
   *
   * @param command the subcommand that writes a valid one, which names what the file holds
   * @throws SettingsException if it can't be read or has a fault; it names the file and what to do
   */
  public static <T> T read(Path file, String command, Form<T> form) throws SettingsException {
    try {
      if (Files.size(file) > MAX_BYTES) {
        throw new SettingsException("%s is too large to hold %s".formatted(file, command));
      }
      return form.read(Files.readString(file));
    } catch (JsonException e) {
      throw new SettingsException(
          "%s: %s; correct it there (palmturn %s --write FILE writes one that is right)"
              .formatted(file, e.getMessage(), command),
          e);
    } catch (CharacterCodingException e) {
      throw new SettingsException(file + " is not UTF-8 text: save it as UTF-8", e);
    } catch (IOException e) {
      throw new SettingsException(file + " can't be read: is it a file, and yours to read?", e);
    }
  }
}
