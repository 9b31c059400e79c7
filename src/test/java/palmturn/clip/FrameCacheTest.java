package palmturn.clip;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameCacheTest {
  private static final String CLIP = "sample_sef_slow_motion.mp4";
  private static final String WITH_B_FRAMES = "bbb_800x640_768kbps_30fps_avc_pyramid_3b.mp4";

  @TempDir Path folder;

  @Test
  void everyFrameAskedForIsTheOneThatComes() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, CLIP));
    try (FrameCache cache = new FrameCache(clip, 8L << 20)) {
      for (int i : new Random(5).ints(60, 0, clip.frames().size()).toArray()) {
        assertEquals(i, cache.frame(i).get(10, TimeUnit.SECONDS).index());
        assertTrue(cache.keptBytes() <= 8L << 20);
      }
    }
  }

  @Test
  void theFramesAroundAreAtHandAndTheVeryOnesThatAReaderGives() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, WITH_B_FRAMES));
    int at = 100;
    try (FrameCache cache = new FrameCache(clip, 64L << 20);
        FrameReader reader = clip.newReader()) {
      cache.frame(at).get(10, TimeUnit.SECONDS);
      waitFor(cache::isFilled);
      assertTrue(cache.keptBytes() > 16L << 20);
      for (int i : new int[] {at - 1, at - 2, at - 3, at - 20, at + 1, at + 12}) {
        Picture picture = cache.frame(i).get(10, TimeUnit.SECONDS);
        assertEquals(i, picture.index());
        assertArrayEquals(reader.read(i).argb(), picture.argb(), "frame " + i);
        assertTrue(cache.keptBytes() <= 64L << 20);
      }
    }
  }

  @Test
  void whatIsReadAheadAndBehindDoesNotKeepANewRequestWaiting() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, WITH_B_FRAMES));
    int size = clip.frames().size();
    int[] hashes = new int[size];
    try (FrameReader reader = clip.newReader()) {
      for (int i = 0; i < size; i++) {
        hashes[i] = Arrays.hashCode(reader.read(i).argb());
      }
    }
    Random random = new Random(17);
    try (FrameCache cache = new FrameCache(clip, 32L << 20)) {
      for (int k = 0; k < 60; k++) {
        int at = random.nextInt(size);
        for (int i = at; i < Math.min(size, at + random.nextInt(4)); i++) {
          Picture picture = cache.frame(i).get(20, TimeUnit.SECONDS);
          assertEquals(hashes[i], Arrays.hashCode(picture.argb()), "frame " + i);
        }
        Thread.sleep(random.nextInt(30));
      }
    }
  }

  @Test
  void aBoundUnderOneFrameStillGivesEveryFrame() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, CLIP));
    try (FrameCache cache = new FrameCache(clip, 1000)) {
      for (int i : new int[] {5, 4, 6, 0}) {
        assertEquals(i, cache.frame(i).get(10, TimeUnit.SECONDS).index());
      }
    }
  }

  @Test
  void aLowerBoundIsKeptToAndAHigherOneUsedAgain() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, WITH_B_FRAMES));
    try (FrameCache cache = new FrameCache(clip, 32L << 20)) {
      cache.frame(100).get(10, TimeUnit.SECONDS);
      waitFor(() -> cache.isFilled() && cache.keptBytes() > 16L << 20);
      cache.limit(4L << 20);
      waitFor(() -> cache.keptBytes() <= 4L << 20);
      assertEquals(80, cache.frame(80).get(10, TimeUnit.SECONDS).index());
      assertTrue(cache.keptBytes() <= 4L << 20);
      cache.limit(32L << 20);
      waitFor(() -> cache.isFilled() && cache.keptBytes() > 16L << 20);
    }
  }

  private static void waitFor(BooleanSupplier holds) throws InterruptedException {
    for (long waited = 0; !holds.getAsBoolean(); waited += 5) {
      assertTrue(waited < 10_000, "waited in vain");
      Thread.sleep(5);
    }
  }

  @Test
  void anOvertakenRequestIsCancelledAndTheNewestComes() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, CLIP));
    try (FrameCache cache = new FrameCache(clip, FrameCache.DEFAULT_BYTES)) {
      CompletableFuture<Picture> last = null;
      for (int i = clip.frames().size() - 1; i >= 0; i--) {
        CompletableFuture<Picture> each = cache.frame(i);
        if (last != null && !last.isDone()) {
          throw new AssertionError("an overtaken request must be answered at once");
        }
        last = each;
      }
      assertEquals(0, last.get(10, TimeUnit.SECONDS).index());
    }
  }

  @Test
  void aFrameThatIsNotThereIsRefused() throws Exception {
    ClipFile clip = ClipFile.open(Clips.copy(folder, CLIP));
    try (FrameCache cache = new FrameCache(clip, FrameCache.DEFAULT_BYTES)) {
      ExecutionException refusal =
          org.junit.jupiter.api.Assertions.assertThrows(
              ExecutionException.class, () -> cache.frame(clip.frames().size()).get());
      assertTrue(refusal.getCause() instanceof ClipException);
    } catch (CancellationException e) {
      throw new AssertionError(e);
    }
  }
}
