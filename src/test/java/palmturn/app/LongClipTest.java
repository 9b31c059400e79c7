package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.until;

import java.nio.file.Path;
import java.util.List;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import palmturn.app.desk.Desk;
import palmturn.app.session.SessionFlow;
import palmturn.app.session.TrialCandidate;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.film.ClipWriter;
import palmturn.lab.draw.ClipContent;
import palmturn.lab.draw.ClipParameters;
import palmturn.lab.draw.Filming;
import palmturn.lab.draw.SoundKind;
import palmturn.lab.draw.SyntheticClip;
import palmturn.trial.Hand;
import palmturn.trial.Trial;

/** Drops a clip of several attempts on the real window, and lets the program find them itself. */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class LongClipTest {
  private static final int FPS = 30;
  private static final int WIDTH = 320;
  private static final int HEIGHT = 240;
  private static final ClipParameters.Length LENGTH = new ClipParameters.Length(1, 5, 1);
  private static final double STILL_S = 5;
  private static final int ATTEMPTS = 2;

  @TempDir private static Path folder;

  private final TestWindow opened = TestWindow.withoutEstimator();
  private Desk desk;
  private SessionFlow flow;

  @Start
  void start(Stage window) {
    desk = opened.show(window);
    flow = opened.flow();
  }

  @AfterEach
  void close() {
    opened.close();
  }

  @Test
  void longClipBecomesOneTrialForEachAttemptInIt(FxRobot robot) throws Exception {
    Path clip = longClip();
    Platform.runLater(() -> flow.dropped(List.of(clip)));
    until(90, () -> robot.lookup("#athlete").tryQuery().isPresent());
    robot.write("H-09");
    robot.clickOn("#hand-left");
    until(90, () -> flow.intake().runningProperty().get() == null);
    List<TrialCandidate> found = flow.intake().candidatesProperty().get();
    assertEquals(ATTEMPTS, found.size());
    robot.clickOn("#sheet-ok");
    until(90, () -> desk.stage().pictureProperty().get() != null);

    List<Trial> trials = desk.session().folderProperty().get().trials();
    assertEquals(List.of(Hand.LEFT, Hand.RIGHT), trials.stream().map(t -> t.id().hand()).toList());
    assertEquals(1, trials.stream().map(Trial::clip).distinct().count());
    for (int i = 0; i < ATTEMPTS; i++) {
      double first = i * (LENGTH.leadInS() + LENGTH.slappingS() + LENGTH.tailS() + STILL_S) + 1;
      assertTrue(trials.get(i).fromS() <= first, trials.get(i).fromS() + " after " + first);
      assertTrue(trials.get(i).toS() >= first + LENGTH.slappingS() - 0.3);
      assertTrue(trials.get(i).toS() - trials.get(i).fromS() < LENGTH.slappingS() + 2.5);
    }
    assertEquals("", desk.prompts().notices().text());
  }

  /** The same attempt again and again, the hands held still in between. */
  private static Path longClip() throws Exception {
    Path one = folder.resolve("one.mp4");
    SyntheticClip.plan(
            new ClipParameters(
                ClipContent.SLAPS,
                Hand.LEFT,
                new ClipParameters.Tempo(5, 4, 3, 1),
                List.of(),
                List.of(),
                new Filming(FPS, WIDTH, HEIGHT, 0.3, 0),
                SoundKind.SLAPS,
                LENGTH,
                21))
        .write(one, share -> {});
    ClipFile read = ClipFile.open(one);
    float[] heard = read.sound().samples();
    int hz = read.sound().sampleRate();
    double onceS = LENGTH.leadInS() + LENGTH.slappingS() + LENGTH.tailS() + STILL_S;
    float[] all = new float[(int) (ATTEMPTS * onceS * hz)];
    Path several = folder.resolve("several.mp4");
    ClipWriter.Settings settings =
        new ClipWriter.Settings(WIDTH, HEIGHT, FPS, 900_000, 4 * FPS, hz, 56_000);
    try (ClipWriter writer = ClipWriter.create(several, settings)) {
      for (int i = 0; i < ATTEMPTS; i++) {
        int at = (int) (i * onceS * hz);
        System.arraycopy(heard, 0, all, at, Math.min(heard.length, all.length - at));
      }
      writer.sound(all);
      int size = read.frames().size();
      for (int i = 0; i < ATTEMPTS; i++) {
        try (FrameReader frames = read.newReader()) {
          int[] last = new int[0];
          for (int frame = 0; frame < onceS * FPS; frame++) {
            last = frame < size ? frames.read(frame).argb() : last;
            writer.picture(i * onceS + (double) frame / FPS, last);
          }
        }
      }
      writer.finish();
    }
    return several;
  }
}
