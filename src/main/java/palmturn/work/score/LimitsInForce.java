package palmturn.work.score;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.json.LimitsJson;
import palmturn.measure.Limits;
import palmturn.settings.EditedFile;
import palmturn.trial.UserError;
import palmturn.work.NewFile;

/**
 * The limits and margins that figures are held against: a session's own {@code limits.json}, else
 * the user's, else those that the program ships. Each file is whole; they are not mixed.
 *
 * @param file that they come from; null for the program's own
 */
public record LimitsInForce(Limits limits, @Nullable Path file) {
  /** The file's name, in the user's settings and in a session. */
  public static final String FILE = "limits.json";

  /** The program's own, whatever the user has set. */
  public static final LimitsInForce STANDARD = new LimitsInForce(LimitsJson.standard(), null);

  /**
   * Returns those that hold for a session.
   *
   * @param settings the folder of the user's settings
   * @param session the session's folder; null for what holds where a session has none of its own
   * @throws UserError if the file that counts can't be read or has a fault
   */
  public static LimitsInForce of(Path settings, @Nullable Path session) throws UserError {
    LimitsInForce users = STANDARD.in(settings);
    return session == null ? users : users.in(session);
  }

  /**
   * Returns the limits of a folder where it has a file of them, else these.
   *
   * @throws UserError if the file can't be read or has a fault
   */
  public LimitsInForce in(Path folder) throws UserError {
    Path own = folder.resolve(FILE);
    if (!Files.exists(own)) {
      return this;
    }
    return new LimitsInForce(EditedFile.read(own, "limits", LimitsJson::read), own);
  }

  /**
   * Writes the program's own to a file, to be edited.
   *
   * @param replace whether a file that is there may go
   */
  public static void write(Path file, boolean replace) throws UserError {
    NewFile.write(file, replace, LimitsJson.text().getBytes(StandardCharsets.UTF_8));
  }
}
