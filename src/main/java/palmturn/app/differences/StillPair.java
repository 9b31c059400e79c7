package palmturn.app.differences;

import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.clip.Picture;

/**
 * The still pictures on both sides of the player. They are requested one after the other, since a
 * new request replaces one that still waits.
 */
final class StillPair {
  private final Executor screen;
  private final ReadOnlyObjectWrapper<@Nullable Picture> left = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Picture> right = new ReadOnlyObjectWrapper<>();
  private int asked;

  StillPair(Executor screen) {
    this.screen = screen;
  }

  ReadOnlyObjectProperty<@Nullable Picture> leftProperty() {
    return left.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable Picture> rightProperty() {
    return right.getReadOnlyProperty();
  }

  /**
   * Shows two frames in place of those before, as they come. Where something else is asked of the
   * clip in between, it gives way, and what has not come is left as it was.
   *
   * @param then is run when both are there, or can't be
   */
  void load(Stage.PictureSource from, int leftFrame, int rightFrame, Runnable then) {
    int turn = ++asked;
    fetch(from, turn, leftFrame, left, () -> fetch(from, turn, rightFrame, right, then));
  }

  /** Shows nothing. */
  void clear() {
    asked++;
    left.set(null);
    right.set(null);
  }

  private void fetch(
      Stage.PictureSource from,
      int turn,
      int frame,
      ReadOnlyObjectWrapper<@Nullable Picture> into,
      Runnable then) {
    from.frame(frame)
        .whenComplete(
            (came, problem) ->
                screen.execute(
                    () -> {
                      if (turn == asked && !(problem instanceof CancellationException)) {
                        into.set(came);
                        then.run();
                      }
                    }));
  }
}
