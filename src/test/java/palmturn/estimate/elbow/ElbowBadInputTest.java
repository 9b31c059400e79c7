package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.clip.StoppedException;
import palmturn.estimate.motion.LivelyParts;
import palmturn.trial.Point;

class ElbowBadInputTest {
  private static final Path DRAWN = Path.of("sample-clips-synthetic/left-baseline-2.mp4");

  @Test
  void placeOutsideThePictureGivesNoPathAndSaysWhy() throws Exception {
    ElbowTracker.TrackedElbow followed = follow(DRAWN, 0, 10, new Point(5000, 100), Progress.NONE);
    assertNull(followed.path());
    assertTrue(followed.warnings().get(0).contains("outside the picture"));
  }

  @Test
  void blackClipHasTooLittleTexture() throws Exception {
    Path black = Path.of("src/test/resources/palmturn/clip/silent-black-10s.mp4");
    ElbowTracker.TrackedElbow followed = follow(black, 0, 10, new Point(20, 20), Progress.NONE);
    assertNull(followed.path());
    assertTrue(followed.warnings().get(0).contains("too little texture"));
  }

  /** Nothing stands still in this clip but an even wall. */
  @Test
  void realForearmBeforeAnEvenWallIsFollowedAndTheDoubtsAreSaid() throws Exception {
    Path real = Path.of("src/test/resources/palmturn/clip/asl_hand.25fps.mp4");
    ElbowTracker.TrackedElbow followed = follow(real, 0, 100, new Point(300, 780), Progress.NONE);
    assertTrue(followed.path().samples().size() >= 90, followed.path().gaps()::toString);
    String said = String.join(" ", followed.warnings());
    assertTrue(said.contains("Too little stands still"), said);
    assertTrue(said.contains("may slide along the arm"), said);
  }

  @Test
  void threeFramesAreFollowed() throws Exception {
    ElbowTracker.TrackedElbow followed = follow(DRAWN, 0, 3, new Point(515, 191), Progress.NONE);
    assertEquals(3, followed.path().samples().size());
  }

  @Test
  void noFramesGiveNoPath() throws Exception {
    assertNull(follow(DRAWN, 5, 5, new Point(515, 191), Progress.NONE).path());
  }

  @Test
  void watchStopsIt() {
    Progress stop =
        new Progress() {
          @Override
          public void at(double share, String what) {}

          @Override
          public boolean stopped() {
            return true;
          }
        };
    Assertions.assertThrows(
        StoppedException.class, () -> follow(DRAWN, 0, 100, new Point(515, 191), stop));
  }

  private static ElbowTracker.TrackedElbow follow(
      Path file, int from, int to, Point at, Progress watch) throws Exception {
    return ElbowTracker.follow(
        ClipFile.open(file),
        new LivelyParts.FrameRange(from, to),
        new ElbowTracker.Start(at, 0.02, null, ElbowScale.NONE),
        watch);
  }
}
