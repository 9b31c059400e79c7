package palmturn.clip;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.film.ClipWriter;
import palmturn.trial.ClipFacts;

class ClipFileTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "iibbibb_editlist_videoonly.mp4",
        "edit_list_positive_shift.mp4",
        "sample_sef_slow_motion.mp4",
        "sample_android_slow_motion.mp4",
        "dolbyVision-hdr.MOV",
        "bbb_800x640_768kbps_30fps_avc_2b_firstpts_10_sec.mp4",
        "sample_with_color_info.mp4",
        "sample_shorter_audio.mp4",
        "silent-black-10s.mp4",
        "hdr10-av1.mp4",
        "sample_12_5fps_720p_1s.mp4",
        "trim_optimization_failure.mp4",
        "bbb_800x640_768kbps_30fps_avc_pyramid_3b.mp4",
        "h265_with_metadata_track.mp4",
        "hlg10-color-test.mp4",
        "hdr10-video-with-sdr-container.mp4",
        "sample_edit_list.mp4",
        "sample_with_increasing_timestamps_320w_240h_5s.mp4",
        "asl_hand.25fps.mp4",
        "slow_supination.mp4"
      })
  void everyShownFrameHasTheTimeThatFfprobePrints(String name) throws Exception {
    FrameTable frames = open(name).frames();
    String ours =
        Arrays.stream(frames.timesS())
            .mapToObj(timeS -> String.format(Locale.ROOT, "%.6f%n", timeS))
            .collect(Collectors.joining());
    assertEquals(Clips.times(name), ours);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "iibbibb_editlist_videoonly.mp4",
        "bbb_800x640_768kbps_30fps_avc_2b_firstpts_10_sec.mp4",
        "sample_sef_slow_motion.mp4",
        "dolbyVision-hdr.MOV",
        "sample_with_color_info.mp4",
        "hdr10-av1.mp4",
        "bbb_800x640_768kbps_30fps_avc_pyramid_3b.mp4",
        "sample_edit_list.mp4"
      })
  void aFrameIsTheSameFromWhereverItIsReached(String name) throws Exception {
    ClipFile clip = open(name);
    int size = Math.min(clip.frames().size(), 40);
    int[] hashes = new int[size];
    try (FrameReader reader = clip.newReader()) {
      for (int i = 0; i < size; i++) {
        Picture picture = reader.read(i);
        assertEquals(clip.frames().timeS(i), picture.timeS());
        hashes[i] = Arrays.hashCode(picture.argb());
      }
      for (int i : new Random(11).ints(30, 0, size).toArray()) {
        assertEquals(hashes[i], Arrays.hashCode(reader.read(i).argb()), "frame " + i);
      }
      for (int i = size - 1; i >= 0; i -= 3) {
        assertEquals(hashes[i], Arrays.hashCode(reader.read(i).argb()), "frame " + i);
      }
    }
  }

  @Test
  void aPictureFilmedUprightIsShownUpright() throws Exception {
    ClipFile clip = open("dolbyVision-hdr.MOV");
    ClipFacts facts = clip.facts();
    assertEquals(90, facts.rotationDeg());
    assertTrue(facts.height() > facts.width());
    try (FrameReader reader = clip.newReader()) {
      Picture picture = reader.read(0);
      assertEquals(facts.width(), picture.width());
      assertEquals(facts.height(), picture.height());
    }
  }

  @Test
  void aTurnClockwiseBringsTheLeftColumnToTheTop() {
    int[] stored = {1, 2, 3, 4, 5, 6};
    assertArrayEquals(new int[] {4, 1, 5, 2, 6, 3}, Rotation.turn(stored, 3, 2, 90));
    assertArrayEquals(new int[] {6, 5, 4, 3, 2, 1}, Rotation.turn(stored, 3, 2, 180));
    assertArrayEquals(new int[] {3, 6, 2, 5, 1, 4}, Rotation.turn(stored, 3, 2, 270));
  }

  @Test
  void aFlashAndAClickAtOneMomentAreFoundAtOneMomentThroughAac() throws Exception {
    ClipFile clip = open("flash-and-click.mp4");
    Sound sound = clip.sound();
    assertNotNull(sound);
    int onset = -1;
    for (int i = 0; i < sound.samples().length && onset < 0; i++) {
      if (Math.abs(sound.samples()[i]) > 0.3) {
        onset = i;
      }
    }
    int flash = -1;
    try (FrameReader reader = clip.newReader()) {
      for (int i = 0; i < clip.frames().size() && flash < 0; i++) {
        Picture picture = reader.read(i);
        if ((picture.argb()[picture.argb().length / 2] & 0xFF) > 200) {
          flash = i;
        }
      }
    }
    assertEquals(1.0, clip.frames().timeS(flash), 1e-9);
    assertEquals(clip.frames().timeS(flash), sound.timeS(onset), 0.001);
  }

  @Test
  void aLongSoundIsGoneThroughWithAFewSecondsHeld() throws Exception {
    int hz = 48_000;
    Path file = folder.resolve("long.mp4");
    ClipWriter.Settings settings = new ClipWriter.Settings(16, 16, 1, 10_000, 1, hz, 64_000);
    try (ClipWriter writer = ClipWriter.create(file, settings)) {
      Random random = new Random(5);
      for (int second = 0; second < 60; second++) {
        writer.picture(second, new int[16 * 16]);
        float[] noise = new float[hz];
        for (int i = 0; i < hz; i++) {
          noise[i] = (float) (0.1 * random.nextGaussian());
        }
        writer.sound(noise);
      }
      writer.finish();
    }
    ClipFile clip = ClipFile.open(file);
    Sound whole = Objects.requireNonNull(clip.sound());
    int count = whole.samples().length;
    assertTrue(count > 59 * hz);
    try (SoundTrack.Pass pass = Objects.requireNonNull(clip.soundTrack()).begin()) {
      assertEquals(whole.firstS(), pass.firstS());
      assertEquals(hz, pass.sampleRate());
      for (int at = -hz; at < count + hz; at += 1000) {
        SoundTrack.Held held = pass.hold(at - hz, at + hz);
        assertTrue(held.samples().length <= 8 * hz, held.samples().length + " samples held");
        int to = Math.min(at + hz, count);
        assertTrue(held.end() >= to);
        int from = Math.max(0, at - hz);
        if (from < to) {
          assertEquals(
              -1,
              Arrays.mismatch(
                  whole.samples(), from, to, held.samples(), from - held.base(), to - held.base()));
        }
      }
      SoundTrack.Held last = pass.hold(count, count + hz);
      assertTrue(last.ended());
      assertEquals(count, last.end());
    }
  }

  @Test
  void aSilentTrackIsNoSoundAndABlackPictureIsDark() throws Exception {
    ClipFile clip = open("silent-black-10s.mp4");
    assertNull(clip.sound());
    assertNull(clip.soundTrack());
    assertTrue(clip.facts().warnings().stream().anyMatch(w -> w.contains("dark")));
  }

  @Test
  void whatAPhoneNotesIsRead() throws Exception {
    ClipFacts slow = open("sample_sef_slow_motion.mp4").facts();
    assertEquals(240.0, slow.captureFps());
    assertTrue(slow.slowedInPart());
    assertTrue(open("dolbyVision-hdr.MOV").facts().location());
    ClipFacts few = open("sample_12_5fps_720p_1s.mp4").facts();
    assertTrue(few.warnings().stream().anyMatch(w -> w.startsWith("too few frames")));
  }

  @Test
  void theFrameOfAMomentIsTheOneShownThen() {
    FrameTable frames = new FrameTable(new double[] {1, 1.5, 2, 4});
    assertEquals(0, frames.indexAt(0));
    assertEquals(1, frames.indexAt(1.99));
    assertEquals(2, frames.indexAt(3.9));
    assertEquals(3, frames.nearest(3.9));
    assertEquals(0.5, frames.medianS());
    assertEquals(2, frames.resolutionS(3));
    assertEquals(0.5, frames.spacingAtS(1.2));
    assertEquals(2, frames.spacingAtS(2));
    assertEquals(0.5, frames.spacingAtS(0.9), "before all");
    assertEquals(0.5, frames.spacingAtS(4), "after all");
    assertTrue(frames.isVariable());
  }

  private ClipFile open(String name) throws IOException, ClipException {
    return ClipFile.open(Clips.copy(folder, name));
  }
}
