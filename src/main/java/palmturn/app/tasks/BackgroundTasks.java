package palmturn.app.tasks;

import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/** Tasks on one thread of their own, in the order in which they were asked for. */
public final class BackgroundTasks implements Tasks, AutoCloseable {
  private final ExecutorService thread;
  private final Executor screen;

  /**
   * Starts nothing yet.
   *
   * @param name of the thread
   * @param screen hands a receiver to the screen's thread
   */
  public BackgroundTasks(String name, Executor screen) {
    this.screen = screen;
    thread =
        Executors.newSingleThreadExecutor(
            work -> {
              Thread made = new Thread(work, name);
              made.setDaemon(true);
              return made;
            });
  }

  @Override
  public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    thread.execute(
        () -> {
          try {
            T result = work.call();
            screen.execute(() -> done.accept(result));
          } catch (Exception e) {
            screen.execute(() -> failed.accept(e));
          }
        });
  }

  /** Waits until what was asked for is done, so that no mark is lost when the window closes. */
  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(10, TimeUnit.SECONDS)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
