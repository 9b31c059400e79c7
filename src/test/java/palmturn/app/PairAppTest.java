package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.application.Platform;
import javafx.scene.Node;
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
import palmturn.app.pair.PairMember;
import palmturn.app.pair.TrialPair;
import palmturn.store.SessionFolder;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;
import palmturn.work.session.AddClip;

/** Both hands in the real window, over two trials of sixty frames at sixty a second. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class PairAppTest {
  private static final TrialId RIGHT = new TrialId(Hand.RIGHT, "baseline", 1);
  private static final TrialId LEFT = new TrialId(Hand.LEFT, "baseline", 1);

  static {
    // The headless screen is smaller than the window unless told otherwise, and then overflows.
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private Path folder;
  private final TestWindow window = TestWindow.withoutEstimator();
  private Desk desk;
  private TrialPair pair;

  @Start
  void start(Stage stage) {
    desk = window.show(stage);
    pair = desk.pairing().pair();
  }

  @BeforeEach
  void openRightHand() throws Exception {
    Path session = TestWindow.session(folder);
    try (SessionFolder made = SessionFolder.open(session)) {
      AddClip.add(
          made, folder.resolve("counter.mp4"), AddClip.ClipRequest.of(Hand.LEFT, "baseline"));
      made.keep(RIGHT, reading(10, 22, 34, 46), "marks");
      made.keep(LEFT, reading(6, 24, 42), "marks");
    }
    Platform.runLater(() -> desk.session().setReader("AK"));
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.session().folderProperty().get() != null);
    Platform.runLater(() -> desk.board().choose(RIGHT));
    until(
        () -> RIGHT.equals(desk.session().trialIdProperty().get()) && desk.stage().showsItsFrame());
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void bothHandsAreSteppedTogetherAndLetGoOf(FxRobot robot) {
    openPair(robot);
    assertEquals("Right hand 1, baseline", text(robot, "#pair-one-name"));
    assertEquals("Left hand 1, baseline", text(robot, "#pair-other-name"));
    assertTrue(
        x(robot, "#pair-other-name") < x(robot, "#pair-one-name"), "the left hand is on the left");
    shows(10, 6);

    robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
    shows(22, 24);
    assertEquals("Aligned on slap 2 of both, in real time", text(robot, "#pair-words"));
    assertEquals("slap 2, back", text(robot, "#pair-other-slap"));

    robot.type(KeyCode.RIGHT, 6);
    shows(28, 30);
    assertEquals("100 of 200 ms to slap 3, 50 %", text(robot, "#pair-one-interval"));
    assertEquals("100 of 300 ms to slap 3, 33 %", text(robot, "#pair-other-interval"));
    robot.type(KeyCode.T);
    shows(28, 33);
    assertEquals("150 of 300 ms to slap 3, 50 %", text(robot, "#pair-other-interval"));

    assertEquals(3, readersOpen());
    robot.type(KeyCode.ESCAPE);
    until(() -> readersOpen() == 1);
    assertFalse(robot.lookup("#pair").query().isVisible());
    until(() -> desk.stage().pictureProperty().get().index() == 28);
  }

  @Test
  void playingGoesRoundWithTheFramesOfBothTogether(FxRobot robot) {
    openPair(robot);
    robot.type(KeyCode.CLOSE_BRACKET, 2);
    robot.type(KeyCode.SPACE);
    until(() -> pair.one().stage().frameProperty().get() > 40);
    until(() -> pair.one().stage().frameProperty().get() < 20);
    robot.type(KeyCode.SPACE);
    WaitForAsyncUtils.waitForFxEvents();
    assertFalse(pair.playingProperty().get());
    int one = pair.one().stage().frameProperty().get();
    shows(one, Math.max(0, one - 4));
  }

  @Test
  void nothingMarksWhileBothAreLookedAt(FxRobot robot) {
    openPair(robot);
    robot.type(KeyCode.F, KeyCode.J, KeyCode.DELETE, KeyCode.L);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(4, desk.marking().readingProperty().get().slaps().size());
    assertNull(desk.prompts().questions().currentProperty().get());
  }

  private void openPair(FxRobot robot) {
    robot.press(KeyCode.CONTROL).type(KeyCode.H).release(KeyCode.CONTROL);
    until(() -> pair.meetingProperty().get() != null);
  }

  /** The pictures on the screen are those of the frames, not their neighbours'. */
  private void shows(int one, int other) {
    until(() -> pair.one().stage().showsItsFrame() && pair.other().stage().showsItsFrame());
    assertEquals(one, index(pair.one()));
    assertEquals(other, index(pair.other()));
  }

  private static int index(PairMember half) {
    return half.stage().pictureProperty().get().index();
  }

  private static long readersOpen() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().startsWith("frames of ") && thread.isAlive())
        .count();
  }

  private static Reading reading(int... frames) {
    List<Slap> slaps = new ArrayList<>();
    for (int frame : frames) {
      Side side = slaps.size() % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(Slap.onFrame(Slap.Kind.SLAP, frame / 60.0, 1 / 60.0, side, Zone.CENTRE));
    }
    return new Reading("AK", true, StartedFrom.NOTHING, slaps, List.of(), Extra.NONE);
  }

  private static double x(FxRobot robot, String id) {
    Node node = robot.lookup(id).query();
    return node.localToScreen(0, 0).getX();
  }
}
