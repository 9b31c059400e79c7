package palmturn.film;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Sound;

class ClipWriterTest {
  private static final ClipWriter.Settings SETTINGS =
      new ClipWriter.Settings(64, 48, 60, 200_000, 30, 48_000, 64_000);

  @TempDir Path folder;

  @Test
  void unevenTimesComeBackAsTheyWereGiven() throws Exception {
    Path file = folder.resolve("uneven-é.mp4");
    double[] times = {0, 0.0167, 0.0421, 0.05, 0.1033, 0.1199};
    try (ClipWriter writer = ClipWriter.create(file, SETTINGS)) {
      for (double time : times) {
        writer.picture(time, flat(0xff405060));
      }
      writer.finish();
    }
    assertArrayEquals(times, ClipFile.open(file).frames().timesS(), 0.5 / ClipWriter.TICKS_PER_S);
  }

  @Test
  void aFlashAndAClickAtOneMomentStayTogether() throws Exception {
    Path file = folder.resolve("flash.mp4");
    float[] sound = new float[48_000];
    for (int i = 24_000; i < 24_240; i++) {
      sound[i] = (float) (0.8 * Math.sin(0.7 * i));
    }
    try (ClipWriter writer = ClipWriter.create(file, SETTINGS)) {
      writer.sound(sound);
      for (int i = 0; i < 60; i++) {
        writer.picture(i / 60.0, flat(i == 30 ? 0xffffffff : 0xff101010));
      }
      writer.finish();
    }
    ClipFile clip = ClipFile.open(file);
    int flash = 0;
    try (FrameReader reader = clip.newReader()) {
      while ((reader.read(flash).argb()[0] & 255) < 128) {
        flash++;
      }
    }
    Sound read = clip.sound();
    assertNotNull(read);
    int click = 0;
    while (Math.abs(read.samples()[click]) < 0.25) {
      click++;
    }
    double clickS = read.firstS() + (double) click / read.sampleRate();
    assertEquals(clip.frames().timeS(flash), clickS, 0.001);
  }

  @Test
  void aClipThatWasNotFinishedLeavesNoFile() throws Exception {
    Path file = folder.resolve("half.mp4");
    try (ClipWriter writer = ClipWriter.create(file, SETTINGS)) {
      writer.picture(0, flat(0));
      assertTrue(Files.exists(file));
    }
    assertFalse(Files.exists(file));
  }

  @Test
  void aMissingFolderIsOneLineThatNamesTheFile() {
    Path file = folder.resolve("nowhere").resolve("clip.mp4");
    IOException e = assertThrows(IOException.class, () -> ClipWriter.create(file, SETTINGS));
    assertTrue(e.getMessage().contains("clip.mp4"), e.getMessage());
    assertEquals(1, e.getMessage().lines().count());
  }

  @Test
  void picturesOutOfOrderAreRefused() throws Exception {
    try (ClipWriter writer = ClipWriter.create(folder.resolve("order.mp4"), SETTINGS)) {
      writer.picture(0.5, flat(0));
      assertThrows(IllegalArgumentException.class, () -> writer.picture(0.5, flat(0)));
    }
  }

  private static int[] flat(int argb) {
    int[] pixels = new int[64 * 48];
    Arrays.fill(pixels, argb);
    return pixels;
  }
}
