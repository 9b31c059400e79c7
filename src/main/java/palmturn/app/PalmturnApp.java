package palmturn.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Threads;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.session.ClipProbe;
import palmturn.app.session.SessionFlow;
import palmturn.app.stage.SoundPlayer;
import palmturn.app.tasks.BackgroundTasks;
import palmturn.app.tasks.LongTask;
import palmturn.clip.Progress;
import palmturn.settings.RecentSessions;
import palmturn.settings.SeenMessages;
import palmturn.settings.Settings;
import palmturn.settings.UserFolders;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.estimate.Estimating;

/** The app: its threads, its models and its window, wired by hand. */
public final class PalmturnApp extends Application {
  // Held so that the toolkit's remark about unnamed modules, which no user can act on, stays away.
  private static final Logger TOOLKIT = Logger.getLogger("javafx");

  private static final double WIDTH = 1440;
  private static final double HEIGHT = 900;

  private final BackgroundTasks background =
      new BackgroundTasks("palmturn-work", Platform::runLater);
  private final BackgroundTasks keeping = new BackgroundTasks("palmturn-keep", Platform::runLater);
  private final BackgroundTasks estimating =
      new BackgroundTasks("palmturn-estimate", Platform::runLater);
  private final BackgroundTasks writing = new BackgroundTasks("palmturn-write", Platform::runLater);
  private final BackgroundTasks looking = new BackgroundTasks("palmturn-look", Platform::runLater);
  private final Clock clock = Clock.systemDefaultZone();
  private final Path settings = UserFolders.settings();
  private final Desk desk =
      Desk.of(
          settings,
          new Threads(background, keeping, Platform::runLater),
          clock,
          new EstimateRun(estimating, Platform::runLater, this::estimate));

  /**
   * Opens the window and returns when it is closed.
   *
   * @param session the folder to open, or null
   */
  public static void launch(@Nullable Path session) {
    TOOLKIT.setLevel(Level.SEVERE);
    // Painters use AWT's shapes and fonts only; its own windows must not start beside the toolkit.
    System.setProperty("java.awt.headless", "true");
    Application.launch(
        PalmturnApp.class, session == null ? new String[0] : new String[] {session.toString()});
  }

  @Override
  public void start(Stage window) {
    RecentSessions recents = RecentSessions.in(settings);
    SessionFlow flow =
        SessionFlow.over(
            desk,
            new SessionFlow.Sources(
                settings,
                recents,
                SeenMessages.in(settings.resolve("messages.properties")),
                ClipProbe.standard()),
            looking,
            Platform::runLater,
            clock);
    Look look = new Look();
    Settings chosen = Settings.in(settings);
    Preferences.restore(chosen, look, desk.prompts().keys(), desk.prompts().notices()::warn);
    desk.session()
        .folderProperty()
        .addListener(
            (folder, before, now) -> {
              // Opening a session takes the line away that nobody may have read yet.
              if (before == null && desk.prompts().notices().text().isEmpty()) {
                desk.prompts().notices().warn(chosen.problem());
              }
            });
    KeySheetPrinter print =
        new KeySheetPrinter(
            desk.prompts().keys(),
            desk.prompts().questions(),
            background,
            settings,
            file -> getHostServices().showDocument(file.toUri().toString()));
    Exporter exporter =
        new Exporter(
            settings,
            desk.session(),
            desk.marking(),
            desk.prompts().notices(),
            new LongTask(writing, Platform::runLater),
            clock,
            file -> getHostServices().showDocument(file.toUri().toString()));
    show(window, desk, flow, look, print::run, exporter);
    List<String> named = getParameters().getUnnamed();
    if (!named.isEmpty()) {
      desk.opener().open(Path.of(named.get(0)));
    }
  }

  /** Puts the panes of a desk into a window. */
  static void show(
      Stage window, Desk desk, SessionFlow flow, Look look, Runnable printKeys, Exporter exporter) {
    Look.loadFonts();
    Application.setUserAgentStylesheet(Look.sheet());
    StackPane root = new StackPane();
    Runnable build =
        new Runnable() {
          private Listeners follow = new Listeners();

          @Override
          public void run() {
            follow.end();
            follow = new Listeners();
            root.setStyle(look.rootStyle());
            DeskView view = new DeskView(desk, flow, look, printKeys, exporter, follow);
            root.getChildren().setAll(view);
            view.focusStrip();
          }
        };
    look.themeProperty().addListener(changed -> build.run());
    look.scaleProperty().addListener(changed -> build.run());
    desk.prompts().keys().mapProperty().addListener(changed -> build.run());
    VoiceControl.connect(new SoundPlayer(), desk.stage(), desk.loader());
    window.setScene(new Scene(root, WIDTH, HEIGHT));
    build.run();
    window.setMinWidth(1180);
    window.setMinHeight(720);
    window.titleProperty().bind(desk.session().headingProperty().concat("   Palmturn"));
    window.show();
  }

  private Estimate estimate(SessionFolder folder, TrialId trial, Progress progress)
      throws UserError {
    return Estimating.standard(settings).trial(folder, trial, Estimating.Options.ALL, progress);
  }

  @Override
  public void stop() {
    desk.close();
    looking.close();
    writing.close();
    estimating.close();
    keeping.close();
    background.close();
  }
}
