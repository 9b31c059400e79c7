package palmturn.app.tasks;

import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.DoubleFunction;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;

/** A long task: one at a time, with its progress, and it can be stopped. */
public final class LongTask {
  private static final double SHOWN_STEP = 0.01;

  private final Tasks tasks;
  private final Executor screen;
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyDoubleWrapper share = new ReadOnlyDoubleWrapper(0);
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private @Nullable TaskProgress current;

  /**
   * The work of a task.
   *
   * @param <T> its result
   */
  @FunctionalInterface
  public interface Work<T> {
    /** Does the work, and returns its result. */
    T run(Progress progress) throws Exception;
  }

  /**
   * Starts with nothing to do.
   *
   * @param tasks runs the work
   * @param screen hands its progress to the screen's thread
   */
  public LongTask(Tasks tasks, Executor screen) {
    this.tasks = tasks;
    this.screen = screen;
  }

  /** Whether a task is running. */
  public ReadOnlyBooleanProperty runningProperty() {
    return running.getReadOnlyProperty();
  }

  /** The share that is done, 0 to 1. */
  public ReadOnlyDoubleProperty shareProperty() {
    return share.getReadOnlyProperty();
  }

  /** The running task and its progress, in words; empty when none runs. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /**
   * Starts a task; does nothing while another one runs.
   *
   * @param saying words for a share of the work
   * @param ended runs first, however it ended
   * @param done gets the result
   * @param failed gets the problem, unless the task was stopped
   */
  public <T> void start(
      DoubleFunction<String> saying,
      Work<T> work,
      Runnable ended,
      Consumer<T> done,
      Consumer<Exception> failed) {
    if (running.get()) {
      return;
    }
    TaskProgress run = new TaskProgress(saying);
    current = run;
    running.set(true);
    progress(run, 0);
    tasks.run(
        () -> work.run(run),
        result -> {
          end(ended);
          done.accept(result);
        },
        problem -> {
          end(ended);
          if (!run.stopped()) {
            failed.accept(problem);
          }
        });
  }

  /** Asks it to stop. */
  public void stop() {
    TaskProgress run = current;
    if (run != null) {
      run.stop = true;
      words.set("Stopping");
    }
  }

  private void end(Runnable ended) {
    current = null;
    ended.run();
    running.set(false);
    share.set(0);
    words.set("");
  }

  private void progress(TaskProgress run, double done) {
    if (current == run && !run.stopped()) {
      share.set(done);
      words.set(run.saying.apply(done));
    }
  }

  /** Progress reported on the work's thread, and passed to the screen when it is visibly more. */
  private final class TaskProgress implements Progress {
    private final DoubleFunction<String> saying;
    private volatile boolean stop;
    private double shown = -1;

    TaskProgress(DoubleFunction<String> saying) {
      this.saying = saying;
    }

    @Override
    public void at(double done, String what) {
      if (done - shown >= SHOWN_STEP) {
        shown = done;
        screen.execute(() -> progress(this, done));
      }
    }

    @Override
    public boolean stopped() {
      return stop;
    }
  }
}
