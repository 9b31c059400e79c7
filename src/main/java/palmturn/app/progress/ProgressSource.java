package palmturn.app.progress;

import java.nio.file.Path;
import palmturn.work.UserError;
import palmturn.work.score.AthleteProgress;

/** Finds the sessions of a session's athlete; tests put their own in its place. */
@FunctionalInterface
public interface ProgressSource {
  /**
   * Returns the athlete's progress over a session and those beside it.
   *
   * @throws UserError if the session can't be read
   */
  AthleteProgress of(Path session) throws UserError;
}
