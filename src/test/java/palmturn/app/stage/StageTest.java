package palmturn.app.stage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import palmturn.clip.FrameTable;
import palmturn.clip.FrameTables;
import palmturn.clip.Picture;

class StageTest {
  private final FrameTable frames = FrameTables.steady(100, 50);
  private final Map<Integer, CompletableFuture<Picture>> asked = new HashMap<>();
  private final Stage stage = new Stage(Runnable::run);

  @Test
  void stepsByFramesAndStaysInTheClip() {
    openAtOnce(null, null);
    stage.step(1);
    stage.step(10);
    assertEquals(11, stage.frameProperty().get());
    stage.step(-20);
    assertEquals(0, stage.frameProperty().get());
    stage.goToEnd();
    stage.step(1);
    assertEquals(99, stage.frameProperty().get());
  }

  @Test
  void staysInTheTrialsStretch() {
    openAtOnce(0.5, 1.0);
    assertEquals(25, stage.frameProperty().get());
    stage.step(-1);
    assertEquals(25, stage.frameProperty().get());
    stage.goToEnd();
    assertEquals(50, stage.frameProperty().get());
  }

  @Test
  void pictureThatComesLateForAnotherFrameIsNeverShown() {
    stage.open(frames, this::later, null, null);
    stage.step(1);
    stage.step(1);
    asked.get(2).complete(picture(2));
    asked.get(1).complete(picture(1));
    asked.get(0).complete(picture(0));

    assertEquals(2, stage.pictureProperty().get().index());
  }

  @Test
  void wrongPictureIsNotShownButSaid() {
    stage.open(frames, index -> CompletableFuture.completedFuture(picture(7)), null, null);

    assertNull(stage.pictureProperty().get());
    assertEquals("this frame can't be shown", stage.troubleProperty().get());
  }

  @Test
  void failureIsSaidInItsOwnWordsAndTheNextPictureTakesItAway() {
    stage.open(frames, this::later, null, null);
    asked.get(0).completeExceptionally(new IllegalStateException("frame 0 is damaged"));
    assertEquals("frame 0 is damaged", stage.troubleProperty().get());
    stage.step(1);
    asked.get(1).complete(picture(1));
    assertEquals("", stage.troubleProperty().get());
  }

  @Test
  void playsByTheFramesOwnTimes() {
    FrameTable uneven = FrameTables.at(0, 0.1, 0.5, 0.6, 2);
    stage.open(uneven, index -> CompletableFuture.completedFuture(picture(index)), null, null);
    stage.faster();
    stage.faster();
    assertEquals(PlaySpeed.FULL, stage.speedProperty().get());
    stage.playOrStop();
    stage.tick(1_000_000_000L);
    stage.tick(1_450_000_000L);
    assertEquals(1, stage.frameProperty().get());
    stage.tick(1_550_000_000L);
    assertEquals(2, stage.frameProperty().get());
    stage.tick(3_050_000_000L);
    assertEquals(4, stage.frameProperty().get());
    assertFalse(stage.playingProperty().get());
  }

  @Test
  void speedChangesWhilePlayingFromWhereItIs() {
    openAtOnce(null, null);
    stage.playOrStop();
    stage.tick(0);
    stage.tick(1_000_000_000L);
    assertEquals(12, stage.frameProperty().get());
    stage.slower();
    assertEquals(PlaySpeed.EIGHTH, stage.speedProperty().get());
    stage.tick(1_000_000_000L);
    stage.tick(2_000_000_000L);
    assertEquals(18, stage.frameProperty().get());
  }

  @Test
  void playingWaitsForASlowPictureInsteadOfSkippingIt() {
    stage.open(frames, this::later, null, null);
    asked.get(0).complete(picture(0));
    stage.playOrStop();
    stage.tick(0);
    stage.tick(100_000_000L);
    int due = stage.frameProperty().get();
    stage.tick(900_000_000L);
    assertEquals(due, stage.frameProperty().get());
    asked.get(due).complete(picture(due));
    stage.tick(900_000_000L);
    assertTrue(stage.frameProperty().get() > due);
  }

  @Test
  void loopShowsItsLastPictureForItsTimeAndBeginsAgain() {
    openAtOnce(null, null);
    stage.loop(0.2, 0.28);
    assertEquals(10, stage.frameProperty().get());
    stage.tick(0);
    stage.tick(330_000_000L);
    assertEquals(14, stage.frameProperty().get());
    stage.tick(390_000_000L);
    assertEquals(14, stage.frameProperty().get());
    stage.tick(410_000_000L);
    assertEquals(10, stage.frameProperty().get());
    assertTrue(stage.playingProperty().get());
    stage.tick(1_000_000_000L);
    stage.tick(1_090_000_000L);
    assertEquals(11, stage.frameProperty().get());
  }

  @Test
  void loopOverTheTrialStaysInItsStretchAndASeekEndsIt() {
    openAtOnce(0.5, 0.6);
    stage.loopTrial();
    long nanos = 0;
    for (int i = 0; i < 200; i++) {
      nanos += 16_000_000L;
      stage.tick(nanos);
      int at = stage.frameProperty().get();
      assertTrue(at >= 25 && at <= 30, "frame " + at);
    }
    assertTrue(stage.loopingProperty().get());
    stage.step(1);
    assertFalse(stage.loopingProperty().get());
    assertFalse(stage.playingProperty().get());
  }

  @Test
  void slowestIsASixteenth() {
    openAtOnce(null, null);
    for (int i = 0; i < 9; i++) {
      stage.slower();
    }
    assertEquals(1.0 / 16, stage.speedProperty().get().factor());
  }

  @Test
  void seekingStopsPlaying() {
    openAtOnce(null, null);
    stage.playOrStop();
    stage.step(1);
    assertFalse(stage.playingProperty().get());
  }

  private void openAtOnce(Double fromS, Double toS) {
    stage.open(frames, index -> CompletableFuture.completedFuture(picture(index)), fromS, toS);
  }

  private CompletableFuture<Picture> later(int index) {
    return asked.computeIfAbsent(index, each -> new CompletableFuture<>());
  }

  private Picture picture(int index) {
    return new Picture(index, index / 50.0, 1, 1, new int[] {0xff000000});
  }
}
