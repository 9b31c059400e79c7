package palmturn.work;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import palmturn.json.JsonException;

/** A JSON file that a coach may edit, in the user's settings or in a session. */
final class EditedFile {
  private static final long MAX_BYTES = 4L << 20;

  private EditedFile() {}

  /**
   * Makes something of a file's text.
   *
   * @param <T> what it makes
   */
  @FunctionalInterface
  interface Form<T> {
    T read(String text) throws JsonException;
  }

  /**
   * Reads a file.
   *
   * @param command that writes one that is right
   * @throws UserError if it can't be read or has a fault; it names the file and what to do
   */
  static <T> T read(Path file, String command, Form<T> form) throws UserError {
    try {
      if (Files.size(file) > MAX_BYTES) {
        throw new UserError("%s is too large to hold %s".formatted(file, command));
      }
      return form.read(Files.readString(file));
    } catch (JsonException e) {
      throw new UserError(
          "%s: %s; correct it there (palmturn %s --write FILE writes one that is right)"
              .formatted(file, e.getMessage(), command),
          e);
    } catch (CharacterCodingException e) {
      throw new UserError(file + " is not UTF-8 text: save it as UTF-8", e);
    } catch (IOException e) {
      throw new UserError(file + " can't be read: is it a file, and yours to read?", e);
    }
  }
}
