package palmturn.app;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.scene.control.Label;
import javafx.stage.Stage;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;
import palmturn.app.desk.TestDesk;
import palmturn.app.desk.Threads;
import palmturn.app.estimate.EstimateMaker;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.look.Look;
import palmturn.app.session.ClipProbe;
import palmturn.app.session.SessionFlow;
import palmturn.app.tasks.BackgroundTasks;
import palmturn.app.tasks.LongTask;
import palmturn.app.tasks.Tasks;
import palmturn.settings.RecentSessions;
import palmturn.settings.SeenMessages;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.work.estimate.Estimating;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** The real window as tests open it, which leaves the user's own settings alone. */
final class TestWindow {
  /** A folder without settings. */
  private static final Path NO_SETTINGS = Path.of("no-settings");

  private final BackgroundTasks background = new BackgroundTasks("test-work", Platform::runLater);
  private final BackgroundTasks writing = new BackgroundTasks("test-keep", Platform::runLater);
  private final BackgroundTasks estimating =
      new BackgroundTasks("test-estimate", Platform::runLater);
  private final RecentSessions recents = RecentSessions.inMemory();
  private final Desk desk;
  private final SessionFlow flow;

  private TestWindow(EstimateMaker estimator) {
    desk =
        Desk.of(
            NO_SETTINGS,
            new Threads(background, writing, Platform::runLater),
            Clock.systemUTC(),
            new EstimateRun(estimating, Platform::runLater, estimator));
    flow =
        SessionFlow.over(
            desk,
            new SessionFlow.Sources(
                NO_SETTINGS, recents, SeenMessages.inMemory(), ClipProbe.standard()),
            background,
            Platform::runLater,
            Clock.systemUTC());
  }

  /** Returns a window in which nothing can be estimated. */
  static TestWindow withoutEstimator() {
    return new TestWindow(TestDesk.NO_ESTIMATOR);
  }

  /** Returns a window with the program's own estimator. */
  static TestWindow withEstimator() {
    return with(
        (session, trial, progress) ->
            Estimating.standard().trial(session, trial, Estimating.Options.ALL, progress));
  }

  /** Returns a window with an estimator. */
  static TestWindow with(EstimateMaker estimator) {
    return new TestWindow(estimator);
  }

  /** Shows the window, and returns its models. */
  Desk show(Stage stage) {
    return show(stage, new Look());
  }

  /** Shows the window in a look, and returns its models. */
  Desk show(Stage stage, Look look) {
    Exporter exporter =
        new Exporter(
            NO_SETTINGS,
            desk.session(),
            desk.marking(),
            desk.prompts().notices(),
            new LongTask(Tasks.direct(), Runnable::run),
            Clock.systemDefaultZone(),
            file -> {});
    PalmturnApp.show(stage, desk, flow, look, () -> {}, exporter);
    return desk;
  }

  SessionFlow flow() {
    return flow;
  }

  RecentSessions recents() {
    return recents;
  }

  /** Closes the window's session and waits for all that was asked for. */
  void close() {
    Platform.runLater(desk::close);
    WaitForAsyncUtils.waitForFxEvents();
    estimating.close();
    writing.close();
    background.close();
  }

  /** Makes a session with a trial of sixty frames of a counter, a sixtieth of a second apart. */
  static Path session(Path folder) throws Exception {
    Path clip = folder.resolve("counter.mp4");
    try (InputStream in =
        Objects.requireNonNull(TestWindow.class.getResourceAsStream("counter.mp4"))) {
      Files.copy(in, clip);
    }
    return session(folder, clip);
  }

  /** Makes a session with a trial of a clip. */
  static Path session(Path folder, Path clip) throws Exception {
    Path where = folder.resolve("session");
    try (SessionFolder made =
        Sessions.create(where, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      AddClip.add(made, clip, AddClip.ClipRequest.of(Hand.RIGHT, "baseline"));
    }
    return where;
  }

  /** Returns the text of a label. */
  static String text(FxRobot robot, String id) {
    WaitForAsyncUtils.waitForFxEvents();
    return robot.lookup(id).queryAs(Label.class).getText();
  }

  /** Waits up to twenty seconds until a condition holds. */
  static void until(Callable<Boolean> holds) {
    until(20, holds);
  }

  /** Waits until a condition holds, or fails. */
  static void until(int seconds, Callable<Boolean> holds) {
    try {
      WaitForAsyncUtils.waitFor(seconds, TimeUnit.SECONDS, holds);
    } catch (TimeoutException e) {
      throw new AssertionError("waited in vain", e);
    }
    WaitForAsyncUtils.waitForFxEvents();
  }
}
