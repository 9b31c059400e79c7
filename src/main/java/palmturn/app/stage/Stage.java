package palmturn.app.stage;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;

/**
 * The current frame of a trial and the picture of exactly that frame; a picture that arrives for
 * another frame is never shown.
 */
public final class Stage {
  /** A source of pictures. */
  @FunctionalInterface
  public interface PictureSource {
    /** Returns the picture of a frame, in time. */
    CompletableFuture<Picture> frame(int index);
  }

  private static final int NONE = -1;

  private final Executor screen;
  private final ReadOnlyIntegerWrapper frame = new ReadOnlyIntegerWrapper(0);
  private final ReadOnlyObjectWrapper<@Nullable Picture> picture = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable FrameTable> frames = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<PlaySpeed> speed =
      new ReadOnlyObjectWrapper<>(PlaySpeed.QUARTER);
  private final ReadOnlyBooleanWrapper playing = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper looping = new ReadOnlyBooleanWrapper(false);
  private final Viewport viewing = new Viewport();
  private @Nullable PictureSource pictures;
  private int first;
  private int last;
  private int requested = NONE;
  private int loopFrom;
  private int loopTo;
  private double playFromS;
  private long playSince;
  private boolean clockStarted;

  /**
   * Starts with no trial.
   *
   * @param screen hands work to the screen's thread
   */
  public Stage(Executor screen) {
    this.screen = screen;
  }

  /** The frame that the trial is at. */
  public ReadOnlyIntegerProperty frameProperty() {
    return frame.getReadOnlyProperty();
  }

  /** The picture of that frame; null until it is there. */
  public ReadOnlyObjectProperty<@Nullable Picture> pictureProperty() {
    return picture.getReadOnlyProperty();
  }

  /** The clip's frames; null when no trial is open. */
  public ReadOnlyObjectProperty<@Nullable FrameTable> framesProperty() {
    return frames.getReadOnlyProperty();
  }

  /** The play speed. */
  public ReadOnlyObjectProperty<PlaySpeed> speedProperty() {
    return speed.getReadOnlyProperty();
  }

  /** True while playing. */
  public ReadOnlyBooleanProperty playingProperty() {
    return playing.getReadOnlyProperty();
  }

  /** True while looping. */
  public ReadOnlyBooleanProperty loopingProperty() {
    return looping.getReadOnlyProperty();
  }

  /** The visible part of the picture. */
  public Viewport viewing() {
    return viewing;
  }

  /** Returns a picture of the open clip, in time; null without a clip. */
  @Nullable CompletableFuture<Picture> fetch(int index) {
    return pictures == null ? null : pictures.frame(index);
  }

  /** Hands work to the screen's thread. */
  void onScreen(Runnable work) {
    screen.execute(work);
  }

  /** The reason why the picture can't be shown; empty if it can. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /**
   * Opens a stretch of a clip at its first frame.
   *
   * @param fromS start of the stretch, media seconds; null for the clip's start
   * @param toS end of the stretch, media seconds; null for the clip's end
   */
  public void open(
      FrameTable table, PictureSource source, @Nullable Double fromS, @Nullable Double toS) {
    close();
    viewing.showWhole();
    first = fromS == null ? 0 : table.nearest(fromS);
    last = toS == null ? table.size() - 1 : Math.max(first, table.indexAt(toS));
    pictures = source;
    frame.set(first);
    frames.set(table);
    request(first);
  }

  /** Closes the clip. */
  public void close() {
    stop();
    pictures = null;
    requested = NONE;
    frames.set(null);
    picture.set(null);
    trouble.set("");
    frame.set(0);
  }

  /** Returns whether the picture on the stage is of the frame that it is at. */
  public boolean showsItsFrame() {
    Picture shown = picture.get();
    return shown != null && shown.index() == frame.get();
  }

  /** Returns whether a picture is on its way. */
  public boolean awaitsPicture() {
    return requested != NONE;
  }

  /** Goes to a frame, or to the nearest one of the stretch. */
  public void seek(int index) {
    stop();
    showFrame(index);
  }

  /** Goes some frames on, or back when negative. */
  public void step(int by) {
    seek(frame.get() + by);
  }

  /** Goes to the first frame of the stretch. */
  public void goToStart() {
    seek(first);
  }

  /** Goes to the last frame of the stretch. */
  public void goToEnd() {
    seek(last);
  }

  /** Returns the first frame of the stretch. */
  public int first() {
    return first;
  }

  /** Returns the last frame of the stretch. */
  public int last() {
    return last;
  }

  /** Returns the time of the frame it is at, media seconds; 0 without a clip. */
  public double timeS() {
    FrameTable table = frames.get();
    return table == null ? 0 : table.timeS(frame.get());
  }

  /** Plays, or stops. From the last frame it plays from the start. */
  public void playOrStop() {
    if (playing.get()) {
      stop();
    } else if (frames.get() != null) {
      if (frame.get() >= last) {
        showFrame(first);
      }
      startClock();
      playing.set(true);
    }
  }

  /** Plays the whole stretch of the trial again and again. */
  public void loopTrial() {
    loop(first, last);
  }

  /** Plays from one moment to another, media seconds, again and again. */
  public void loop(double fromS, double toS) {
    FrameTable table = frames.get();
    if (table != null) {
      loop(table.indexAt(fromS), table.indexAt(toS));
    }
  }

  private void loop(int from, int to) {
    if (frames.get() != null) {
      loopFrom = Math.max(first, Math.min(from, last));
      loopTo = Math.max(loopFrom, Math.min(to, last));
      showFrame(loopFrom);
      startClock();
      looping.set(true);
      playing.set(true);
    }
  }

  /** Plays twice as fast, up to 1. */
  public void faster() {
    setSpeed(speed.get().faster());
  }

  /** Plays half as fast, down to 1/16. */
  public void slower() {
    setSpeed(speed.get().slower());
  }

  /** Stops playing. */
  public void stop() {
    playing.set(false);
    looping.set(false);
  }

  /**
   * Goes to the frame that is due while playing.
   *
   * @param nanos of a clock that never jumps
   */
  public void tick(long nanos) {
    FrameTable table = frames.get();
    if (!playing.get() || table == null) {
      return;
    }
    if (!clockStarted) {
      playSince = nanos;
      clockStarted = true;
    }
    if (requested != NONE) {
      return;
    }
    double dueS = playFromS + (nanos - playSince) / 1e9 * speed.get().factor();
    boolean loop = looping.get();
    int end = loop ? loopTo : last;
    int due = Math.min(table.indexAt(dueS), end);
    if (loop && frame.get() >= end) {
      // The last picture has been shown for its time; only now the first one is due again.
      if (dueS >= table.timeS(end) + table.medianS()) {
        showFrame(loopFrom);
        startClock();
      }
      return;
    }
    if (due != frame.get()) {
      showFrame(due);
    }
    if (due >= end && !loop) {
      stop();
    }
  }

  private void setSpeed(PlaySpeed next) {
    startClock();
    speed.set(next);
  }

  private void startClock() {
    playFromS = timeS();
    clockStarted = false;
  }

  private void showFrame(int index) {
    if (frames.get() == null) {
      return;
    }
    int wanted = Math.max(first, Math.min(last, index));
    if (wanted != frame.get() || requested == NONE && !isShown(wanted)) {
      frame.set(wanted);
      request(wanted);
    }
  }

  private boolean isShown(int index) {
    Picture now = picture.get();
    return now != null && now.index() == index;
  }

  private void request(int wanted) {
    PictureSource source = pictures;
    if (source == null) {
      return;
    }
    requested = wanted;
    source
        .frame(wanted)
        .whenComplete(
            (came, problem) -> screen.execute(() -> arrived(source, wanted, came, problem)));
  }

  private void arrived(
      PictureSource source, int wanted, @Nullable Picture came, @Nullable Throwable problem) {
    if (source != pictures || wanted != frame.get()) {
      return;
    }
    requested = NONE;
    if (problem instanceof CancellationException) {
      return;
    }
    if (came != null && came.index() == wanted) {
      trouble.set("");
      picture.set(came);
    } else {
      stop();
      picture.set(null);
      trouble.set(problem == null ? "this frame can't be shown" : rootMessage(problem));
    }
  }

  private static String rootMessage(Throwable problem) {
    Throwable root = problem;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    String message = root.getMessage();
    return message == null ? root.getClass().getSimpleName() : message;
  }
}
