package palmturn.clip;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/**
 * Keeps decoded frames near the one last asked for, on a thread of its own. The newest request
 * comes first and those still waiting are cancelled; between requests it reads ahead in the
 * direction of travel. Bounded: the frames asked for longest ago go first.
 */
public final class FrameCache implements AutoCloseable {
  /** The usual bound, 512 MiB. */
  public static final long DEFAULT_BYTES = 512L << 20;

  private static final int AHEAD = 12;
  private static final int BYTES_A_PIXEL = 4;

  private final ClipFile clip;
  private final long maxBytes;
  private final LinkedHashMap<Integer, Picture> kept = new LinkedHashMap<>(64, 0.75f, true);
  private final Thread worker;
  private long keptBytes;
  private int wanted = -1;
  private int direction = 1;
  private int ahead;
  private @Nullable CompletableFuture<Picture> waiting;
  private boolean closed;

  /**
   * Starts the thread.
   *
   * @param maxBytes how much decoded pictures may take together
   */
  public FrameCache(ClipFile clip, long maxBytes) {
    this.clip = clip;
    this.maxBytes = maxBytes;
    this.worker = new Thread(this::work, "frames of " + clip.path().getFileName());
    worker.setDaemon(true);
    worker.start();
  }

  /**
   * Asks for a frame. The future fails with a {@link ClipException} if it can't be decoded, and is
   * cancelled when another frame is asked for first.
   */
  public synchronized CompletableFuture<Picture> frame(int index) {
    if (closed || index < 0 || index >= clip.frames().size()) {
      return CompletableFuture.failedFuture(
          new ClipException("%s has no frame %d".formatted(clip.path().getFileName(), index)));
    }
    if (waiting != null) {
      waiting.cancel(false);
      waiting = null;
    }
    if (wanted >= 0 && index != wanted) {
      direction = index > wanted ? 1 : -1;
    }
    wanted = index;
    ahead = 0;
    notifyAll();
    Picture picture = kept.get(index);
    if (picture != null) {
      return CompletableFuture.completedFuture(picture);
    }
    waiting = new CompletableFuture<>();
    return waiting;
  }

  private void work() {
    FrameReader reader = null;
    try {
      reader = clip.newReader();
      for (int next = next(); next >= 0; next = next()) {
        readAround(reader, next);
      }
    } catch (ClipException e) {
      fail(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      if (reader != null) {
        reader.close();
      }
    }
  }

  /** Waits for something to read and returns it, −1 once closed. */
  private synchronized int next() throws InterruptedException {
    while (!closed) {
      if (waiting != null) {
        return wanted;
      }
      while (wanted >= 0 && ahead < AHEAD) {
        ahead++;
        int index = wanted + direction * ahead;
        if (index >= 0 && index < clip.frames().size() && !kept.containsKey(index)) {
          return index;
        }
      }
      wait();
    }
    return -1;
  }

  /** Backwards, a whole stretch is decoded forwards once rather than each frame from its key. */
  private void readAround(FrameReader reader, int index) {
    int from = index;
    synchronized (this) {
      if (direction < 0) {
        while (from > 0 && from > index - AHEAD && !kept.containsKey(from - 1)) {
          from--;
        }
      }
    }
    for (int i = from; i <= index; i++) {
      try {
        keep(reader.read(i));
      } catch (ClipException e) {
        if (i == index) {
          failFrame(index, e);
        }
      }
      if (overtaken(index)) {
        return;
      }
    }
  }

  private synchronized boolean overtaken(int index) {
    return closed || waiting != null && wanted != index;
  }

  private synchronized void keep(Picture picture) {
    if (kept.put(picture.index(), picture) == null) {
      keptBytes += bytes(picture);
    }
    Iterator<Picture> oldest = kept.values().iterator();
    while (keptBytes > maxBytes && kept.size() > 1) {
      Picture gone = oldest.next();
      if (gone != picture) {
        oldest.remove();
        keptBytes -= bytes(gone);
      }
    }
    if (waiting != null && picture.index() == wanted) {
      waiting.complete(picture);
      waiting = null;
    }
  }

  private synchronized void failFrame(int index, ClipException why) {
    if (waiting != null && wanted == index) {
      waiting.completeExceptionally(why);
      waiting = null;
    }
  }

  private synchronized void fail(ClipException why) {
    closed = true;
    if (waiting != null) {
      waiting.completeExceptionally(why);
      waiting = null;
    }
  }

  private static long bytes(Picture picture) {
    return (long) BYTES_A_PIXEL * picture.argb().length;
  }

  /** Returns how much the kept frames take, bytes. */
  synchronized long keptBytes() {
    return keptBytes;
  }

  @Override
  public void close() {
    synchronized (this) {
      closed = true;
      if (waiting != null) {
        waiting.completeExceptionally(new CancellationException("closed"));
        waiting = null;
      }
      notifyAll();
    }
    try {
      worker.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
