package palmturn.clip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameCacheTest {
  private static final String CLIP = "sample_sef_slow_motion.mp4";

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
