package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.time.Instant;
import java.util.List;
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
import palmturn.trial.Extra;
import palmturn.trial.Message;

/** Messages in the real window, by keys, over one trial of sixty frames at sixty a second. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class MessagesAppTest extends OneTrialWindow {
  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }

  @BeforeEach
  void openSession() throws Exception {
    Message asked =
        new Message(
            "athlete",
            Instant.parse("2026-11-14T12:00:00Z"),
            null,
            null,
            "is the elbow still enough?",
            Extra.NONE);
    try (SessionFolder made = SessionFolder.open(session)) {
      made.change(now -> now.withMessages(List.of(asked)));
    }
    open();
  }

  @Test
  void aMessageIsWrittenAtTheFrameFoundAgainAndTakenBack(FxRobot robot) throws Exception {
    assertEquals("1 message, 1 new", text(robot, "#messages"));
    robot.type(KeyCode.RIGHT, 12);
    robot.type(KeyCode.M);
    until(() -> robot.lookup("#message").tryQuery().isPresent());
    assertEquals("1 message", text(robot, "#messages"));
    // These letters stand for marks where nothing is written.
    robot.write("fjd").type(KeyCode.ENTER);
    until(() -> desk.prompts().questions().currentProperty().get() == null);
    assertEquals("message at 0.200 s", text(robot, "#step"));
    until(() -> text(robot, "#saved").startsWith("Saved"));
    List<Message> kept = onDisk();
    assertEquals("fjd", kept.get(1).text());
    assertEquals("coach", kept.get(1).from());
    assertEquals(0.2, kept.get(1).timeS(), 1e-6);
    assertEquals("right-baseline-1", kept.get(1).trial().name());

    robot.type(KeyCode.HOME).type(KeyCode.M).type(KeyCode.UP).type(KeyCode.ENTER);
    until(() -> desk.stage().frameProperty().get() == 12 && desk.stage().showsItsFrame());
    robot.type(KeyCode.M).type(KeyCode.UP, 2).type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(12, desk.stage().frameProperty().get(), "the first is about the whole session");
    assertFalse(robot.lookup("#message").tryQuery().isPresent());

    robot.type(KeyCode.Z);
    until(() -> text(robot, "#step").equals("Undone: message at 0.200 s"));
    until(() -> onDisk().size() == 1);
    robot.press(KeyCode.SHIFT).type(KeyCode.Z).release(KeyCode.SHIFT);
    until(() -> onDisk().equals(kept));
  }

  @Test
  void aWindowThatOnlyLooksShowsThemAndTakesNone(FxRobot robot) throws Exception {
    Platform.runLater(desk::close);
    until(() -> desk.session().folderProperty().get() == null);
    try (SessionFolder other = SessionFolder.open(session)) {
      Platform.runLater(() -> desk.opener().open(session));
      until(() -> desk.stage().showsItsFrame());
      robot.type(KeyCode.M);
      until(() -> robot.lookup("#sheet-close").tryQuery().isPresent());
      assertFalse(robot.lookup("#message").tryQuery().isPresent());
      assertTrue(desk.session().readOnlyProperty().get());
      robot.type(KeyCode.ESCAPE);
      until(() -> desk.prompts().questions().currentProperty().get() == null);
      assertEquals(1, other.session().messages().size());
    }
  }

  private List<Message> onDisk() throws Exception {
    try (SessionFolder looking = SessionFolder.openReadOnly(session)) {
      return looking.session().messages();
    }
  }
}
