package palmturn.app;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.scene.control.Label;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;

/** What tests of the real window over one trial of sixty frames at sixty a second share. */
abstract class OverOneTrial {
  static {
    // The headless screen is smaller than the window unless told otherwise, and then overflows.
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir Path folder;
  Path session;
  Desk desk;
  private final WindowForTests window = new WindowForTests();

  /** Opens the window; the tests say so themselves, where the toolkit looks. */
  void start(Stage stage) {
    desk = window.open(stage);
  }

  @BeforeEach
  void makeSession() throws Exception {
    session = WindowForTests.session(folder);
  }

  @AfterEach
  void closeWindow() {
    window.close();
  }

  /** Opens the session, which nobody has read in, and waits for its picture. */
  void open() {
    Platform.runLater(() -> desk.open(session));
    until(() -> desk.stage().showsItsFrame());
  }

  static String text(FxRobot robot, String id) {
    WaitForAsyncUtils.waitForFxEvents();
    return robot.lookup(id).queryAs(Label.class).getText();
  }

  static void until(Callable<Boolean> holds) {
    try {
      WaitForAsyncUtils.waitFor(20, TimeUnit.SECONDS, holds);
    } catch (TimeoutException e) {
      throw new AssertionError("waited in vain", e);
    }
    WaitForAsyncUtils.waitForFxEvents();
  }
}
