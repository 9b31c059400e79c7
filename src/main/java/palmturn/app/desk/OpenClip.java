package palmturn.app.desk;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameCache;
import palmturn.trial.TrialId;

/** An open clip with a cache of its frames. */
record OpenClip(TrialId id, ClipFile clip, FrameCache cache) {
  private static final long CACHE_BYTES = 512L << 20;

  static OpenClip open(TrialId id, Path clip) throws ClipException {
    return open(id, ClipFile.open(clip), 1);
  }

  /**
   * Opens a clip whose frames take a share of all that frames may take.
   *
   * @param share 0 to 1
   */
  static OpenClip open(TrialId id, ClipFile clip, double share) {
    return new OpenClip(id, clip, new FrameCache(clip, cacheBytes(share)));
  }

  /** Lets its frames take another share of all that frames may take. */
  void share(double share) {
    cache.limit(cacheBytes(share));
  }

  private static long cacheBytes(double share) {
    return (long) (share * Math.min(CACHE_BYTES, Runtime.getRuntime().maxMemory() / 3));
  }

  static void close(@Nullable OpenClip trial) {
    if (trial != null) {
      trial.cache.close();
    }
  }
}
