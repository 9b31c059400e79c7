package palmturn.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets long work end in order where it is told to from outside, as by Ctrl-C: what is being done is
 * stopped at the next good moment, and the program ends when its last word is said.
 */
final class Interruption implements AutoCloseable {
  /** Longer than a piece of work takes to notice; after that the program ends as it stands. */
  private static final long PATIENCE_S = 10;

  private final CountDownLatch over = new CountDownLatch(1);
  private final Thread hook = new Thread(this::await, "interruption");
  private volatile boolean asked;

  private Interruption() {}

  /** Returns what listens until it is closed. */
  static Interruption listen() {
    Interruption made = new Interruption();
    Runtime.getRuntime().addShutdownHook(made.hook);
    return made;
  }

  boolean asked() {
    return asked;
  }

  // Nothing is to be done with what await says: the program ends either way.
  @SuppressWarnings("ResultOfMethodCallIgnored")
  private void await() {
    asked = true;
    try {
      over.await(PATIENCE_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    over.countDown();
    if (!asked) {
      try {
        Runtime.getRuntime().removeShutdownHook(hook);
      } catch (IllegalStateException e) {
        // The program is ending this very moment, and no longer waits.
        return;
      }
    }
  }
}
