package palmturn.app.differences;

import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.clip.Picture;

/**
 * The pictures on both sides of what is played. They are asked for one after the other, since the
 * newest request takes the place of one that still waits.
 */
final class Stills {
  private final Executor screen;
  private final ReadOnlyObjectWrapper<@Nullable Picture> left = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Picture> right = new ReadOnlyObjectWrapper<>();
  private int asked;

  Stills(Executor screen) {
    this.screen = screen;
  }

  ReadOnlyObjectProperty<@Nullable Picture> leftProperty() {
    return left.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable Picture> rightProperty() {
    return right.getReadOnlyProperty();
  }

  /**
   * Shows two frames.
   *
   * @param then is run when both are there, or can't be
   */
  void show(Stage.Pictures from, int leftFrame, int rightFrame, Runnable then) {
    int now = clear();
    fetch(from, now, leftFrame, left, () -> fetch(from, now, rightFrame, right, then));
  }

  /** Shows nothing. */
  int clear() {
    left.set(null);
    right.set(null);
    return ++asked;
  }

  private void fetch(
      Stage.Pictures from,
      int turn,
      int frame,
      ReadOnlyObjectWrapper<@Nullable Picture> into,
      Runnable then) {
    from.frame(frame)
        .whenComplete(
            (came, problem) ->
                screen.execute(
                    () -> {
                      if (turn == asked) {
                        into.set(came);
                        then.run();
                      }
                    }));
  }
}
