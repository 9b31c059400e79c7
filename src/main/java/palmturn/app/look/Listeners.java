package palmturn.app.look;

import java.util.function.Consumer;
import javafx.animation.AnimationTimer;
import javafx.beans.Observable;
import javafx.beans.value.ObservableValue;
import javafx.util.Subscription;

/** The listeners of a set of views, all removed at once when other views take their place. */
public final class Listeners {
  private Subscription all = Subscription.EMPTY;

  /** Runs something after each change. */
  public void onChange(Observable what, Runnable then) {
    all = all.and(what.subscribe(then));
  }

  /** Passes the value on now and after each change. */
  public <T> void onValue(ObservableValue<T> what, Consumer<T> to) {
    all = all.and(what.subscribe(to));
  }

  /** Runs something before each picture of the screen while a value is true. */
  public void onEachFrame(ObservableValue<Boolean> running, Runnable then) {
    AnimationTimer clock =
        new AnimationTimer() {
          @Override
          public void handle(long now) {
            then.run();
          }
        };
    onValue(
        running,
        runs -> {
          if (runs) {
            clock.start();
          } else {
            clock.stop();
          }
        });
    onEnd(clock::stop);
  }

  /** Runs something at the end. */
  public void onEnd(Runnable then) {
    all = all.and(then::run);
  }

  /** Removes all listeners. */
  public void end() {
    all.unsubscribe();
  }
}
