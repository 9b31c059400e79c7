package palmturn.app.tasks;

import java.util.concurrent.Callable;
import java.util.function.Consumer;

/** Runs slow work elsewhere and hands its result back to the screen's thread. */
public interface Tasks {
  /**
   * Runs work; one of the two receivers gets its outcome on the screen's thread.
   *
   * @param done gets the result
   * @param failed gets what the work threw
   */
  <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed);

  /** Returns tasks that run at once on the calling thread. */
  static Tasks direct() {
    return new Tasks() {
      @Override
      public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
        T result;
        try {
          result = work.call();
        } catch (Exception e) {
          failed.accept(e);
          return;
        }
        done.accept(result);
      }
    };
  }
}
