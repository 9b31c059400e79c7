package palmturn.app;

import java.util.ArrayDeque;
import java.util.Deque;
import palmturn.app.look.Listeners;
import palmturn.app.stage.Stage;

/**
 * Marks that wait until their frame is on the stage, so that nobody marks a picture that was not
 * seen; keys that come after them wait too, in order.
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

  /** Returns whether a mark waits for its picture. */
  boolean isWaiting() {
    return !running && !waiting.isEmpty();
  }

  /** Runs an edit once the frame that was asked for is shown. */
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

  /** Drops all that waits. */
  void clear() {
    waiting.clear();
  }

  /** Runs something after all that waits. */
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
