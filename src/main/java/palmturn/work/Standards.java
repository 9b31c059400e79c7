package palmturn.work;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.advise.DrillLibrary;
import palmturn.measure.Limits;

/**
 * What holds for a session, of its own, the user's or the program's.
 *
 * @param limits that figures are held against
 * @param drills to choose from
 */
public record Standards(Limits limits, DrillLibrary drills) {
  /**
   * Returns what holds for a session.
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
