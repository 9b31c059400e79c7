package palmturn.app;

import static palmturn.app.TestWindow.until;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.marking.MarkPass;
import palmturn.cli.TwoReaders;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.work.Demo;
import palmturn.work.estimate.Estimating;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/**
 * Writes a picture of every state of the window, in both themes, for people to look at: {@code
 * tools/screenshots DIR}. Left out of an ordinary test run.
 */
@EnabledIfSystemProperty(named = "screenshots", matches = ".+")
class ScreenshotsTest extends ScreenshotWindow {
  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }

  @Test
  void writeThemAll(FxRobot robot) throws Exception {
    Files.createDirectories(folder);
    shoot("1-nothing-open");
    Path session = Files.createTempDirectory("screenshots").resolve("demo");
    Demo.make(session, Path.of("sample-clips-synthetic"), Progress.NONE).close();
    Platform.runLater(() -> desk.opener().open(session));
    until(60, () -> robot.lookup("#initials").tryQuery().isPresent());
    shoot("1-who-reads");
    robot.clickOn("#sheet-look");
    until(60, () -> desk.stage().pictureProperty().get() != null);
    shoot("2-trial");
    // Who is to read blind is not shown it, so it comes before anybody reads.
    Platform.runLater(flow::showLadder);
    until(60, () -> flow.ladders().wordsProperty().get().isEmpty());
    shoot("8-ladder");
    Platform.runLater(flow.athleteForm()::show);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("8-athlete");
    Platform.runLater(flow::showProgress);
    until(60, () -> flow.progress().scoreProperty().get() != null);
    shoot("12-progress");
    Platform.runLater(flow::giveUp);
    shootBothHands(robot);

    for (int i = 0; i < 3; i++) {
      robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
    }
    shoot("3-on-a-slap");

    robot.type(KeyCode.L);
    until(60, () -> desk.estimation().shown().estimateProperty().get() != null);
    shoot("4-estimate");
    Platform.runLater(desk.estimation()::showSummary);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("4-what-it-says");
    Platform.runLater(flow::giveUp);

    robot.type(KeyCode.S);
    until(60, () -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("CD").type(KeyCode.ENTER);
    until(60, () -> desk.fast().pass().positionProperty().get() != null);
    shoot("5-doubtful-times");
    robot.type(KeyCode.F);
    while (desk.fast().pass().positionProperty().get().topic() == MarkPass.Topic.TIMES) {
      robot.type(KeyCode.SPACE);
      WaitForAsyncUtils.waitForFxEvents();
    }
    robot.type(KeyCode.SPACE).type(KeyCode.DIGIT1);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("5-zone-of-every-slap");
    robot.type(KeyCode.ESCAPE);
    for (int i = 0; i < 40; i++) {
      robot.type(KeyCode.Z);
    }
    robot.type(KeyCode.HOME).type(KeyCode.T);
    for (KeyCode key : new KeyCode[] {KeyCode.F, KeyCode.J, KeyCode.D}) {
      Thread.sleep(1200);
      robot.type(key);
    }
    shoot("5-typing-along");
    robot.type(KeyCode.T);
    shoot("5-settled");

    robot.type(KeyCode.SLASH);
    Platform.runLater(
        () -> desk.prompts().questions().ask(palmturn.app.desk.Question.Page.ALL_KEYS));
    WaitForAsyncUtils.waitForFxEvents();
    shoot("6-keys");
    robot.type(KeyCode.DOWN, KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("6-keys-asking");
    robot.type(KeyCode.G);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("6-keys-clash");
    robot.type(KeyCode.ESCAPE);
    robot.type(KeyCode.ESCAPE);
    shootQuestions(session);

    Platform.runLater(
        () -> {
          look.larger();
          look.larger();
        });
    WaitForAsyncUtils.waitForFxEvents();
    shoot("7-larger-text");
    Platform.runLater(
        () -> {
          for (int i = 0; i < 9; i++) {
            look.larger();
          }
        });
    WaitForAsyncUtils.waitForFxEvents();
    shoot("7-largest-text");
    Platform.runLater(
        () -> {
          for (int i = 0; i < 9; i++) {
            look.smaller();
          }
        });
    size(1180, 720);
    shoot("8-smallest-window");
    bothHands(robot);
    shoot("13-both-hands-smallest-window");
    robot.type(KeyCode.ESCAPE);
    shootOneHandAlone(robot, session);
  }

  @Test
  void writeDifferences(FxRobot robot) throws Exception {
    Files.createDirectories(folder);
    Path made = Files.createTempDirectory("screenshots");
    Path session = TwoReaders.in(made).session();
    TrialId trial = TrialId.parse(TwoReaders.TRIAL);
    try (SessionFolder folder = Sessions.open(session)) {
      Estimating.standard().trial(folder, trial, Estimating.Options.ALL, Progress.NONE);
    }
    DifferenceReview differences = desk.review().differences();
    Platform.runLater(() -> desk.opener().open(session));
    until(60, () -> robot.lookup("#sheet-look").tryQuery().isPresent());
    robot.clickOn("#sheet-look");
    until(60, () -> desk.stage().pictureProperty().get() != null);
    shoot("12-two-readings");
    robot.type(KeyCode.I);
    until(60, () -> differences.settledProperty().get() != null);
    shoot("12-differences");
    robot.type(KeyCode.UP);
    until(60, () -> robot.lookup("#line").tryQuery().isPresent());
    shoot("12-differences-who");
    // Another theme is another window, in which nothing has been written yet.
    robot.clickOn("#line").write("QM").type(KeyCode.ENTER);
    until(60, () -> differences.decidedCount() == 1);
    robot.type(KeyCode.DOWN, 2).type(KeyCode.M).type(KeyCode.RIGHT);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("12-differences-afresh");
    robot.type(KeyCode.ESCAPE);
    size(1180, 720);
    shoot("12-differences-smallest-window");
    size(1440, 900);
    robot.type(KeyCode.P);
    until(60, () -> differences.settledProperty().get() != null);
    shoot("12-differences-from-the-estimate");
    robot.type(KeyCode.P).type(KeyCode.P);
    until(60, () -> differences.decidedCount() == 3);
    robot.type(KeyCode.RIGHT).type(KeyCode.UP, 8);
    shoot("12-differences-still-open");
    robot.type(KeyCode.RIGHT).type(KeyCode.UP);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("12-differences-settled");
    robot.type(KeyCode.ESCAPE);
    WaitForAsyncUtils.waitForFxEvents();
    shoot("12-settled-on-the-board");
    shootNothingDiffers(made, robot);
  }

  private void shootNothingDiffers(Path made, FxRobot robot) throws Exception {
    Platform.runLater(desk::close);
    until(60, () -> desk.session().folderProperty().get() == null);
    TwoReaders same = TwoReaders.in(Files.createDirectory(made.resolve("same")));
    same.bring(same.session(), "right-baseline-2", "A", Map.of());
    same.bring(same.session(), "right-baseline-2", "B", Map.of());
    Platform.runLater(() -> desk.opener().open(same.session()));
    until(60, () -> robot.lookup("#sheet-look").tryQuery().isPresent());
    robot.clickOn("#sheet-look");
    Platform.runLater(() -> desk.board().choose(new TrialId(Hand.RIGHT, "baseline", 2)));
    until(60, () -> desk.stage().pictureProperty().get() != null);
    robot.type(KeyCode.I);
    until(60, () -> desk.review().differences().settledProperty().get() != null);
    shoot("12-nothing-differs");
  }

  private void shootBothHands(FxRobot robot) throws Exception {
    bothHands(robot);
    for (int i = 0; i < 4; i++) {
      robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
    }
    robot.type(KeyCode.RIGHT, 5);
    shoot("13-both-hands");
    robot.type(KeyCode.T, KeyCode.M);
    shoot("13-both-hands-same-pace");
    robot.type(KeyCode.DOWN);
    until(60, () -> desk.pairing().pair().other().stage().showsItsFrame());
    robot.type(KeyCode.END).type(KeyCode.RIGHT, 45);
    shoot("13-both-hands-another");
    robot.type(KeyCode.UP, 2);
    until(60, () -> desk.pairing().pair().other().stage().showsItsFrame());
    shoot("13-both-hands-one-hand-twice");
    robot.type(KeyCode.ESCAPE).type(KeyCode.HOME);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void bothHands(FxRobot robot) throws Exception {
    robot.press(KeyCode.CONTROL).type(KeyCode.H).release(KeyCode.CONTROL);
    until(60, () -> desk.pairing().pair().one().stage().showsItsFrame());
    until(
        60,
        () ->
            desk.pairing().pair().other().stage().showsItsFrame()
                || !desk.pairing().pair().missingReasonProperty().get().isEmpty());
  }

  private void shootOneHandAlone(FxRobot robot, Path session) throws Exception {
    Path alone = session.resolveSibling("alone");
    try (var made = Sessions.create(alone, "H-07", DAY, Session.Facts.NONE)) {
      AddClip.add(
          made,
          Path.of("sample-clips-synthetic", "right-baseline-1.mp4"),
          AddClip.ClipRequest.of(Hand.RIGHT, "baseline"));
    }
    Platform.runLater(desk::close);
    until(60, () -> desk.session().folderProperty().get() == null);
    Platform.runLater(() -> desk.opener().open(alone));
    until(
        60,
        () ->
            desk.session().folderProperty().get() != null && desk.board().chosenCell().isPresent());
    until(60, () -> desk.stage().showsItsFrame());
    bothHands(robot);
    shoot("13-both-hands-nothing-beside");
  }

  private void shootQuestions(Path session) throws Exception {
    TrialId place = new TrialId(Hand.LEFT, "after-2", 3);
    Path clip;
    try (var clips = Files.list(session.resolve("clips"))) {
      clip = clips.sorted().findFirst().orElseThrow();
    }
    Platform.runLater(
        () -> {
          flow.askDrill();
          flow.drillForm().nameProperty().set("rest");
          flow.drillForm().handProperty().set(DrillHand.NONE);
          flow.drill();
        });
    Platform.runLater(() -> flow.droppedOn(place, List.of(clip)));
    WaitForAsyncUtils.waitForFxEvents();
    until(60, () -> flow.intake().runningProperty().get() == null);
    shoot("9-clips");
    Platform.runLater(flow::giveUp);
    Platform.runLater(flow::askDrill);
    until(60, () -> flow.drillForm().offersProperty().get().size() > 2);
    shoot("10-drill");
    Platform.runLater(() -> flow.drillForm().nameProperty().set("flips"));
    Platform.runLater(() -> flow.drillForm().move(1));
    shoot("10-drill-offered");
    Platform.runLater(flow::giveUp);
    Platform.runLater(() -> desk.board().choose(place));
    shoot("11-not-filmed");
    Platform.runLater(desk::close);
    until(60, () -> desk.session().folderProperty().get() == null);
    Platform.runLater(() -> desk.opener().open(session));
    until(60, () -> desk.session().folderProperty().get() != null);
    TrialId first = new TrialId(Hand.RIGHT, "baseline", 1);
    Platform.runLater(() -> desk.board().choose(first));
    until(
        60,
        () -> first.equals(desk.session().trialIdProperty().get()) && desk.stage().showsItsFrame());
  }
}
