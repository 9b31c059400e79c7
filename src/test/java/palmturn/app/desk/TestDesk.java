package palmturn.app.desk;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.concurrent.Executor;
import palmturn.app.estimate.EstimateMaker;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.UserError;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** Desks for tests. */
public final class TestDesk {
  /** An estimator for desks that have none. */
  public static final EstimateMaker NO_ESTIMATOR =
      (folder, trial, progress) -> {
        throw new UserError("there is no estimator here");
      };

  private TestDesk() {}

  /**
   * Makes a session of two trials, right and left, of sixty frames a sixtieth of a second apart.
   */
  static Path twoTrials(Path where) throws Exception {
    Path clip = where.resolve("counter.mp4");
    try (InputStream in = TestDesk.class.getResourceAsStream("/palmturn/app/counter.mp4")) {
      Files.copy(in, clip);
    }
    Path session = where.resolve("session");
    try (SessionFolder made =
        Sessions.create(session, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      AddClip.add(made, clip, AddClip.ClipRequest.of(Hand.RIGHT, "baseline"));
      AddClip.add(made, clip, AddClip.ClipRequest.of(Hand.LEFT, "baseline"));
    }
    return session;
  }

  /** Returns a desk without an estimator, whose slow work runs at once on the calling thread. */
  public static Desk direct(Path settings, Tasks writing, Executor screen, Instant now) {
    return Desk.of(
        settings,
        new Threads(Tasks.direct(), writing, screen),
        Clock.fixed(now, ZoneOffset.UTC),
        new EstimateRun(Tasks.direct(), screen, NO_ESTIMATOR));
  }
}
