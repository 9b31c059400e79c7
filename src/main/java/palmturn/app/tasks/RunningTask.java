package palmturn.app.tasks;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import palmturn.clip.Progress;

/** A task that runs: its name, its progress, and the request to stop. */
public final class RunningTask implements Progress {
  private static final double SHOWN_STEP = 0.01;

  private final Consumer<Runnable> screen;
  private final String words;
  private final ReadOnlyDoubleWrapper share = new ReadOnlyDoubleWrapper(0);
  private volatile boolean stop;
  private double shownShare = -1;

  /** Starts with nothing done. */
  public RunningTask(Consumer<Runnable> screen, String words) {
    this.screen = screen;
    this.words = words;
  }

  /** Returns the task's name. */
  public String words() {
    return words;
  }

  /** The share that is done, 0 to 1. */
  public ReadOnlyDoubleProperty shareProperty() {
    return share.getReadOnlyProperty();
  }

  /** Asks the task to stop at the next good moment. */
  public void stop() {
    stop = true;
  }

  @Override
  public void at(double done, String what) {
    if (done - shownShare >= SHOWN_STEP) {
      shownShare = done;
      screen.accept(() -> share.set(done));
    }
  }

  @Override
  public boolean stopped() {
    return stop;
  }
}
