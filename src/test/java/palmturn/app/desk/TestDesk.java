package palmturn.app.desk;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.concurrent.Executor;
import palmturn.app.estimate.EstimateMaker;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.tasks.Tasks;
import palmturn.trial.UserError;

/** Desks for tests. */
public final class TestDesk {
  /** An estimator for desks that have none. */
  public static final EstimateMaker NO_ESTIMATOR =
      (folder, trial, progress) -> {
        throw new UserError("there is no estimator here");
      };

  private TestDesk() {}

  /** Returns a desk without an estimator, whose slow work runs at once on the calling thread. */
  public static Desk direct(Path settings, Tasks writing, Executor screen, Instant now) {
    return Desk.of(
        settings,
        new Threads(Tasks.direct(), writing, screen),
        Clock.fixed(now, ZoneOffset.UTC),
        new EstimateRun(Tasks.direct(), screen, NO_ESTIMATOR));
  }
}
