package palmturn.clip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DamagedClipTest {
  private static final String GOOD = "sample_sef_slow_motion.mp4";

  @TempDir Path folder;

  @Test
  void aMissingFileIsNamed() {
    refused(folder.resolve("gone.mp4"));
  }

  @Test
  void aFolderIsNoClip() {
    refused(folder);
  }

  @Test
  void anEmptyFileIsRefused() throws IOException {
    refused(Files.createFile(folder.resolve("empty.mp4")));
  }

  @Test
  void aTextFileIsRefused() throws IOException {
    refused(Files.writeString(folder.resolve("notes.mp4"), "no clip, just words\n".repeat(500)));
  }

  @Test
  void aPlaylistThatPointsAtAClipIsRefused() throws IOException {
    Path clip = Clips.copy(folder, GOOD);
    String list =
        "#EXTM3U\n#EXT-X-TARGETDURATION:2\n#EXTINF:2,\n%s\n#EXT-X-ENDLIST\n"
            .formatted(clip.getFileName());
    refused(Files.writeString(folder.resolve("list.m3u8"), list));
    refused(
        Files.writeString(
            folder.resolve("join.mp4"), "ffconcat version 1.0\nfile " + clip.getFileName()));
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aColonInANameIsNoProtocol() throws Exception {
    Path clip = Clips.copy(folder, GOOD);
    Path odd = Files.move(clip, folder.resolve("http:hand.mp4"));
    assertTrue(ClipFile.open(odd).frames().size() > 0);
  }

  @Test
  void aClipWithoutPictureIsRefused() throws IOException {
    byte[] wav = new byte[44 + 16000];
    byte[] head = {
      'R',
      'I',
      'F',
      'F',
      (byte) 0xA4,
      0x3E,
      0,
      0,
      'W',
      'A',
      'V',
      'E',
      'f',
      'm',
      't',
      ' ',
      16,
      0,
      0,
      0,
      1,
      0,
      1,
      0,
      0x40,
      0x1F,
      0,
      0,
      (byte) 0x80,
      0x3E,
      0,
      0,
      2,
      0,
      16,
      0,
      'd',
      'a',
      't',
      'a',
      (byte) 0x80,
      0x3E,
      0,
      0
    };
    System.arraycopy(head, 0, wav, 0, head.length);
    ClipException refusal = refused(Files.write(folder.resolve("sound.wav"), wav));
    assertTrue(refusal.getMessage().contains("no picture"), refusal.getMessage());
  }

  @Test
  void aCodecThatIsNotKnownIsRefused() throws IOException {
    byte[] all = Files.readAllBytes(Clips.copy(folder, GOOD));
    byte[] codec = {'a', 'v', 'c', '1'};
    for (int i = 0; i + codec.length <= all.length; i++) {
      if (Arrays.equals(codec, Arrays.copyOfRange(all, i, i + codec.length))) {
        all[i] = 'z';
        all[i + 1] = 'q';
      }
    }
    ClipException refusal = refused(Files.write(folder.resolve("unknown.mp4"), all));
    assertTrue(refusal.getMessage().contains("export it again"), refusal.getMessage());
  }

  @Test
  void aClipCutOffBeforeItsIndexIsRefused() throws IOException {
    byte[] all = Files.readAllBytes(Clips.copy(folder, GOOD));
    refused(Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(all, 2000)));
  }

  @Test
  void aClipCutOffInItsPicturesStillGivesThoseThereAre() throws Exception {
    String name = "hdr10-av1.mp4";
    byte[] all = Files.readAllBytes(Clips.copy(folder, name));
    Path cut = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(all, all.length * 2 / 3));
    ClipFile clip;
    try {
      clip = ClipFile.open(cut);
    } catch (ClipException e) {
      assertOneLine(e);
      return;
    }
    try (FrameReader reader = clip.newReader()) {
      assertEquals(0, reader.read(0).index());
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void flippedBytesEndInFramesOrInOneLine(long seed) throws Exception {
    Random random = new Random(seed);
    byte[] all = Files.readAllBytes(Clips.copy(folder, GOOD));
    for (int i = 0; i < 200; i++) {
      all[random.nextInt(all.length)] ^= (byte) (1 << random.nextInt(8));
    }
    Path damaged = Files.write(folder.resolve("flipped.mp4"), all);
    try {
      ClipFile clip = ClipFile.open(damaged);
      clip.facts();
      try (FrameReader reader = clip.newReader()) {
        for (int i = 0; i < clip.frames().size(); i += 7) {
          assertEquals(i, reader.read(i).index());
        }
      }
    } catch (ClipException e) {
      assertOneLine(e);
    }
  }

  @Test
  void aHoleInTheMiddleIsSaidAndTheRestIsShown() throws Exception {
    byte[] all = Files.readAllBytes(Clips.copy(folder, "slow_supination.mp4"));
    Arrays.fill(all, all.length / 3, all.length / 2, (byte) 0);
    ClipFile clip = ClipFile.open(Files.write(folder.resolve("hole.mp4"), all));
    int read = 0;
    int damaged = 0;
    boolean lastRead = false;
    try (FrameReader reader = clip.newReader(160)) {
      for (int i = 0; i < clip.frames().size(); i++) {
        try {
          assertEquals(i, reader.read(i).index());
          read++;
          lastRead = true;
        } catch (ClipException e) {
          assertOneLine(e);
          assertTrue(e.getMessage().contains("hole.mp4 is damaged at frame " + i + ","));
          damaged++;
          lastRead = false;
        }
      }
    }
    assertTrue(damaged > 0, "the hole is said");
    assertTrue(read > clip.frames().size() / 2, read + " read");
    assertTrue(lastRead, "what comes after the hole is read too");
  }

  @Test
  void framesOfAnotherSizeAreBroughtToTheClipsOwn() throws Exception {
    Path joined = Path.of("src/test/resources/palmturn/clip/joined/two-sizes.ts");
    ClipFile clip = ClipFile.open(joined);
    int read = 0;
    try (FrameReader reader = clip.newReader()) {
      for (int i = 0; i < clip.frames().size(); i++) {
        Picture picture = reader.read(i);
        assertEquals(clip.facts().width(), picture.width());
        assertEquals(clip.facts().height(), picture.height());
        read++;
      }
    }
    assertTrue(read > 40, "both halves");
  }

  @Test
  void aClipThatIsCutShortWhileItIsOpenIsSaidAtTheFramesThatAreGone() throws Exception {
    Path file = Clips.copy(folder, "slow_supination.mp4");
    byte[] all = Files.readAllBytes(file);
    ClipFile clip = ClipFile.open(file);
    int last = clip.frames().size() - 1;
    try (FrameCache cache = new FrameCache(clip, 8 << 20)) {
      assertEquals(0, cache.frame(0).get().index());
      Files.write(file, Arrays.copyOf(all, all.length / 4));
      ExecutionException gone =
          assertThrows(ExecutionException.class, () -> cache.frame(last).get());
      assertOneLine((ClipException) gone.getCause());
      assertEquals(0, cache.frame(0).get().index(), "what is there is still shown");
    }
  }

  @Test
  void aClipThatIsDeletedWhileItIsOpenIsNamed() throws Exception {
    Path file = Clips.copy(folder, GOOD);
    ClipFile clip = ClipFile.open(file);
    Files.delete(file);
    for (Executable open : List.<Executable>of(clip::newReader, clip::facts, clip::sound)) {
      ClipException gone = assertThrows(ClipException.class, open);
      assertOneLine(gone);
      assertTrue(gone.getMessage().contains(GOOD), gone.getMessage());
    }
  }

  private static ClipException refused(Path file) {
    ClipException refusal = assertThrows(ClipException.class, () -> ClipFile.open(file));
    assertOneLine(refusal);
    assertTrue(refusal.getMessage().contains(file.getFileName().toString()));
    return refusal;
  }

  private static void assertOneLine(ClipException refusal) {
    assertEquals(1, refusal.getMessage().lines().count());
    assertFalse(refusal.getMessage().isBlank());
  }
}
