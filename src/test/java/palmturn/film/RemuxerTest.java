package palmturn.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.StreamHash;
import palmturn.trial.ClipFacts;

/** Real recordings without all that is neither picture nor sound. */
class RemuxerTest {
  @TempDir Path folder;

  private static Path real(String name) throws Exception {
    return Path.of(Objects.requireNonNull(ClipFile.class.getResource(name), name).toURI());
  }

  @Test
  void thePlaceIsGoneAndPictureAndSoundAreTheSame() throws Exception {
    Path from = real("dolbyVision-hdr.MOV");
    Path to = folder.resolve("cleared.MOV");
    assertTrue(ClipFile.open(from).facts().location());
    Remuxer.write(from, to);
    ClipFacts facts = ClipFile.open(to).facts();
    assertFalse(facts.location());
    assertEquals(StreamHash.of(from).sound(), StreamHash.of(to).sound());
    assertEquals(pictures(from), pictures(to));
    assertEquals(ClipFile.open(from).facts().rotationDeg(), facts.rotationDeg());
    String bytes = Files.readString(to, StandardCharsets.ISO_8859_1);
    assertFalse(bytes.contains("com.apple.quicktime"), "device or place");
    assertFalse(bytes.contains("Apple"), "device");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "asl_hand.25fps.mp4",
        "bbb_800x640_768kbps_30fps_avc_2b_firstpts_10_sec.mp4",
        "bbb_800x640_768kbps_30fps_avc_pyramid_3b.mp4",
        "edit_list_positive_shift.mp4",
        "h265_with_metadata_track.mp4",
        "hdr10-av1.mp4",
        "hdr10-video-with-sdr-container.mp4",
        "hlg10-color-test.mp4",
        "iibbibb_editlist_videoonly.mp4",
        "sample_12_5fps_720p_1s.mp4",
        "sample_android_slow_motion.mp4",
        "sample_edit_list.mp4",
        "sample_sef_slow_motion.mp4",
        "sample_shorter_audio.mp4",
        "sample_with_color_info.mp4",
        "sample_with_increasing_timestamps_320w_240h_5s.mp4",
        "silent-black-10s.mp4",
        "slow_supination.mp4",
      })
  void everyMomentOfEveryClipStays(String name) throws Exception {
    Path to = folder.resolve(name);
    Remuxer.write(real(name), to);
    assertEquals(StreamHash.of(real(name)).sound(), StreamHash.of(to).sound());
    assertEquals(pictures(real(name)), pictures(to));
  }

  /** Returns a digest of every fifth picture as it is shown, which is the same to the last bit. */
  private static List<Integer> pictures(Path clip) throws Exception {
    ClipFile file = ClipFile.open(clip);
    List<Integer> hashes = new ArrayList<>();
    try (FrameReader reader = file.newReader()) {
      for (int i = 0; i < file.frames().size(); i += 5) {
        hashes.add(Arrays.hashCode(reader.read(i).argb()));
      }
    }
    return hashes;
  }
}
