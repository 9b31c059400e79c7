package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.nio.file.Files;
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
import palmturn.app.desk.Question;
import palmturn.app.estimate.MadeEstimates;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyMap;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.TrialId;

/** The keys themselves: changed on the sheet of all keys, printed, and told in the row. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class KeysAppTest {
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
  void keyChangedOnTheSheetMarksAndIsToldFromThenOn(FxRobot robot) throws Exception {
    open(TestWindow.session(folder));
    Platform.runLater(() -> desk.session().setReader("AK"));
    Platform.runLater(() -> desk.prompts().questions().ask(Question.Page.ALL_KEYS));
    WaitForAsyncUtils.waitForFxEvents();
    robot.type(KeyCode.DOWN, KeyCode.UP, KeyCode.ENTER, KeyCode.G);
    assertTrue(text(robot, "#keys-words").startsWith("G is “start or end: target moved”."));
    robot.type(KeyCode.TAB);
    assertTrue(text(robot, "#keys-words").startsWith("That key can't be used."));
    robot.type(KeyCode.F9);
    assertEquals("“palm slap at this frame” is F9 now.", text(robot, "#keys-words"));
    robot.type(KeyCode.ESCAPE);
    WaitForAsyncUtils.waitForFxEvents();

    assertEquals("F9", shownKey(robot, "palm"));
    robot.type(KeyCode.F);
    assertEquals(0, marks());
    robot.type(KeyCode.F9);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(Side.PALM, desk.marking().slapProperty().get().side());
  }

  @Test
  void numberOpensOneOfTheLastSessions(FxRobot robot) throws Exception {
    Path session = TestWindow.session(folder);
    open(session);
    Platform.runLater(desk::close);
    until(() -> desk.session().folderProperty().get() == null);
    robot.type(KeyCode.DIGIT2);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(null, desk.session().folderProperty().get());
    robot.type(KeyCode.DIGIT1);
    until(() -> desk.stage().pictureProperty().get() != null);
  }

  @Test
  void whoReadsBlindIsNotRemindedOfTheEstimate(FxRobot robot) throws Exception {
    Path session = TestWindow.session(folder);
    try (SessionFolder made = SessionFolder.open(session)) {
      made.keep(TRIAL, MadeEstimates.fourSlaps());
    }
    Platform.runLater(() -> desk.session().setReader("AK"));
    open(session);
    assertEquals("H", shownKey(robot, "hide the estimate"));
    robot.type(KeyCode.H);
    assertEquals("H", shownKey(robot, "show the estimate"));
    robot.type(KeyCode.H);
    Platform.runLater(desk::close);
    until(() -> desk.session().folderProperty().get() == null);
    try (SessionFolder made = SessionFolder.open(session)) {
      made.keep(TRIAL, MadeEstimates.fourSlaps().toReading("BM"), "started");
    }
    open(session);
    assertTrue(
        robot.lookup("#hints .key-words").<Label>queryAll().stream()
            .noneMatch(words -> words.getText().contains("estimate")));
    robot.type(KeyCode.H);
    assertEquals("H", shownKey(robot, "hide the estimate"));
  }

  @Test
  void printedPageHoldsEveryListedKeyAsItIsNow() throws Exception {
    Path[] shown = new Path[1];
    KeyMap changed = KeyMap.DEFAULT.with(Action.PALM, "F9");
    Platform.runLater(
        () -> {
          desk.prompts().keys().set(changed);
          new KeySheetPrinter(
                  desk.prompts().keys(),
                  desk.prompts().questions(),
                  Tasks.direct(),
                  folder,
                  file -> shown[0] = file)
              .run();
        });
    WaitForAsyncUtils.waitForFxEvents();
    String page = Files.readString(shown[0]);
    assertEquals(
        "Written to %s: print it from the browser.".formatted(folder.resolve("keys.html")),
        desk.prompts().keys().change().wordsProperty().get());
    assertTrue(page.contains("<td><kbd>F9</kbd></td><td>palm slap at this frame</td>"));
    assertTrue(page.contains("One key is changed."));
    KeySheetPrinter.lines(changed)
        .forEach(line -> assertTrue(page.contains("<td>" + line.words() + "</td>"), line::words));
  }

  private void open(Path session) throws Exception {
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
  }

  private int marks() {
    WaitForAsyncUtils.waitForFxEvents();
    var reading = desk.marking().readingProperty().get();
    return reading == null ? 0 : reading.slaps().size();
  }

  /** Returns the cap before some words of the row. */
  private static String shownKey(FxRobot robot, String words) {
    WaitForAsyncUtils.waitForFxEvents();
    Label there =
        robot.lookup("#hints .key-words").<Label>queryAll().stream()
            .filter(each -> each.getText().equals(words))
            .findFirst()
            .orElseThrow();
    return ((Label) there.getParent().getChildrenUnmodifiable().get(0)).getText();
  }
}
