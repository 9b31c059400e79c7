package palmturn.app;

import static palmturn.app.TestWindow.until;

import java.nio.file.Path;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.desk.Desk;

/** The real window over one trial of sixty frames at sixty a second, shared by tests. */
abstract class OneTrialWindow {
  static {
    // The headless screen is smaller than the window unless told otherwise, and then overflows.
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir Path folder;
  Path session;
  Desk desk;
  private final TestWindow window = TestWindow.withoutEstimator();

  /** Opens the window; the tests say so themselves, where the toolkit looks. */
  void start(Stage stage) {
    desk = window.show(stage);
  }

  @BeforeEach
  void makeSession() throws Exception {
    session = TestWindow.session(folder);
  }

  @AfterEach
  void closeWindow() {
    window.close();
  }

  /** Opens the session, which nobody has read in, and waits for its picture. */
  void open() {
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().showsItsFrame());
  }
}
