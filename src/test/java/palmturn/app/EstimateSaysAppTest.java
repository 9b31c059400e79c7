package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.until;

import java.util.List;
import javafx.application.Platform;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import palmturn.app.desk.Question;
import palmturn.store.SessionFolder;
import palmturn.trial.SampleFiles;
import palmturn.trial.TrialId;

/** What an estimate says, in the real window, by its key. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class EstimateSaysAppTest extends OneTrialWindow {
  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }

  @Test
  void whatWasFoundAndTheWarningsAreListedUntilClosed(FxRobot robot) throws Exception {
    try (SessionFolder made = SessionFolder.open(session)) {
      made.keep(TrialId.parse("right-baseline-1"), SampleFiles.fullEstimate());
    }
    Platform.runLater(() -> desk.opener().open(session));
    // Whoever opens a session that the program has read in is asked for initials.
    until(() -> desk.prompts().questions().currentProperty().get() instanceof Question.Reader);
    Platform.runLater(
        () -> ((Question.Reader) desk.prompts().questions().current()).then().accept("AB"));
    until(() -> desk.stage().showsItsFrame());
    robot.press(KeyCode.SHIFT).type(KeyCode.L).release(KeyCode.SHIFT);
    until(
        () ->
            desk.prompts().questions().currentProperty().get() instanceof Question.EstimateDetails);
    List<String> words =
        robot.lookup("#estimate-says .label").queryAllAs(Label.class).stream()
            .map(Label::getText)
            .toList();
    assertTrue(words.containsAll(List.of("turn", "elbow", "sources")), words.toString());
    assertTrue(words.contains("▲ Zones are not told."), words.toString());
    robot.type(KeyCode.ESCAPE);
    until(() -> desk.prompts().questions().currentProperty().get() == null);
  }

  @Test
  void withoutAnEstimateItIsSaidHowToHaveOne(FxRobot robot) throws Exception {
    open();
    robot.press(KeyCode.SHIFT).type(KeyCode.L).release(KeyCode.SHIFT);
    until(() -> desk.prompts().notices().text().contains("not estimated yet: L has"));
  }
}
