package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;

/** What is handed over, written from the window by keys. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class ExporterAppTest {
  static {
    // The headless screen is smaller than the window unless told otherwise, and then overflows.
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private Path folder;
  private final TestWindow window = TestWindow.withoutEstimator();
  private Desk desk;

  @Start
  void start(Stage stage) {
    desk = window.show(stage);
  }

  @BeforeEach
  void openSession() throws Exception {
    Path session = TestWindow.session(folder);
    Platform.runLater(() -> desk.opener().open(session));
    WaitForAsyncUtils.waitFor(20, TimeUnit.SECONDS, () -> desk.stage().showsItsFrame());
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void theReportAndTheReelAreWrittenByAKeyEach(FxRobot robot) throws Exception {
    robot.type(KeyCode.F);
    robot.write("AB");
    robot.type(KeyCode.ENTER);
    for (KeyCode key : new KeyCode[] {KeyCode.J, KeyCode.F}) {
      robot.type(KeyCode.RIGHT, 12);
      robot.type(key);
    }
    WaitForAsyncUtils.waitForFxEvents();
    robot.push(KeyCode.CONTROL, KeyCode.E);
    WaitForAsyncUtils.waitForFxEvents();
    Path reports = folder.resolve("session/report");
    assertTrue(Files.size(reports.resolve("report.html")) > 0);
    assertTrue(Files.size(reports.resolve("report.pdf")) > 0);
    robot.push(KeyCode.CONTROL, KeyCode.L);
    WaitForAsyncUtils.waitForFxEvents();
    assertTrue(Files.size(reports.resolve("right-baseline-1-reel.mp4")) > 0);
    assertTrue(
        desk.prompts().notices().text().startsWith("Written"), desk.prompts().notices().text());
  }
}
