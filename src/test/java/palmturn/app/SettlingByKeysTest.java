package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javafx.application.Platform;
import javafx.scene.control.ListView;
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
import palmturn.app.board.Cell;
import palmturn.app.desk.Desk;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.differences.ReviewItem;
import palmturn.cli.TwoReaders;
import palmturn.settle.SettledTrial;
import palmturn.store.SessionFolder;
import palmturn.trial.Settlement;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.work.score.LastSettled;
import palmturn.work.session.Sessions;

/** Two fictional readers whose mistakes are known, settled in the window by key events alone. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class SettlingByKeysTest {
  static {
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private static Path folder;

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
  void everyPlantedDifferenceIsListedAndSettlingThemAllGivesTheTruth(FxRobot robot)
      throws Exception {
    TwoReaders readers = TwoReaders.in(folder.resolve("keys"));
    onlyLook(readers, robot);
    robot.type(KeyCode.I);
    until(30, () -> differences().settledProperty().get() != null);

    Set<String> planted = new TreeSet<>();
    readers.plantedA.forEach((row, what) -> planted.add(row + " " + what));
    readers.plantedB.forEach((row, what) -> planted.add(row + " " + what));
    Set<String> listed = new TreeSet<>();
    List<ReviewItem> items = differences().itemsProperty().get();
    items.forEach(item -> listed.add(row(readers, item) + " " + word(item)));
    assertEquals(planted, listed);
    assertEquals(planted.size(), items.size());
    assertEquals(
        planted.size(),
        robot.lookup("#differences-rows").queryAs(ListView.class).getItems().size());

    int pressed = 0;
    while (differences().current() != null) {
      ReviewItem item = differences().current();
      robot.type(readers.plantedA.containsKey(row(readers, item)) ? KeyCode.DOWN : KeyCode.UP);
      pressed++;
      if (pressed == 1) {
        until(30, () -> robot.lookup("#line").tryQuery().isPresent());
        robot.write("QM").type(KeyCode.ENTER);
      }
      until(30, () -> !item.equals(differences().current()));
      assertEquals(
          pressed + " of " + planted.size() + " decided", text(robot, "#differences-progress"));
    }
    assertEquals(planted.size(), pressed);
    assertEquals("Settled", text(robot, "#question"));
    until(30, () -> desk.session().saving().wordsProperty().get().startsWith("Saved"));
    assertEquals(
        Cell.State.SETTLED, desk.board().chosenCell().orElseThrow().state(), "on the board");
    robot.type(KeyCode.ESCAPE);
    until(30, () -> !differences().isOpen());

    try (SessionFolder again = Sessions.openReadOnly(readers.session())) {
      Trial trial = again.trial(TrialId.parse(TwoReaders.TRIAL));
      Settlement settlement = trial.settlements().get(0);
      assertEquals(planted.size(), settlement.slaps().size());
      assertTrue(settlement.slaps().stream().allMatch(each -> each.by().equals("QM")));
      SettledTrial settled = LastSettled.of(trial);
      assertEquals(0, settled.open());
      assertEquals(truth(readers), marks(settled.reading().slaps()));
    }
  }

  @Test
  void secondReaderIsNotShownTheOthersMarks(FxRobot robot) throws Exception {
    TwoReaders readers = TwoReaders.in(folder.resolve("blind"));
    Platform.runLater(() -> desk.opener().open(readers.session()));
    until(30, () -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("CD").type(KeyCode.ENTER);
    until(30, () -> desk.stage().pictureProperty().get() != null);
    robot.type(KeyCode.F);
    until(30, () -> desk.marking().readingProperty().get() != null);
    until(30, () -> desk.marking().readingProperty().get().reader().equals("CD"));
    assertFalse(desk.review().offeredProperty().get());
    robot.type(KeyCode.I);
    WaitForAsyncUtils.waitForFxEvents();
    assertFalse(differences().isOpen());
    assertTrue(desk.prompts().notices().text().startsWith("finish your own reading first"));
  }

  @Test
  void secondWindowLooksButDoesNotDecide(FxRobot robot) throws Exception {
    TwoReaders readers = TwoReaders.in(folder.resolve("held"));
    try (SessionFolder other = Sessions.open(readers.session())) {
      Platform.runLater(() -> desk.opener().open(readers.session()));
      until(30, () -> desk.stage().pictureProperty().get() != null);
      robot.type(KeyCode.I);
      until(30, () -> differences().settledProperty().get() != null);
      robot.type(KeyCode.UP);
      WaitForAsyncUtils.waitForFxEvents();
      assertTrue(desk.prompts().notices().text().startsWith("this session is read-only"));
      assertEquals(0, differences().decidedCount());
      assertEquals(0, differences().positionProperty().get());
      robot.type(KeyCode.RIGHT);
      WaitForAsyncUtils.waitForFxEvents();
      assertEquals(1, differences().positionProperty().get());
      assertEquals(List.of(), other.trial(TrialId.parse(TwoReaders.TRIAL)).settlements());
    }
  }

  @Test
  void whoMarksAfterLookingIsNotIndependent(FxRobot robot) throws Exception {
    TwoReaders readers = TwoReaders.in(folder.resolve("looked"));
    onlyLook(readers, robot);
    robot.type(KeyCode.I);
    until(30, () -> differences().settledProperty().get() != null);
    robot.type(KeyCode.ESCAPE);
    until(30, () -> !differences().isOpen());
    robot.type(KeyCode.F);
    until(30, () -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("EF").type(KeyCode.ENTER);
    until(30, () -> desk.marking().readingProperty().get().reader().equals("EF"));
    assertFalse(desk.marking().readingProperty().get().independent());
  }

  private void onlyLook(TwoReaders readers, FxRobot robot) throws Exception {
    Platform.runLater(() -> desk.opener().open(readers.session()));
    until(30, () -> robot.lookup("#sheet-look").tryQuery().isPresent());
    robot.clickOn("#sheet-look");
    until(30, () -> desk.stage().pictureProperty().get() != null);
  }

  private DifferenceReview differences() {
    return desk.review().differences();
  }

  private static int row(TwoReaders readers, ReviewItem item) {
    return readers.nearest(item.difference().timeS());
  }

  private static String word(ReviewItem item) {
    assertEquals(1, item.difference().what().size());
    return switch (item.mainDifference()) {
      case ONLY_A, ONLY_B -> "missed";
      case APART -> "shifted";
      case DOUBLE -> "no double";
      default -> item.mainDifference().code();
    };
  }

  private static List<String> truth(TwoReaders readers) {
    List<String> wanted = new ArrayList<>();
    for (String line : readers.truth.subList(1, readers.truth.size())) {
      String[] cells = line.split(",", -1);
      if (cells[1].isEmpty()) {
        wanted.add("%s %s %s %s".formatted(Double.valueOf(cells[0]), cells[2], cells[3], cells[4]));
      }
    }
    return wanted;
  }

  private static List<String> marks(List<Slap> slaps) {
    return slaps.stream()
        .map(
            slap ->
                "%s %s %s %s"
                    .formatted(
                        slap.timeS(), slap.kind().code(), slap.side().code(), slap.zone().code()))
        .toList();
  }
}
