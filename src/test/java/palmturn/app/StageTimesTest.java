package palmturn.app;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.IntUnaryOperator;
import javafx.application.Platform;
import javafx.beans.value.ChangeListener;
import javafx.event.Event;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import palmturn.app.desk.Desk;
import palmturn.clip.Picture;

/**
 * Measures in the window itself how long it takes from a key to the picture: until it is the
 * stage's, and until the drawing that follows is over. Prints both, milliseconds, of the clip that
 * the property names.
 */
@EnabledIfSystemProperty(named = StageTimesTest.CLIP, matches = ".+")
@ExtendWith(ApplicationExtension.class)
class StageTimesTest {
  static final String CLIP = "palmturn.measure.clip";
  private static final int PLACES = 6;
  private static final int STEPS = 30;
  private static final int JUMPS = 40;
  private static final long SEED = 5;
  private static final long SETTLE_MS = 3000;

  private final TestWindow window = TestWindow.withoutEstimator();
  private final Random random = new Random(SEED);
  private Scene scene;
  private Desk desk;

  /** One key: until the picture was the stage's, and until it was drawn. */
  private record Took(double there, double drawn) {}

  static {
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private Path folder;

  @Start
  void start(Stage stage) {
    desk = window.show(stage);
    scene = stage.getScene();
  }

  @AfterEach
  void close() {
    window.close();
  }

  @Test
  void everyKeyBringsItsPicture() throws Exception {
    Path session = TestWindow.session(folder, Path.of(System.getProperty(CLIP)));
    onScreen(() -> desk.opener().open(session));
    while (desk.stage().pictureProperty().get() == null) {
      Thread.sleep(20);
    }
    int frames = desk.stage().framesProperty().get().size();
    Took[] forward = new Took[PLACES * STEPS];
    Took[] back = new Took[PLACES * STEPS];
    for (int place = 0; place < PLACES; place++) {
      int at = STEPS + random.nextInt(frames - 2 * STEPS);
      onScreen(() -> desk.stage().seek(at));
      Thread.sleep(SETTLE_MS);
      steps(forward, place, KeyCode.RIGHT, i -> at + i + 1);
      Thread.sleep(SETTLE_MS);
      steps(back, place, KeyCode.LEFT, i -> at + STEPS - i - 1);
    }
    Took[] jumps = new Took[JUMPS];
    for (int i = 0; i < JUMPS; i++) {
      int to = random.nextInt(frames);
      jumps[i] = took(() -> desk.stage().seek(to), to);
    }
    print("step forward", forward);
    print("step back", back);
    print("jump anywhere", jumps);
  }

  private void steps(Took[] into, int place, KeyCode key, IntUnaryOperator wanted)
      throws Exception {
    for (int i = 0; i < STEPS; i++) {
      into[place * STEPS + i] = took(() -> press(key), wanted.applyAsInt(i));
    }
  }

  private void press(KeyCode key) {
    Event.fireEvent(
        scene.getFocusOwner(),
        new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false));
  }

  /** The second pulse after the picture came begins when the drawing of the first is over. */
  private Took took(Runnable ask, int wanted) throws Exception {
    CompletableFuture<Took> done = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          long start = System.nanoTime();
          ChangeListener<Picture> listener =
              new ChangeListener<>() {
                @Override
                public void changed(
                    javafx.beans.value.ObservableValue<? extends Picture> picture,
                    Picture before,
                    Picture now) {
                  if (now != null && now.index() == wanted) {
                    picture.removeListener(this);
                    double there = ms(start);
                    afterPulses(2, () -> done.complete(new Took(there, ms(start))));
                  }
                }
              };
          Picture shown = desk.stage().pictureProperty().get();
          if (shown != null && shown.index() == wanted) {
            done.complete(new Took(0, 0));
            return;
          }
          desk.stage().pictureProperty().addListener(listener);
          ask.run();
        });
    return done.get(60, TimeUnit.SECONDS);
  }

  private void afterPulses(int pulses, Runnable then) {
    if (pulses == 0) {
      then.run();
      return;
    }
    Runnable[] once = new Runnable[1];
    once[0] =
        () -> {
          scene.removePostLayoutPulseListener(once[0]);
          Platform.runLater(() -> afterPulses(pulses - 1, then));
        };
    scene.addPostLayoutPulseListener(once[0]);
    Platform.requestNextPulse();
  }

  private static double ms(long start) {
    return (System.nanoTime() - start) / 1e6;
  }

  private static void onScreen(Runnable work) throws Exception {
    CompletableFuture.runAsync(work, Platform::runLater).get(60, TimeUnit.SECONDS);
  }

  private static void print(String what, Took[] all) {
    System.out.printf(
        Locale.ROOT,
        "%-14s n %d, there: median %.1f ms, 95 %% within %.1f ms; drawn: median %.1f ms, 95 %%"
            + " within %.1f ms%n",
        what,
        all.length,
        share(all, false, 0.5),
        share(all, false, 0.95),
        share(all, true, 0.5),
        share(all, true, 0.95));
  }

  private static double share(Took[] all, boolean drawn, double share) {
    double[] sorted =
        Arrays.stream(all)
            .mapToDouble(each -> drawn ? each.drawn() : each.there())
            .sorted()
            .toArray();
    return sorted[(int) Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
  }
}
