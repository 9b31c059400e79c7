package palmturn.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import palmturn.trial.UserError;

/** Writes a file that a user asked for, and leaves one that is there alone unless told to. */
public final class NewFile {
  private NewFile() {}

  /**
   * Writes beside and moves into place, so that nobody meets half a file.
   *
   * @param replace whether a file that is there may go
   */
  public static void write(Path file, boolean replace, byte[] content) throws UserError {
    if (Files.isDirectory(file)) {
      throw new UserError(file + " is a folder: name a file in it");
    }
    if (Files.exists(file) && !replace) {
      throw new UserError(file + " is there already: choose another name, or say --force");
    }
    try (WorkFile part = WorkFile.file(file)) {
      Files.write(part.path(), content);
      part.moveTo(file);
    } catch (IOException e) {
      throw new UserError(
          file + " can't be written: is the folder there, not read-only, and the disk not full?",
          e);
    }
  }
}
