package palmturn.app.desk;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameCache;
import palmturn.trial.TrialId;

/** The clip of the trial that is open, and its frames at hand. */
record OpenTrial(TrialId id, ClipFile clip, FrameCache cache) {
  private static final long CACHE_BYTES = 512L << 20;

  static OpenTrial open(TrialId id, Path clip) throws ClipException {
    ClipFile file = ClipFile.open(clip);
    return new OpenTrial(id, file, new FrameCache(file, cacheBytes()));
  }

  private static long cacheBytes() {
    return Math.min(CACHE_BYTES, Runtime.getRuntime().maxMemory() / 3);
  }

  static void close(@Nullable OpenTrial trial) {
    if (trial != null) {
      trial.cache.close();
    }
  }
}
