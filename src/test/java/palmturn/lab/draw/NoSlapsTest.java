package palmturn.lab.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.ClipFile;
import palmturn.trial.Hand;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

/** Clips without slaps, without sound, and with frames left out. */
class NoSlapsTest {
  @TempDir Path folder;

  private static ClipParameters clip(ClipContent shown, SoundKind sound, double drop) {
    return new ClipParameters(
        shown,
        Hand.RIGHT,
        new ClipParameters.Tempo(4, 5, 0, 0),
        List.of(),
        List.of(),
        new Filming(30, 120, 160, 1, drop),
        sound,
        new ClipParameters.Length(0.3, 1, 0.3),
        11);
  }

  @Test
  void aHandThatTurnsInTheAirNeverTouches() {
    Truth truth = SyntheticClip.plan(clip(ClipContent.TURNING, SoundKind.SLAPS, 0)).truth();
    assertTrue(truth.contacts().isEmpty());
    assertTrue(Arrays.stream(truth.gapCm()).min().orElse(0) > 2);
    assertEquals(180, Arrays.stream(truth.rotationDeg()).max().orElse(0), 1);
    assertNull(truth.realised().cleanSharePct());
  }

  @Test
  void aTurningHandIsClearOfTheTargetWithItsEdgeToo() {
    ClipParameters wanted = clip(ClipContent.TURNING, SoundKind.SLAPS, 0);
    HandGap touch = new HandGap(Room.arm(), Room.targetPose().apply(Room.arm(), true));
    Motion motion = new Motion(wanted, List.of(), touch);
    for (double t = 0; t < wanted.lengthS(); t += 0.02) {
      assertTrue(touch.gapCm(motion.at(t)) > 1, "at " + t);
    }
  }

  @Test
  void aHandHeldStillStaysWhereItIs() {
    Truth truth = SyntheticClip.plan(clip(ClipContent.STILL, SoundKind.SLAPS, 0)).truth();
    assertTrue(truth.contacts().isEmpty());
    assertEquals(0, Arrays.stream(truth.rotationDeg()).max().orElse(1));
  }

  @Test
  void ofAnEmptyRoomNothingIsSaidOfAnArm() {
    Truth truth = SyntheticClip.plan(clip(ClipContent.NOBODY, SoundKind.TALK, 0)).truth();
    assertTrue(truth.contacts().isEmpty());
    assertEquals(0, truth.rotationDeg().length);
  }

  @Test
  void aClipWithoutSoundAndWithFramesLeftOutReadsBackSo() throws Exception {
    Path file = folder.resolve("gaps.mp4");
    SyntheticClip clip = SyntheticClip.plan(clip(ClipContent.SLAPS, SoundKind.NONE, 0.3));
    clip.write(file, share -> {});
    ClipFile read = ClipFile.open(file);
    assertNull(read.sound());
    assertTrue(read.frames().isVariable());
    assertTrue(read.frames().size() < 0.9 * 48, "frames " + read.frames().size());
    double[] told = clip.truth().frameTimesS();
    assertEquals(told.length, read.frames().size());
    for (int i = 0; i < told.length; i++) {
      assertEquals(told[i], read.frames().timeS(i), 1e-5);
    }
    List<Slap> marks = CarefulReader.read(clip.truth(), "A", 3).slaps();
    assertTrue(marks.stream().allMatch(s -> s.timedBy() == TimedBy.PICTURE));
    assertTrue(
        marks.stream()
            .allMatch(s -> Arrays.stream(told).anyMatch(t -> Math.abs(t - s.timeS()) < 1e-4)));
  }

  @Test
  void otherSoundsAreHeardBetweenTheSlaps() {
    float[] quiet = SyntheticClip.plan(clip(ClipContent.STILL, SoundKind.SLAPS, 0)).sound();
    for (SoundKind kind : List.of(SoundKind.TALK, SoundKind.METRONOME)) {
      float[] sound = SyntheticClip.plan(clip(ClipContent.STILL, kind, 0)).sound();
      assertTrue(power(sound) > 20 * power(quiet), kind + " " + power(sound));
      assertTrue(loudest(sound) < 1, kind + " " + loudest(sound));
    }
    assertFalse(power(quiet) == 0);
    assertNotEquals(
        loudest(SyntheticClip.plan(clip(ClipContent.SLAPS, SoundKind.SLAPS, 0)).sound()),
        loudest(quiet));
  }

  private static double power(float[] sound) {
    double sum = 0;
    for (float sample : sound) {
      sum += sample * sample;
    }
    return sum / sound.length;
  }

  private static double loudest(float[] sound) {
    double most = 0;
    for (float sample : sound) {
      most = Math.max(most, Math.abs(sample));
    }
    return most;
  }
}
