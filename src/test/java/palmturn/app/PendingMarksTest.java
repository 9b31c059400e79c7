package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import palmturn.app.look.Listeners;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTables;
import palmturn.clip.Picture;

class PendingMarksTest {
  private final Map<Integer, CompletableFuture<Picture>> coming = new HashMap<>();
  private final List<String> done = new ArrayList<>();
  private final Stage stage = new Stage(Runnable::run);
  private final PendingMarks later = new PendingMarks(stage, new Listeners());

  @BeforeEach
  void open() {
    stage.open(
        FrameTables.steady(60, 60),
        index -> coming.computeIfAbsent(index, none -> new CompletableFuture<>()),
        null,
        null);
    come(0);
  }

  @Test
  void markWaitsForThePictureThatWasAskedForAndKeysAfterItWaitInOrder() {
    mark("a");
    stage.step(5);
    mark("b");
    assertTrue(later.isWaiting());
    later.runAfter(() -> stage.step(2));
    later.runAfter(() -> mark("c"));
    assertEquals(List.of("a at 0"), done);
    come(5);
    assertEquals(List.of("a at 0", "b at 5"), done);
    assertEquals(7, stage.frameProperty().get());
    come(7);
    assertEquals(List.of("a at 0", "b at 5", "c at 7"), done);
    assertFalse(later.isWaiting());
  }

  @Test
  void nothingIsMarkedWhereThePictureNeverComes() {
    stage.step(5);
    mark("a");
    coming.get(5).completeExceptionally(new IllegalStateException("damaged"));
    assertFalse(later.isWaiting());
    mark("b");
    assertFalse(later.isWaiting());
    stage.step(1);
    mark("c");
    come(6);
    assertEquals(List.of("c at 6"), done);
  }

  private void mark(String name) {
    later.runOnFrame(() -> done.add(name + " at " + stage.frameProperty().get()));
  }

  private void come(int frame) {
    coming.get(frame).complete(new Picture(frame, frame / 60.0, 1, 1, new int[1]));
  }
}
