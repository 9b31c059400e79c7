package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.nio.file.Files;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.store.SessionFolder;
import palmturn.trial.Session;

/** The sheet of the athlete in the real window, by keys. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class AthleteAppTest extends OneTrialWindow {
  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }

  @BeforeEach
  void openSession() {
    open();
  }

  @Test
  void aForearmThatIsTypedIsInTheSessionsFile(FxRobot robot) throws Exception {
    robot.push(KeyCode.CONTROL, KeyCode.A);
    until(() -> robot.lookup("#athlete-forearm").tryQuery().isPresent());
    assertEquals("H-07, 14 November 2026", text(robot, "#athlete-whose"));
    robot.write("126,5").type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals("▲ a number from 10 to 100", text(robot, "#athlete-forearm-beside"));
    robot.type(KeyCode.HOME).type(KeyCode.DELETE);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals("bent elbow to wrist crease", text(robot, "#athlete-forearm-beside"));
    robot.clickOn("#athlete-pain").write("sore wrist").type(KeyCode.ENTER);
    until(() -> desk.prompts().questions().currentProperty().get() == null);
    until(() -> text(robot, "#saved").startsWith("Saved"));
    assertTrue(Files.readString(session.resolve("session.json")).contains("\"forearmCm\": 26.5,"));
    assertTrue(robot.lookup("Pain or injury: sore wrist").tryQuery().isPresent(), "on the board");
  }

  @Test
  void aWindowThatOnlyLooksShowsWhatIsKnownAndTakesNothing(FxRobot robot) throws Exception {
    Platform.runLater(desk::close);
    until(() -> desk.session().folderProperty().get() == null);
    try (SessionFolder other = SessionFolder.open(session)) {
      other.change(
          now -> now.withFacts(new Session.Facts(null, 26.5, null, null, null, null, null, null)));
      Platform.runLater(() -> desk.opener().open(session));
      until(() -> desk.stage().showsItsFrame());
      robot.clickOn("#board-athlete");
      until(() -> robot.lookup("#sheet-close").tryQuery().isPresent());
      assertTrue(robot.lookup("26.5 cm").tryQuery().isPresent());
      assertTrue(robot.lookup("#athlete-forearm").tryQuery().isEmpty());
      assertTrue(robot.lookup("#sheet-ok").tryQuery().isEmpty());
    }
  }
}
