package palmturn.estimate.image;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;
import palmturn.clip.StoppedException;

/**
 * The frames of a stretch, in order and shrunk, decoded on a thread of its own a few frames ahead,
 * so that decoding costs no time of its own. Frames that can't be decoded are left out.
 */
public final class FrameFeed implements AutoCloseable {
  /** Frames decoded ahead: enough to keep both threads busy, few enough to hold in memory. */
  private static final int AHEAD = 8;

  /** A frame, or why there will be no more: neither at the end. */
  private record Step(@Nullable Picture picture, @Nullable ClipException failure) {}

  private final BlockingQueue<Step> queue = new ArrayBlockingQueue<>(AHEAD);
  private final Thread thread;
  private volatile int unreadable;

  /**
   * Starts decoding.
   *
   * @param from first frame's place in the frame table
   * @param to place after the last frame
   */
  public FrameFeed(ClipFile clip, int from, int to, int longSidePx) {
    thread = new Thread(() -> decode(clip, from, to, longSidePx), "frames of a clip");
    thread.setDaemon(true);
    thread.start();
  }

  private void decode(ClipFile clip, int from, int to, int longSidePx) {
    try {
      try (FrameReader reader = clip.newReader(longSidePx)) {
        int inARow = 0;
        for (int i = from; i < to; i++) {
          Picture picture = read(reader, i);
          if (picture == null) {
            unreadable++;
            inARow++;
          } else {
            inARow = 0;
            queue.put(new Step(picture, null));
          }
          if (inARow > 60) {
            break; // Each try seeks anew: a long torn stretch would take minutes.
          }
        }
        queue.put(new Step(null, null));
      } catch (ClipException e) {
        queue.put(new Step(null, e));
      } catch (RuntimeException e) {
        // Whoever waits for the next frame must not wait for ever.
        String name = String.valueOf(clip.path().getFileName());
        queue.put(new Step(null, new ClipException(name + " can't be read on: " + e, e)));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static @Nullable Picture read(FrameReader reader, int index) {
    try {
      return reader.read(index);
    } catch (ClipException e) {
      return null;
    }
  }

  /**
   * Returns the next frame, null after the last.
   *
   * @throws ClipException if the clip can't be opened any more
   * @throws StoppedException if the thread is interrupted while it waits
   */
  @Nullable
  public Picture next() throws ClipException {
    try {
      Step step = queue.take();
      if (step.failure() != null) {
        throw step.failure();
      }
      return step.picture();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoppedException();
    }
  }

  /** Returns how many frames could not be decoded so far. */
  public int unreadable() {
    return unreadable;
  }

  @Override
  public void close() {
    thread.interrupt();
    queue.clear();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
