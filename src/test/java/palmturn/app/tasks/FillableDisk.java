package palmturn.app.tasks;

import java.util.concurrent.Callable;
import java.util.function.Consumer;
import palmturn.trial.UserError;

/** Tasks that run at once, and fail as on a full disk while they are told that it is full. */
public final class FillableDisk implements Tasks {
  private boolean full;

  public void setFull(boolean isFull) {
    full = isFull;
  }

  @Override
  public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    if (full) {
      failed.accept(new UserError("the disk is full"));
    } else {
      Tasks.direct().run(work, done, failed);
    }
  }
}
