package palmturn.app.progress;

import java.nio.file.Path;
import palmturn.trial.UserError;
import palmturn.work.score.AthleteProgress;

/** A source of an athlete's progress; tests put their own in its place. */
@FunctionalInterface
public interface ProgressSource {
  /**
   * Returns the athlete's progress over a session and those beside it.
   *
   * @throws UserError if the session can't be read
   */
  AthleteProgress of(Path session) throws UserError;
}
