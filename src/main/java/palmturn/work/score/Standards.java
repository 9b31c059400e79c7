package palmturn.work.score;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.advise.DrillLibrary;
import palmturn.measure.Limits;
import palmturn.trial.UserError;

/**
 * The limits and drills in force for a session: its own, else the user's, else the program's.
 *
 * @param limits that figures are held against
 * @param drills to choose from
 */
public record Standards(Limits limits, DrillLibrary drills) {
  /**
   * Returns those in force for a session.
   *
   * @param settings the folder of the user's settings
   * @param session the session's folder; null for what holds where a session has nothing of its own
   * @throws UserError if a file of limits or drills can't be read or has a fault
   */
  public static Standards of(Path settings, @Nullable Path session) throws UserError {
    return new Standards(
        LimitsInForce.of(settings, session).limits(), Drills.library(settings, session));
  }
}
