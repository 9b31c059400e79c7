package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.nio.file.Path;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.image.Image;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.paint.Color;
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
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.PlacedPoints;
import palmturn.trial.TrialId;

/** The stage in the real window: what is on the screen is the frame that is named there. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class StageAppTest {
  private static final TrialId TRIAL = new TrialId(Hand.RIGHT, "baseline", 1);

  static {
    // The headless screen is smaller than the window unless told otherwise, and then overflows.
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private Path folder;
  private final TestWindow window = TestWindow.withoutEstimator();
  private Desk desk;
  private Path session;

  @Start
  void start(Stage stage) {
    desk = window.show(stage);
  }

  @BeforeEach
  void openTrial() throws Exception {
    session = TestWindow.session(folder);
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void placesSetByMouseAndKeysAreKeptAndUndone(FxRobot robot) throws Exception {
    robot.type(KeyCode.Q, KeyCode.E);
    robot.clickOn(onPicture(robot, 0.75, 0.5), MouseButton.PRIMARY);
    robot.type(KeyCode.T);
    robot.type(KeyCode.DOWN, 3);
    robot.type(KeyCode.H);
    robot.drag(onPicture(robot, 0.2, 0.2), MouseButton.PRIMARY);
    robot.dropTo(onPicture(robot, 0.5, 0.6));
    robot.type(KeyCode.S, KeyCode.RIGHT, KeyCode.DIGIT2, KeyCode.DIGIT5, KeyCode.ENTER);
    until(() -> text(robot, "#saved").startsWith("Saved "));

    double width = desk.stage().pictureProperty().get().width();
    double height = desk.stage().pictureProperty().get().height();
    PlacedPoints kept = kept();
    assertEquals(0.75 * width, kept.elbow().x(), 1.5);
    assertEquals(0.5 * height, kept.elbow().y(), 1.5);
    assertEquals(Math.rint(height / 2) + 2, kept.trunk().y());
    assertEquals(0.3 * width, kept.handRegion().width(), 2);
    assertEquals(25, kept.scale().cm());

    robot.type(KeyCode.Q, KeyCode.E, KeyCode.DELETE, KeyCode.ESCAPE);
    assertEquals(kept, desk.places().placing().places());
    robot.type(KeyCode.Q, KeyCode.E, KeyCode.DELETE, KeyCode.ENTER);
    until(() -> kept().elbow() == null);
    robot.type(KeyCode.Q, KeyCode.Z, KeyCode.ENTER);
    until(() -> kept().equals(kept));
  }

  @Test
  void undoOutsideTakesPlacesBackBetweenTheMarksThatWereMadeBeforeAndAfter(FxRobot robot)
      throws Exception {
    Platform.runLater(() -> desk.session().setReader("AK"));
    robot.type(KeyCode.F).type(KeyCode.Q, KeyCode.E, KeyCode.RIGHT, KeyCode.ENTER);
    robot.type(KeyCode.RIGHT, 9).type(KeyCode.J);
    WaitForAsyncUtils.waitForFxEvents();
    until(() -> slaps() == 2);
    robot.type(KeyCode.Z);
    assertEquals(1, slaps());
    robot.type(KeyCode.Z);
    assertEquals("Undone: set elbow", text(robot, "#step"));
    until(() -> kept().equals(PlacedPoints.NONE));
    assertEquals(1, slaps());
    robot.type(KeyCode.Z);
    assertEquals(0, slaps());
    robot.press(KeyCode.SHIFT).type(KeyCode.Z, KeyCode.Z, KeyCode.Z).release(KeyCode.SHIFT);
    assertEquals(2, slaps());
    until(() -> kept().elbow() != null);
  }

  private int slaps() {
    WaitForAsyncUtils.waitForFxEvents();
    return desk.marking().readingProperty().get().slaps().size();
  }

  @Test
  void keysThatMarkDoNotMarkWhilePlacesAreSet(FxRobot robot) {
    Platform.runLater(() -> desk.session().setReader("AK"));
    robot.type(KeyCode.Q, KeyCode.F, KeyCode.J, KeyCode.W, KeyCode.ESCAPE);
    WaitForAsyncUtils.waitForFxEvents();
    assertTrue(
        desk.marking().readingProperty().get() == null
            || desk.marking().readingProperty().get().slaps().isEmpty());
    robot.type(KeyCode.F);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(1, desk.marking().readingProperty().get().slaps().size());
  }

  @Test
  void eachThingThatIsDrawnCanBeHidden(FxRobot robot) {
    for (KeyCode what : new KeyCode[] {KeyCode.H, KeyCode.E, KeyCode.T, KeyCode.P, KeyCode.S}) {
      robot.type(KeyCode.Q, what, KeyCode.RIGHT);
      if (what == KeyCode.S) {
        robot.type(KeyCode.DIGIT9);
      }
      robot.type(KeyCode.ENTER);
      Image with = picture(robot);
      robot.type(KeyCode.Q, what, KeyCode.U, KeyCode.ENTER);
      assertNotEquals(0, differences(with, picture(robot)), what + " is hidden");
      robot.type(KeyCode.Q, what, KeyCode.U, KeyCode.ENTER);
      assertEquals(0, differences(with, picture(robot)), what + " is shown again");
    }
    Image all = picture(robot);
    robot.type(KeyCode.U);
    assertNotEquals(0, differences(all, picture(robot)));
  }

  @Test
  void zoomShowsThePixelsThatAreThere(FxRobot robot) {
    robot.clickOn(robot.lookup("#stage").<Node>query(), MouseButton.PRIMARY);
    Image whole = picture(robot);
    robot.type(KeyCode.PLUS, 6);
    assertNotEquals(0, differences(whole, picture(robot)));
    robot.type(KeyCode.DIGIT0);
    assertEquals(0, differences(whole, picture(robot)));
    robot.moveTo(robot.lookup("#stage").<Node>query()).scroll(-10);
    robot.scroll(10);
    WaitForAsyncUtils.waitForFxEvents();
    robot.type(KeyCode.DIGIT0);
    assertEquals(0, differences(whole, picture(robot)));
  }

  @Test
  void ghostOfTheFrameBeforeShinesThrough(FxRobot robot) {
    robot.type(KeyCode.RIGHT, 5);
    until(() -> text(robot, "#stage-where").equals("clip 0.083 s   frame 6 of 60"));
    Image alone = picture(robot);
    robot.type(KeyCode.B);
    until(() -> differences(alone, picture(robot)) > 0);
    robot.type(KeyCode.B);
    assertEquals(0, differences(alone, picture(robot)));
  }

  @Test
  void loopGoesRoundUntilItIsStopped(FxRobot robot) {
    robot.press(KeyCode.SHIFT).type(KeyCode.Y).release(KeyCode.SHIFT);
    until(() -> desk.stage().frameProperty().get() > 40);
    until(() -> desk.stage().frameProperty().get() < 20);
    assertEquals("looping at 1/4", text(robot, "#stage-speed"));
    robot.type(KeyCode.SPACE);
    WaitForAsyncUtils.waitForFxEvents();
    assertFalse(desk.stage().playingProperty().get());
  }

  private PlacedPoints kept() throws Exception {
    try (SessionFolder there = SessionFolder.openReadOnly(session)) {
      return there.trial(TRIAL).places();
    }
  }

  /** The counter's clip fits the pane's height, so its middle is the pane's. */
  private Point2D onPicture(FxRobot robot, double across, double down) {
    WaitForAsyncUtils.waitForFxEvents();
    Node pane = robot.lookup("#stage").query();
    var picture = desk.stage().pictureProperty().get();
    var room = pane.getLayoutBounds();
    double fit = Math.min(room.getWidth() / picture.width(), room.getHeight() / picture.height());
    return pane.localToScreen(
        Math.round((room.getWidth() - fit * picture.width()) / 2) + across * fit * picture.width(),
        Math.round((room.getHeight() - fit * picture.height()) / 2)
            + down * fit * picture.height());
  }

  private static Image picture(FxRobot robot) {
    WaitForAsyncUtils.waitForFxEvents();
    return WaitForAsyncUtils.waitForAsyncFx(
        5000, () -> robot.lookup("#stage").query().snapshot(null, null));
  }

  private static long differences(Image one, Image other) {
    long count = 0;
    for (int y = 0; y < one.getHeight(); y += 2) {
      for (int x = 0; x < one.getWidth(); x += 2) {
        Color there = one.getPixelReader().getColor(x, y);
        if (!there.equals(other.getPixelReader().getColor(x, y))) {
          count++;
        }
      }
    }
    return count;
  }
}
