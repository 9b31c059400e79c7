package palmturn.app;

import java.util.ArrayDeque;
import java.util.Deque;
import palmturn.app.look.Listeners;
import palmturn.app.stage.Stage;

/**
 * Lets a mark wait until the frame that it is for is on the stage, so that nobody marks a picture
 * that was not seen; keys that come after it wait with it, in order.
 */
final class PendingMarks {
  private final Stage stage;
  private final Deque<Runnable> waiting = new ArrayDeque<>();
  private boolean running;

  PendingMarks(Stage stage, Listeners follow) {
    this.stage = stage;
    follow.onChange(stage.pictureProperty(), this::runWaiting);
    follow.onChange(stage.framesProperty(), waiting::clear);
    // Where no picture will come a mark would be a guess.
    follow.onValue(
        stage.troubleProperty(),
        trouble -> {
          if (!trouble.isEmpty()) {
            waiting.clear();
          }
        });
  }

  /** Returns whether something waits for a picture. */
  boolean isWaiting() {
    return !running && !waiting.isEmpty();
  }

  /** Does something to the frame that was asked for, once it is shown. */
  void runOnFrame(Runnable what) {
    if (stage.showsItsFrame()) {
      what.run();
    } else if (stage.awaitsPicture()) {
      // While waiting work goes on, what it asks for comes before what was asked for later.
      if (running) {
        waiting.addFirst(what);
      } else {
        waiting.addLast(what);
      }
    }
  }

  /** Forgets what waits. */
  void clear() {
    waiting.clear();
  }

  /** Does something after all that waits. */
  void runAfter(Runnable what) {
    waiting.addLast(what);
  }

  private void runWaiting() {
    running = true;
    try {
      while (!waiting.isEmpty() && stage.showsItsFrame()) {
        waiting.removeFirst().run();
      }
    } finally {
      running = false;
    }
  }
}
