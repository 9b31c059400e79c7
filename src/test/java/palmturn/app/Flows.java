package palmturn.app;

import java.nio.file.Path;
import java.time.Clock;
import javafx.application.Platform;
import palmturn.app.desk.Desk;
import palmturn.app.session.ClipProbe;
import palmturn.app.session.SessionFlow;
import palmturn.app.tasks.Tasks;
import palmturn.settings.RecentSessions;
import palmturn.settings.SeenMessages;

/** Session flows that leave the user's own settings alone. */
final class Flows {
  /** Where no settings lie. */
  static final Path NO_SETTINGS = Path.of("no-settings");

  private Flows() {}

  static SessionFlow of(Desk desk, Tasks tasks) {
    return of(desk, tasks, RecentSessions.inMemory());
  }

  static SessionFlow of(Desk desk, Tasks tasks, RecentSessions recents) {
    return new SessionFlow(
        desk,
        recents,
        SeenMessages.inMemory(),
        tasks,
        Platform::runLater,
        Clock.systemUTC(),
        ClipProbe.standard());
  }
}
