package palmturn.estimate;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;

/**
 * Frames of a clip in order, in grey and shrunk, decoded on a thread of their own a few frames
 * ahead. For one thread; to be closed.
 */
final class GrayFrames implements AutoCloseable {
  private static final int AHEAD = 4;

  /**
   * One frame.
   *
   * @param timeS its presentation time, seconds
   * @param gray luma, row by row
   */
  @SuppressWarnings("ArrayRecordComponent") // Copying every frame would cost more than it protects.
  record Gray(double timeS, int width, int height, byte[] gray) {}

  /** A frame, or why there is none. */
  private record Item(@Nullable Gray gray, @Nullable ClipException why) {}

  private final BlockingQueue<Item> queue = new ArrayBlockingQueue<>(AHEAD);
  private final Thread thread;
  private volatile boolean closed;
  private int left;

  GrayFrames(ClipFile clip, int fromFrame, int toFrame, int longSidePx) {
    left = toFrame - fromFrame;
    thread = new Thread(() -> decode(clip, fromFrame, toFrame, longSidePx), "palmturn-decode");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Returns the next frame, null after the last.
   *
   * @throws ClipException if the file is damaged there; reading ends with it
   */
  @Nullable Gray next() throws ClipException {
    if (left <= 0) {
      return null;
    }
    try {
      Item item = queue.take();
      left--;
      if (item.why() != null) {
        left = 0;
        throw item.why();
      }
      return item.gray();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new ClipException("reading " + thread.getName() + " was interrupted", e);
    }
  }

  private void decode(ClipFile clip, int from, int to, int longSidePx) {
    try (FrameReader reader = clip.newReader(longSidePx)) {
      for (int i = from; i < to && !closed; i++) {
        Picture picture = reader.read(i);
        put(
            new Item(
                new Gray(picture.timeS(), picture.width(), picture.height(), luma(picture.argb())),
                null));
      }
    } catch (ClipException e) {
      put(new Item(null, e));
    } catch (RuntimeException | Error e) {
      put(new Item(null, new ClipException(clip.path().getFileName() + " can't be read", e)));
    }
  }

  private void put(Item item) {
    try {
      while (!closed && !queue.offer(item, 50, TimeUnit.MILLISECONDS)) {
        // The reader of the queue is busy; look whether it still wants the frame.
      }
    } catch (InterruptedException e) {
      closed = true;
    }
  }

  /** Returns luma by the weights of ITU-R BT.601, rounded down. */
  static byte[] luma(int[] argb) {
    byte[] gray = new byte[argb.length];
    for (int i = 0; i < argb.length; i++) {
      int p = argb[i];
      gray[i] = (byte) ((77 * (p >> 16 & 255) + 150 * (p >> 8 & 255) + 29 * (p & 255)) >> 8);
    }
    return gray;
  }

  @Override
  public void close() {
    closed = true;
    queue.clear();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
