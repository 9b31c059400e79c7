package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avutil.av_frame_clone;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import org.bytedeco.ffmpeg.avutil.AVBufferRef;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.jspecify.annotations.Nullable;

/**
 * A bounded cache of decoded frames around the last request, filled by a thread of its own. A new
 * request cancels one still waiting; between requests the thread decodes ahead and behind. Frames
 * are cached as decoded, a third of the size of pictures; the few nearest are cached as pictures
 * too. The farthest frames are evicted first.
 */
public final class FrameCache implements AutoCloseable {
  /** The default bound, 512 MiB. */
  public static final long DEFAULT_BYTES = 512L << 20;

  /** A share of the bound for pictures; the one asked for is kept in any case. */
  private static final int PICTURES_SHARE = 8;

  private static final int PICTURES_NEAR = 2;
  private static final int BYTES_A_PIXEL = 4;

  private final ClipFile clip;
  private final FrameStore<Picture> pictures =
      new FrameStore<>(picture -> bytes(picture), picture -> {});
  private final FrameStore<AVFrame> decoded =
      new FrameStore<>(frame -> bytes(frame), FrameCache::free);
  private final Set<Integer> undecodable = new HashSet<>();
  private final Thread worker;
  private long maxBytes;
  private long frameBytes;
  private long pictureBytes;
  private int wanted = -1;
  private int direction = 1;
  private int most = 1;
  private CacheWindow.@Nullable Run run;
  private @Nullable CompletableFuture<Picture> waiting;
  private boolean closed;

  /** A step of the thread: decode a frame, or convert a decoded one. */
  private record Step(int index, boolean show) {}

  /**
   * Starts the thread.
   *
   * @param maxBytes bound on decoded frames and pictures together
   */
  public FrameCache(ClipFile clip, long maxBytes) {
    this.clip = clip;
    this.maxBytes = maxBytes;
    this.worker = new Thread(this::work, "frames of " + clip.path().getFileName());
    worker.setDaemon(true);
    worker.start();
  }

  /**
   * Requests a frame. The future fails with a {@link ClipException} if it can't be decoded, and is
   * cancelled when another frame is asked for first.
   */
  public synchronized CompletableFuture<Picture> frame(int index) {
    if (closed || index < 0 || index >= clip.frames().size()) {
      return CompletableFuture.failedFuture(
          new ClipException(
              String.format(Locale.ROOT, "%s has no frame %d", clip.path().getFileName(), index)));
    }
    if (waiting != null) {
      waiting.cancel(false);
      waiting = null;
    }
    if (wanted >= 0 && index != wanted) {
      direction = index > wanted ? 1 : -1;
    }
    wanted = index;
    notifyAll();
    Picture picture = pictures.get(index);
    if (picture != null) {
      return CompletableFuture.completedFuture(picture);
    }
    waiting = new CompletableFuture<>();
    return waiting;
  }

  /** Changes the bound, as when another clip is looked at beside this one. */
  public synchronized void limit(long newMaxBytes) {
    maxBytes = newMaxBytes;
    most = most();
    notifyAll();
  }

  private int most() {
    if (frameBytes == 0) {
      return 1;
    }
    long forPictures = Math.max(maxBytes / PICTURES_SHARE, pictureBytes);
    return (int) Math.max(1, (maxBytes - forPictures) / frameBytes);
  }

  private void work() {
    try (FrameReader reader = clip.newReader()) {
      for (Step step = next(); step != null; step = next()) {
        try {
          if (step.show()) {
            show(reader, step.index());
          } else {
            decode(reader, step.index());
          }
        } catch (ClipException e) {
          failFrame(step.index(), e);
        }
      }
    } catch (ClipException e) {
      fail(e);
    } catch (RuntimeException e) {
      // Whoever waits for a frame must not wait for ever.
      fail(new ClipException(clip.path().getFileName() + " can't be read on: " + e, e));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      forget();
    }
  }

  /** Waits for something to do; null once closed. */
  private synchronized @Nullable Step next() throws InterruptedException {
    while (!closed) {
      // Only this thread frees frames, so a lowered bound is applied here.
      trim();
      Step step = wanted < 0 ? null : step();
      if (step != null) {
        return step;
      }
      wait();
    }
    return null;
  }

  private @Nullable Step step() {
    if (waiting != null && decoded.has(wanted)) {
      return new Step(wanted, true);
    }
    if (waiting != null && !inRun(wanted)) {
      run = null;
      return new Step(wanted, false);
    }
    if (waiting == null) {
      for (int i = 1; i <= PICTURES_NEAR; i++) {
        for (int index : new int[] {wanted + i * direction, wanted - i * direction}) {
          if (decoded.has(index) && !pictures.has(index) && roomForPictures(1 + 2 * i)) {
            return new Step(index, true);
          }
        }
      }
    }
    return nextOfRun();
  }

  private boolean roomForPictures(int count) {
    Picture shown = pictures.get(wanted);
    return shown != null && count * bytes(shown) <= maxBytes / PICTURES_SHARE;
  }

  private @Nullable Step nextOfRun() {
    CacheWindow window = window();
    run = window.intersect(run);
    if (run == null) {
      run = window.nextRun(i -> decoded.has(i) || undecodable.contains(i));
    }
    if (run == null) {
      return null;
    }
    return new Step(run.from(), false);
  }

  private CacheWindow window() {
    return new CacheWindow(wanted, direction, clip.frames().size(), most);
  }

  private void show(FrameReader reader, int index) throws ClipException {
    AVFrame frame;
    synchronized (this) {
      frame = decoded.get(index);
    }
    // Only this thread frees frames.
    if (frame != null) {
      Picture picture = reader.picture(frame, index);
      synchronized (this) {
        pictures.put(index, picture);
        trim();
        if (waiting != null && index == wanted) {
          waiting.complete(picture);
          waiting = null;
        }
      }
    }
  }

  private void decode(FrameReader reader, int index) throws ClipException {
    AVFrame made = reader.decode(index, () -> overtaken(index));
    if (made == null) {
      return;
    }
    AVFrame frame = av_frame_clone(made);
    synchronized (this) {
      done(index);
      decoded.put(index, frame);
      pictureBytes = (long) BYTES_A_PIXEL * frame.width() * frame.height();
      frameBytes = bytes(frame);
      most = most();
      trim();
    }
  }

  /** Returns whether another frame is waited for and this one is not on the way to it. */
  private synchronized boolean overtaken(int index) {
    return closed || waiting != null && wanted != index && (decoded.has(wanted) || !inRun(wanted));
  }

  private boolean inRun(int index) {
    return run != null && run.from() <= index && index <= run.to();
  }

  private void done(int index) {
    if (run != null && run.from() == index) {
      run = index < run.to() ? new CacheWindow.Run(index + 1, run.to()) : null;
    }
  }

  private void trim() {
    pictures.trim(maxBytes / PICTURES_SHARE, i -> Math.abs(i - wanted));
    decoded.trim(maxBytes - pictures.bytes(), window()::relativeDistance);
  }

  private synchronized void failFrame(int index, ClipException why) {
    undecodable.add(index);
    done(index);
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

  private synchronized void forget() {
    decoded.clear();
    pictures.clear();
  }

  private static long bytes(Picture picture) {
    return (long) BYTES_A_PIXEL * picture.argb().length;
  }

  private static long bytes(AVFrame frame) {
    long bytes = 0;
    for (int i = 0; i < AVFrame.AV_NUM_DATA_POINTERS; i++) {
      AVBufferRef buffer = frame.buf(i);
      bytes += buffer == null ? 0 : buffer.size();
    }
    return bytes;
  }

  private static void free(AVFrame frame) {
    av_frame_free(frame);
  }

  /** Returns the size of the cached frames and pictures, bytes. */
  public synchronized long keptBytes() {
    return decoded.bytes() + pictures.bytes();
  }

  /** Returns whether every frame of the window around the last request is cached. */
  public synchronized boolean isFilled() {
    return waiting == null
        && run == null
        && window().nextRun(i -> decoded.has(i) || undecodable.contains(i)) == null;
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
