package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.text;
import static palmturn.app.TestWindow.until;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
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
import palmturn.app.estimate.MadeEstimates;
import palmturn.app.session.SessionFlow;
import palmturn.chart.BeatStrip;
import palmturn.clip.Progress;
import palmturn.settings.RecentSessions;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Drill;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.trial.Zone;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/**
 * Drives the real window by its own keys, on a screen that is not there. JavaFX draws text through
 * Pango on Linux, so that where it is not installed no window can be made.
 */
@EnabledIf(value = "textCanBeDrawn", disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class PalmturnAppTest {
  private static final TrialId TRIAL = new TrialId(Hand.RIGHT, "baseline", 1);

  static {
    // The headless screen is smaller than the window unless told otherwise, and then overflows.
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  static boolean textCanBeDrawn() throws IOException {
    if (!System.getProperty("os.name").contains("Linux")) {
      return true;
    }
    for (String root : List.of("/usr/lib", "/usr/lib64", "/lib", "/usr/local/lib")) {
      if (Files.isDirectory(Path.of(root))) {
        try (Stream<Path> found =
            Files.find(
                Path.of(root),
                2,
                (path, facts) -> path.getFileName().toString().startsWith("libpangoft2-1.0.so"))) {
          if (found.findAny().isPresent()) {
            return true;
          }
        } catch (UncheckedIOException e) {
          // A folder that may not be looked into holds no library for this user either.
          continue;
        }
      }
    }
    return false;
  }

  @TempDir private static Path folder;

  private TestWindow opened;
  private Desk desk;
  private SessionFlow flow;
  private RecentSessions recents;
  private volatile boolean wait;
  private volatile boolean fail;

  @Start
  void start(Stage window) {
    opened = TestWindow.with(this::make);
    desk = opened.show(window);
    flow = opened.flow();
    recents = opened.recents();
  }

  @AfterEach
  void close() {
    opened.close();
  }

  @Test
  void marksMadeByKeysAreShownScoredAndThereOnReopening(FxRobot robot) throws Exception {
    Path session = session("marked");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);

    robot.type(KeyCode.RIGHT, 5);
    until(() -> desk.stage().pictureProperty().get().index() == 5);
    assertEquals("clip 0.083 s   frame 6 of 60", text(robot, "#stage-where"));
    robot.type(KeyCode.F);
    until(() -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("AK");
    robot.type(KeyCode.ENTER);
    for (KeyCode side : List.of(KeyCode.J, KeyCode.F, KeyCode.J)) {
      robot.press(KeyCode.CONTROL).type(KeyCode.RIGHT).release(KeyCode.CONTROL);
      robot.type(KeyCode.LEFT, 2);
      robot.type(side);
    }
    robot.type(KeyCode.DIGIT1);
    assertEquals("4 slaps", text(robot, "#tally-count"));
    assertEquals("7.5", text(robot, "#figure-speed"));
    assertEquals("75", text(robot, "#figure-accuracy"));

    robot.type(KeyCode.Z);
    assertEquals("100", text(robot, "#figure-accuracy"));
    assertEquals("Undone: fingers at clip 0.483 s", text(robot, "#step"));
    until(() -> text(robot, "#saved").startsWith("Saved "));

    try (SessionFolder there = SessionFolder.openReadOnly(session)) {
      Reading kept = there.trial(TRIAL).reading("AK").orElseThrow();
      assertEquals(
          List.of(Side.PALM, Side.BACK, Side.PALM, Side.BACK),
          kept.slaps().stream().map(Slap::side).toList());
      assertTrue(kept.slaps().stream().allMatch(slap -> slap.zone() == Zone.CENTRE));
      assertEquals(5 / 60.0, kept.slaps().get(0).timeS(), 1e-4);
      assertEquals(1 / 60.0, kept.slaps().get(0).resolutionS(), 1e-4);
    }
  }

  @Test
  void mouseChoosesAndDragsMarksOnTheStrip(FxRobot robot) throws Exception {
    Path session = session("dragged");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    Platform.runLater(() -> desk.session().setReader("AK"));
    robot.type(KeyCode.RIGHT, 20).type(KeyCode.F);
    robot.type(KeyCode.RIGHT, 20).type(KeyCode.J);
    Point2D first = onStrip(robot, 20);
    robot.moveTo(first).press(MouseButton.PRIMARY).release(MouseButton.PRIMARY);
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals(Side.PALM, desk.marking().slapProperty().get().side());
    assertEquals(20, desk.stage().frameProperty().get());

    robot.moveTo(first).press(MouseButton.PRIMARY).moveTo(onStrip(robot, 26));
    robot.release(MouseButton.PRIMARY);
    WaitForAsyncUtils.waitForFxEvents();
    Slap moved = desk.marking().readingProperty().get().slaps().get(0);
    assertEquals(26 / 60.0, moved.timeS(), 1e-4);
    assertEquals(2, desk.marking().readingProperty().get().slaps().size());
  }

  private Point2D onStrip(FxRobot robot, int frame) {
    WaitForAsyncUtils.waitForFxEvents();
    double x = desk.strip().view().x(frame / 60.0);
    return robot.lookup("#strip").query().localToScreen(x, BeatStrip.Lanes.APP.lineY() - 20);
  }

  @Test
  void secondWindowOnASessionMayOnlyLookAndSaysWhy(FxRobot robot) throws Exception {
    Path session = session("twice");
    try (SessionFolder writer = SessionFolder.open(session)) {
      Platform.runLater(() -> desk.opener().open(session));
      until(() -> desk.stage().pictureProperty().get() != null);
      assertTrue(text(robot, "#notice").startsWith("Open read-only: "));
      robot.type(KeyCode.F);
      assertTrue(robot.lookup("#initials").tryQuery().isEmpty());
      assertTrue(text(robot, "#notice").contains("read-only"));
      assertTrue(writer.trial(TRIAL).readings().isEmpty());
    }
  }

  @Test
  void folderThatIsNoSessionIsOneLine(FxRobot robot) {
    Platform.runLater(() -> desk.opener().open(folder.resolve("nowhere")));
    until(() -> !text(robot, "#notice").isEmpty());

    assertTrue(text(robot, "#notice").contains("nowhere"));
    assertEquals(1, text(robot, "#notice").lines().count());
    robot.type(KeyCode.ESCAPE);
    assertEquals("", text(robot, "#notice"));
  }

  @Test
  void droppedClipAsksForCodeAndHandAndBecomesASession(FxRobot robot) throws Exception {
    Path clip = clip("dropped");
    Platform.runLater(() -> flow.dropped(List.of(clip)));
    until(() -> robot.lookup("#athlete").tryQuery().isPresent());
    robot.write("H-09");
    robot.clickOn("#hand-left").clickOn("#writing-mirrored");
    until(() -> flow.intake().runningProperty().get() == null);
    robot.clickOn("#sheet-ok");
    until(() -> desk.stage().pictureProperty().get() != null);

    assertTrue(text(robot, "#heading").startsWith("H-09, "));
    assertEquals("left-baseline-1", desk.session().trialIdProperty().get().name());
    assertEquals(clip.getParent(), desk.session().folderProperty().get().folder().getParent());
    TrialId added = desk.session().trialIdProperty().get();
    assertEquals(Mirrored.TRUE, desk.session().folderProperty().get().trial(added).mirrored());
    until(() -> desk.board().previewsProperty().get().containsKey(added));
    assertEquals(1.0, desk.board().previewsProperty().get().get(added).lengthS(), 0.02);
  }

  @Test
  void reopeningLandsWhereOneLeft(FxRobot robot) throws Exception {
    Path session = session("left");
    try (SessionFolder made = SessionFolder.open(session)) {
      AddClip.add(made, clip("left-hand"), AddClip.ClipRequest.of(Hand.LEFT, "baseline"));
    }
    TrialId right = new TrialId(Hand.RIGHT, "baseline", 1);
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    Platform.runLater(() -> desk.board().choose(right));
    until(() -> right.equals(desk.session().trialIdProperty().get()));
    until(() -> desk.stage().pictureProperty().get() != null);
    robot.type(KeyCode.RIGHT, 7);
    Platform.runLater(() -> desk.close());
    until(() -> desk.session().folderProperty().get() == null);
    assertTrue(desk.board().cellsProperty().get().isEmpty());
    robot.clickOn("#recent-0");
    until(() -> right.equals(desk.session().trialIdProperty().get()));
    until(() -> desk.stage().pictureProperty().get() != null);
    assertEquals("clip 0.117 s   frame 8 of 60", text(robot, "#stage-where"));
    until(() -> desk.stage().pictureProperty().get().index() == 7);
  }

  @Test
  void drillBeginsABlockAndAClipDroppedOnItsPlaceBelongsThere(FxRobot robot) throws Exception {
    Path session = session("drilled");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    robot.press(KeyCode.CONTROL).type(KeyCode.B).release(KeyCode.CONTROL);
    until(() -> robot.lookup("#drill-code").tryQuery().isPresent());
    until(() -> robot.lookup("#offer-paced-flips").tryQuery().isPresent());
    robot.write("circles");
    robot.type(KeyCode.DOWN);
    robot.clickOn("#sheet-ok");
    assertEquals("Say which hand the drill trained.", text(robot, "#drill-missing"));
    robot.clickOn("#drill-hand-left");
    robot.clickOn("#drill-start").write("10:30");
    robot.clickOn("#drill-end").write("10:20");
    robot.clickOn("#sheet-ok");
    assertTrue(text(robot, "#drill-missing").startsWith("The drill ends at \"10:20\", not after"));
    robot.clickOn("#drill-end").press(KeyCode.CONTROL).type(KeyCode.A).release(KeyCode.CONTROL);
    robot.write("10:50");
    robot.clickOn("#sheet-ok");
    WaitForAsyncUtils.waitForFxEvents();
    assertEquals("After wrist finger circles", desk.board().heading("after-1"));
    assertEquals("right-after-1-1", desk.board().chosenProperty().get().name());
    Drill said =
        desk.session().folderProperty().get().session().block("after-1").orElseThrow().drill();
    assertEquals(Duration.ofMinutes(20), said.length());
    assertTrue(said.dose().startsWith("3 rounds"));

    TrialId place = new TrialId(Hand.LEFT, "after-1", 2);
    Path clip = clip("after-drill");
    Platform.runLater(() -> flow.droppedOn(place, List.of(clip)));
    until(() -> robot.lookup("#sheet-ok").tryQuery().isPresent());
    until(() -> flow.intake().runningProperty().get() == null);
    robot.clickOn("#sheet-ok");
    until(() -> place.equals(desk.session().trialIdProperty().get()));
  }

  @Test
  void themeAndTextSizeChangeWithoutLosingThePlace(FxRobot robot) throws Exception {
    Path session = session("looks");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    robot.type(KeyCode.RIGHT, 3);
    robot.press(KeyCode.CONTROL).type(KeyCode.T).release(KeyCode.CONTROL);
    robot.press(KeyCode.CONTROL).type(KeyCode.EQUALS).release(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();

    assertEquals("clip 0.050 s   frame 4 of 60", text(robot, "#stage-where"));
    robot.type(KeyCode.RIGHT);
    assertEquals("clip 0.067 s   frame 5 of 60", text(robot, "#stage-where"));
  }

  @Test
  void estimateIsMadeCopiedLookedAtAndFinished(FxRobot robot) throws Exception {
    Path session = session("estimated");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    Platform.runLater(() -> desk.session().setReader("AK"));
    robot.type(KeyCode.L);
    until(() -> desk.estimation().shown().estimateProperty().get() != null);
    try (SessionFolder there = SessionFolder.openReadOnly(session)) {
      assertEquals(4, there.trial(TRIAL).estimate().slaps().size());
    }

    robot.type(KeyCode.S);
    assertEquals("Reading AK from the estimate, open", text(robot, "#reader"));
    assertTrue(text(robot, "#fast").startsWith("Doubtful slap 1 of 1"));
    robot.type(KeyCode.ESCAPE);
    until(() -> text(robot, "#tally-count").equals("4 slaps, 3 unchecked"));
    assertEquals(12, desk.stage().frameProperty().get());
    robot.type(KeyCode.F);
    assertEquals(
        List.of(Side.PALM, Side.BACK, Side.PALM, Side.BACK),
        reading().slaps().stream().map(Slap::side).toList());

    robot.type(KeyCode.ENTER);
    assertFalse(reading().finished());
    assertTrue(text(robot, "#step").startsWith("not finished: 3 copied marks"));
    assertEquals(24, desk.stage().frameProperty().get());
    until(() -> text(robot, "#tally-count").equals("4 slaps, 2 unchecked"));
    for (int frame : List.of(36, 48)) {
      robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
      until(() -> desk.stage().pictureProperty().get().index() == frame);
    }
    until(() -> text(robot, "#tally-count").equals("4 slaps"));
    robot.type(KeyCode.ENTER);
    assertTrue(reading().finished());
    assertTrue(reading().slaps().stream().allMatch(slap -> slap.zone() == Zone.CENTRE));
  }

  @Test
  void estimateCanBeStoppedAndThenNothingIsStored(FxRobot robot) throws Exception {
    wait = true;
    Path session = session("stopped");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    robot.clickOn("#estimate-offer");
    until(() -> text(robot, "#estimate-progress").contains("40 %"));
    robot.type(KeyCode.RIGHT);
    assertEquals(1, desk.stage().frameProperty().get());
    robot.clickOn("#estimate-stop");
    until(() -> desk.estimation().run().trialProperty().get() == null);
    assertEquals("", text(robot, "#notice"));
    try (SessionFolder there = SessionFolder.openReadOnly(session)) {
      assertEquals(null, there.trial(TRIAL).estimate());
    }
  }

  @Test
  void whatGoesWrongInAnEstimateIsOneLine(FxRobot robot) throws Exception {
    fail = true;
    Path session = session("failed");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> desk.stage().pictureProperty().get() != null);
    robot.type(KeyCode.L);
    until(() -> text(robot, "#notice").equals("counter.mp4: no frame can be read"));
  }

  @Test
  void secondReaderIsAskedFirstAndSeesNothingOfAnothers(FxRobot robot) throws Exception {
    Path session = anothers("blind");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> robot.lookup("#initials").tryQuery().isPresent());
    assertEquals(null, desk.session().folderProperty().get());
    assertTrue(desk.board().cellsProperty().get().isEmpty());
    robot.type(KeyCode.ENTER);
    assertEquals(null, desk.session().folderProperty().get());

    robot.write("BM").type(KeyCode.ENTER);
    until(() -> desk.stage().pictureProperty().get() != null);
    assertEquals(null, reading());
    assertTrue(desk.estimation().shown().hiddenProperty().get());
    assertEquals(Cell.State.ESTIMATED, desk.board().chosenCell().orElseThrow().state());
    robot.type(KeyCode.F);
    assertTrue(reading().independent());
    assertEquals("BM", reading().reader());
  }

  @Test
  void readerIsAskedOnceAndSuggestedNextTime(FxRobot robot) throws Exception {
    Path session = anothers("suggested");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("AK").type(KeyCode.ENTER);
    until(() -> desk.stage().pictureProperty().get() != null);
    assertEquals("AK", reading().reader());
    assertFalse(desk.estimation().shown().hiddenProperty().get());

    Path other = anothers("suggested-other");
    Platform.runLater(() -> desk.opener().open(other));
    until(() -> opened(other));
    assertTrue(robot.lookup("#initials").tryQuery().isEmpty());
    assertEquals("AK", recents.reader(session).orElseThrow());
  }

  @Test
  void whoGivesUpAtTheQuestionLeavesTheSessionToOthers(FxRobot robot) throws Exception {
    Path session = anothers("given-up");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> robot.lookup("#initials").tryQuery().isPresent());
    robot.type(KeyCode.ESCAPE);
    until(() -> !locked(session));
    assertEquals(null, desk.session().folderProperty().get());
  }

  private boolean opened(Path session) {
    SessionFolder now = desk.session().folderProperty().get();
    return now != null && now.folder().equals(session);
  }

  private static boolean locked(Path session) {
    try (SessionFolder writer = SessionFolder.open(session)) {
      return writer.readOnly();
    } catch (StoreException e) {
      return true;
    }
  }

  @Test
  void whoLooksAtAnothersMarksDoesNotSeeThemForThatReaderAndMarksNothingIndependent(FxRobot robot)
      throws Exception {
    Path session = anothers("anothers");
    Platform.runLater(() -> desk.opener().open(session));
    until(() -> robot.lookup("#sheet-look").tryQuery().isPresent());
    robot.clickOn("#sheet-look");
    until(() -> desk.stage().pictureProperty().get() != null);
    robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
    until(() -> desk.stage().pictureProperty().get().index() == 12);
    assertEquals("AK", reading().reader());
    assertTrue(reading().slaps().stream().noneMatch(Slap::seen));

    robot.type(KeyCode.F);
    until(() -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("BM").type(KeyCode.ENTER);
    assertEquals("BM", reading().reader());
    assertFalse(reading().independent());
  }

  @Test
  void inboxListsSessionsOpensOneAndComesBack(FxRobot robot) throws Exception {
    robot.press(KeyCode.CONTROL).type(KeyCode.I).release(KeyCode.CONTROL);
    assertTrue(text(robot, "#inbox-words").startsWith("Choose the folder"));
    Path box = Files.createDirectories(folder.resolve("box"));
    for (String code : List.of("H-20", "H-21")) {
      Sessions.create(box.resolve(code), code, LocalDate.of(2026, 11, 14), Session.Facts.NONE)
          .close();
    }
    Platform.runLater(() -> flow.inbox().choose(box));
    until(() -> flow.inbox().foundProperty().get().size() == 2);
    until(() -> flow.inbox().searchProperty().get() == null);
    robot.type(KeyCode.DOWN).type(KeyCode.ENTER);
    until(() -> text(robot, "#heading").startsWith("H-21"));
    assertTrue(robot.lookup("#inbox-words").tryQuery().isEmpty());
    robot.press(KeyCode.CONTROL).type(KeyCode.I).release(KeyCode.CONTROL);
    until(() -> robot.lookup("#inbox-words").tryQuery().isPresent());
    robot.type(KeyCode.ESCAPE);
    until(() -> robot.lookup("#inbox-words").tryQuery().isEmpty());
    assertTrue(text(robot, "#heading").startsWith("H-21"));
  }

  /** A session that AK has begun to read, from an estimate. */
  private static Path anothers(String name) throws Exception {
    Path session = session(name);
    try (SessionFolder made = SessionFolder.open(session)) {
      made.keep(TRIAL, MadeEstimates.fourSlaps());
      made.keep(TRIAL, MadeEstimates.fourSlaps().toReading("AK"), "started");
    }
    return session;
  }

  private Reading reading() {
    WaitForAsyncUtils.waitForFxEvents();
    return desk.marking().readingProperty().get();
  }

  private Estimate make(SessionFolder in, TrialId id, Progress progress) throws UserError {
    if (fail) {
      throw new UserError("counter.mp4: no frame can be read");
    }
    progress.at(0.4, "looking");
    while (wait && !progress.stopped()) {
      Thread.onSpinWait();
    }
    if (progress.stopped()) {
      throw new UserError("stopped");
    }
    try {
      Estimate made = MadeEstimates.fourSlaps();
      in.keep(id, made);
      return made;
    } catch (StoreException e) {
      throw new UserError("not kept", e);
    }
  }

  private static Path session(String name) throws Exception {
    Path where = folder.resolve(name + "-session");
    try (SessionFolder made =
        Sessions.create(where, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      AddClip.add(made, clip(name), AddClip.ClipRequest.of(Hand.RIGHT, "baseline"));
    }
    return where;
  }

  /** Sixty frames of a counter, a sixtieth of a second apart, drawn by a test-picture generator. */
  private static Path clip(String name) throws Exception {
    Path clip = Files.createDirectories(folder.resolve(name)).resolve("counter.mp4");
    try (InputStream in =
        Objects.requireNonNull(PalmturnAppTest.class.getResourceAsStream("counter.mp4"))) {
      Files.copy(in, clip);
    }
    return clip;
  }
}
