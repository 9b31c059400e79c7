package palmturn.app;

import static palmturn.app.TestWindow.until;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.Start;
import palmturn.app.inbox.Inbox;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.work.session.AddClip;
import palmturn.work.session.Notes;
import palmturn.work.session.Sessions;

/** As {@link ScreenshotsTest}, for sessions that were sent in and the messages in them. */
@EnabledIfSystemProperty(named = "screenshots", matches = ".+")
class InboxScreenshotsTest extends ScreenshotWindow {
  private static final Instant SENT = Instant.parse("2026-11-14T15:30:00Z");

  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }

  @Test
  void writeInboxAndMessages(FxRobot robot) throws Exception {
    Files.createDirectories(folder);
    Path sent = Files.createTempDirectory("screenshots").resolve("sent");
    Files.createDirectories(sent);
    Inbox inbox = flow.inbox();
    Platform.runLater(inbox::show);
    shoot("14-inbox-no-folder");
    Platform.runLater(() -> inbox.choose(sent));
    until(60, () -> inbox.searchProperty().get() == null);
    shoot("14-inbox-empty");
    sent(sent.resolve("H-03"), "H-03", "athlete");
    sent(sent.resolve("H-12"), "H-12", "athlete", "coach", "athlete", "coach");
    sent(sent.resolve("H-21"), "H-21");
    Files.writeString(Files.createDirectory(sent.resolve("H-30")).resolve("session.json"), "{");
    Platform.runLater(inbox::search);
    until(
        60, () -> inbox.foundProperty().get().size() == 4 && inbox.searchProperty().get() == null);
    shoot("14-inbox");
    size(1180, 720);
    shoot("14-inbox-smallest-window");
    size(1440, 900);

    open(sent.resolve("H-12"));
    shoot("15-messages-new");
    robot.type(KeyCode.RIGHT, 30);
    messages(robot);
    shoot("15-messages");
    // Another theme is another window, in which nothing has the keys yet.
    robot
        .clickOn("#message")
        .write("from here on the elbow stays where it belongs")
        .type(KeyCode.ENTER);
    until(60, () -> desk.prompts().questions().currentProperty().get() == null);
    robot.type(KeyCode.RIGHT, 60);
    shoot("15-messages-on-the-strip");
    size(1180, 720);
    messages(robot);
    robot.clickOn("#message").type(KeyCode.UP, 2);
    shoot("15-messages-smallest-window");
    robot.type(KeyCode.ESCAPE);
    size(1440, 900);
    open(sent.resolve("H-21"));
    messages(robot);
    shoot("15-messages-none");
    robot.type(KeyCode.ESCAPE);
    try (SessionFolder elsewhere = Sessions.open(sent.resolve("H-03"))) {
      open(elsewhere.folder());
      messages(robot);
      shoot("15-messages-read-only");
      robot.type(KeyCode.ESCAPE);
    }
  }

  private static void sent(Path session, String athlete, String... from) throws Exception {
    TrialId trial = new TrialId(Hand.RIGHT, "baseline", 1);
    List<String> words =
        List.of(
            "my forearm feels heavy after three seconds, is that where I slow down?",
            "look at the edge slap here: the wrist gives way before the elbow does. Keep the lower"
                + " palm flat and let the slap come from the turn of the forearm",
            "tried that, it feels slower",
            "slower and cleaner is right for now");
    try (SessionFolder made = Sessions.create(session, athlete, DAY, Session.Facts.NONE)) {
      Path clip = Path.of("sample-clips-synthetic", "right-baseline-1.mp4");
      AddClip.add(made, clip, AddClip.ClipRequest.of(Hand.RIGHT, "baseline"));
      for (int i = 0; i < from.length; i++) {
        Clock at = Clock.fixed(SENT.plus(Duration.ofHours(i)), ZoneOffset.UTC);
        TrialId about = i == 3 ? null : trial;
        Notes.message(made, from[i], words.get(i), about, i == 1 ? Double.valueOf(3.0) : null, at);
      }
    }
  }

  private void open(Path session) throws Exception {
    Platform.runLater(desk::close);
    until(60, () -> desk.session().folderProperty().get() == null);
    Platform.runLater(() -> desk.opener().open(session));
    until(60, () -> desk.session().folderProperty().get() != null && desk.stage().showsItsFrame());
  }

  private void messages(FxRobot robot) throws Exception {
    robot.type(KeyCode.M);
    until(60, () -> robot.lookup("#sheet-close").tryQuery().isPresent());
  }
}
