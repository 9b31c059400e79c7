package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.until;

import java.nio.file.Path;
import javafx.application.Platform;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;
import palmturn.app.estimate.MadeEstimates;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** Opens and closes the athlete's progress as a person does. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class ProgressAppTest {
  private static final TrialId TRIAL = new TrialId(Hand.RIGHT, "baseline", 1);

  static {
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private Path folder;

  private final TestWindow window = TestWindow.withoutEstimator();
  private Desk desk;

  @Start
  void start(Stage stage) {
    desk = window.show(stage);
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void ownSessionShowsAndEscClosesIt(FxRobot robot) throws Exception {
    open("BM");
    press(robot);
    until(() -> words(robot).contains("one session"));
    assertEquals(1, robot.lookup("#progress-speed-right").queryAll().size());
    robot.type(KeyCode.ESCAPE);
    WaitForAsyncUtils.waitForFxEvents();
    assertNull(desk.prompts().questions().currentProperty().get());
  }

  @Test
  void paceLadderShowsAHandsPacesWithTheirCautions(FxRobot robot) throws Exception {
    open("BM");
    robot.push(KeyCode.CONTROL, KeyCode.K);
    until(() -> robot.lookup("#ladder-right").tryQuery().isPresent());
    assertTrue(robot.lookup("60 %").tryQuery().isPresent());
    assertTrue(
        robot.lookup("#ladder-cautions").<Label>query().getText().contains("A sore or red palm"));
    assertTrue(robot.lookup("#ladder-left").tryQuery().isEmpty(), "it has no trial");
  }

  @Test
  void whoIsStillToReadBlindIsNotShownOthersFigures(FxRobot robot) throws Exception {
    open("AK");
    press(robot);
    assertNull(desk.prompts().questions().currentProperty().get());
    assertTrue(desk.prompts().notices().text().contains("that you read blind"));
    Platform.runLater(desk.prompts().notices()::clear);
    robot.push(KeyCode.CONTROL, KeyCode.K);
    WaitForAsyncUtils.waitForFxEvents();
    assertNull(desk.prompts().questions().currentProperty().get());
    assertTrue(desk.prompts().notices().text().contains("that you read blind"));
  }

  /** Opens a session that BM has read. */
  private void open(String reader) throws Exception {
    Path session = TestWindow.session(folder);
    try (SessionFolder made = SessionFolder.open(session)) {
      made.keep(TRIAL, MadeEstimates.fourSlaps().toReading("BM"), "started");
    }
    Platform.runLater(() -> desk.session().setReader(reader));
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
  }

  private static void press(FxRobot robot) {
    robot.press(KeyCode.CONTROL).type(KeyCode.G).release(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private static String words(FxRobot robot) {
    return robot.lookup("#progress-words").<Label>tryQuery().map(Label::getText).orElse("");
  }
}
