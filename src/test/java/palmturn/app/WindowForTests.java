package palmturn.app;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Objects;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.look.Look;
import palmturn.app.tasks.BackgroundTasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.work.UserError;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** The real window over a session of one trial, without an estimator. */
final class WindowForTests {
  private final BackgroundTasks background = new BackgroundTasks("test-work", Platform::runLater);
  private final BackgroundTasks keeping = new BackgroundTasks("test-keep", Platform::runLater);
  private final Desk desk =
      new Desk(
          Flows.NO_SETTINGS,
          background,
          keeping,
          Platform::runLater,
          Clock.systemUTC(),
          new EstimateRun(
              background,
              Platform::runLater,
              (folder, trial, progress) -> {
                throw new UserError("there is no estimator here");
              }));

  Desk open(Stage stage) {
    PalmturnApp.show(stage, desk, Flows.of(desk, background), new Look());
    return desk;
  }

  void close() {
    Platform.runLater(desk::close);
    WaitForAsyncUtils.waitForFxEvents();
    keeping.close();
    background.close();
  }

  /** Makes a session with a trial of sixty frames of a counter, a sixtieth of a second apart. */
  static Path session(Path folder) throws Exception {
    Path clip = folder.resolve("counter.mp4");
    try (InputStream in =
        Objects.requireNonNull(WindowForTests.class.getResourceAsStream("counter.mp4"))) {
      Files.copy(in, clip);
    }
    return session(folder, clip);
  }

  /** Makes a session with a trial of a clip. */
  static Path session(Path folder, Path clip) throws Exception {
    Path where = folder.resolve("session");
    try (SessionFolder made =
        Sessions.create(where, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      AddClip.add(made, clip, AddClip.Request.of(Hand.RIGHT, "baseline"));
    }
    return where;
  }
}
