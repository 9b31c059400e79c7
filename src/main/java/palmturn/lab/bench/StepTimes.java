package palmturn.lab.bench;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameCache;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.trial.UserError;

/**
 * The times from asking for a frame to having its picture, milliseconds.
 *
 * @param forwardMs each step to the next frame, its neighbourhood being at hand
 * @param backMs each step to the frame before, its neighbourhood being at hand
 * @param jumpMs each jump to a frame anywhere
 * @param frameMs of one frame when all are decoded in order, to compare with on other machines
 * @param mostBytes the most that was kept
 */
@SuppressWarnings("ArrayRecordComponent") // Only read.
public record StepTimes(
    double[] forwardMs, double[] backMs, double[] jumpMs, double frameMs, long mostBytes) {
  /** Places, steps at each in both directions, and jumps: enough for a 95th percentile. */
  private static final int PLACES = 6;

  private static final int STEPS = 30;
  private static final int JUMPS = 60;

  /** Five seconds of film, for a steady mean. */
  private static final int FRAMES_IN_ORDER = 300;

  /** A size too small to cost time beyond decoding. */
  private static final int TINY_PX = 32;

  /** An arbitrary seed: the same places at every run. */
  private static final long SEED = 5;

  /** Long past any filling of the cache; a run then goes on unfilled. */
  private static final long LONGEST_WAIT_NS = 20_000_000_000L;

  /**
   * Steps and jumps through a clip of more than {@code 2 * 30} frames, at places drawn by a fixed
   * seed.
   *
   * @throws UserError if it can't be read, is too short, or a wrong frame came
   */
  public static StepTimes of(Path path, Progress progress) throws UserError {
    try {
      ClipFile clip = ClipFile.open(path);
      if (clip.frames().size() <= 2 * STEPS) {
        throw new UserError(path + " is too short to step through: take one of over 60 frames");
      }
      progress.at(0, "reading");
      double frameMs = frameMs(clip);
      try (FrameCache cache = new FrameCache(clip, FrameCache.DEFAULT_BYTES)) {
        return new StepTimer(clip, cache).measure(frameMs, progress);
      }
    } catch (ClipException e) {
      throw new UserError(String.valueOf(e.getMessage()), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new UserError("stopped", e);
    }
  }

  private static double frameMs(ClipFile clip) throws ClipException {
    int count = Math.min(FRAMES_IN_ORDER, clip.frames().size());
    try (FrameReader reader = clip.newReader(TINY_PX)) {
      reader.read(0);
      long start = System.nanoTime();
      for (int i = 1; i < count; i++) {
        reader.read(i);
      }
      return milliseconds(start) / (count - 1);
    }
  }

  private static double milliseconds(long start) {
    return (System.nanoTime() - start) / 1e6;
  }

  private static final class StepTimer {
    private final ClipFile clip;
    private final FrameCache cache;
    private final Random random = new Random(SEED);
    private long mostBytes;

    StepTimer(ClipFile clip, FrameCache cache) {
      this.clip = clip;
      this.cache = cache;
    }

    StepTimes measure(double frameMs, Progress progress) throws UserError, InterruptedException {
      double[] forward = new double[PLACES * STEPS];
      double[] back = new double[PLACES * STEPS];
      for (int place = 0; place < PLACES; place++) {
        progress.at(0.5 * place / PLACES, "stepping");
        int at = STEPS + random.nextInt(clip.frames().size() - 2 * STEPS);
        timeFrame(at);
        waitUntilFilled();
        for (int i = 0; i < STEPS; i++) {
          forward[place * STEPS + i] = timeFrame(++at);
        }
        waitUntilFilled();
        for (int i = 0; i < STEPS; i++) {
          back[place * STEPS + i] = timeFrame(--at);
        }
      }
      double[] jumps = new double[JUMPS];
      for (int i = 0; i < JUMPS; i++) {
        progress.at(0.5 + 0.5 * i / JUMPS, "jumping");
        jumps[i] = timeFrame(random.nextInt(clip.frames().size()));
      }
      return new StepTimes(forward, back, jumps, frameMs, mostBytes);
    }

    private double timeFrame(int index) throws UserError, InterruptedException {
      long start = System.nanoTime();
      Picture picture;
      try {
        picture = cache.frame(index).get();
      } catch (ExecutionException e) {
        throw new UserError(
            String.format(Locale.ROOT, "frame %d did not come: %s", index, e.getMessage()), e);
      } catch (CancellationException e) {
        throw new UserError(String.format(Locale.ROOT, "frame %d did not come", index), e);
      }
      double took = milliseconds(start);
      mostBytes = Math.max(mostBytes, cache.keptBytes());
      if (picture.index() != index || picture.timeS() != clip.frames().timeS(index)) {
        throw new UserError(
            String.format(
                Locale.ROOT, "asked for frame %d, frame %d came", index, picture.index()));
      }
      return took;
    }

    private void waitUntilFilled() throws InterruptedException {
      long start = System.nanoTime();
      while (!cache.isFilled() && System.nanoTime() - start < LONGEST_WAIT_NS) {
        Thread.sleep(2);
      }
    }
  }
}
