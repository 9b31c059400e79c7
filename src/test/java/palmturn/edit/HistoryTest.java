package palmturn.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HistoryTest {
  private final History<String> start = History.of("a");

  @Test
  void undoReturnsTheStateBeforeAndRedoTheStateAfter() {
    History<String> two = start.then("b", "to b").then("c", "to c");

    assertEquals("b", two.undo().now());
    assertEquals("a", two.undo().undo().now());
    assertEquals("c", two.undo().undo().redo().redo().now());
  }

  @Test
  void eachStepCarriesItsSentenceBothWays() {
    History<String> two = start.then("b", "to b").then("c", "to c");

    assertEquals(Optional.of("to c"), two.undoSentence());
    assertEquals(Optional.of("to b"), two.undo().undoSentence());
    assertEquals(Optional.of("to c"), two.undo().redoSentence());
    assertEquals(Optional.empty(), two.redoSentence());
    assertEquals(Optional.empty(), start.undoSentence());
  }

  @Test
  void stepThatChangesNothingIsRefused() {
    History<String> undone = start.then("b", "to b").undo();

    assertSame(undone, undone.then("a", "nothing"));
    assertEquals(Optional.of("to b"), undone.redoSentence());
  }

  @Test
  void newStepGivesUpWhatWasUndone() {
    History<String> other = start.then("b", "to b").undo().then("d", "to d");

    assertEquals("d", other.redo().now());
    assertEquals("a", other.undo().now());
  }

  @Test
  void endsAreSafe() {
    assertSame(start, start.undo());
    assertSame(start, start.redo());
  }

  @Test
  void changedMeansNotAtTheSavedState() {
    History<String> edited = start.then("b", "to b");

    assertFalse(start.changed());
    assertTrue(edited.changed());
    assertFalse(edited.undo().changed());
    assertFalse(edited.withSaved("b").changed());
    assertTrue(edited.withSaved("b").undo().changed());
  }

  @ParameterizedTest
  @ValueSource(longs = {3, 14, 159, 2653})
  void behavesAsAListWithAPlace(long seed) {
    Random random = new Random(seed);
    List<Integer> states = new ArrayList<>(List.of(0));
    int place = 0;
    History<Integer> history = History.of(0);
    for (int i = 0; i < 5000; i++) {
      switch (random.nextInt(4)) {
        case 0 -> {
          history = history.undo();
          place = Math.max(0, place - 1);
        }
        case 1 -> {
          history = history.redo();
          place = Math.min(states.size() - 1, place + 1);
        }
        default -> {
          int next = random.nextInt(50);
          if (next != states.get(place)) {
            states = new ArrayList<>(states.subList(0, place + 1));
            states.add(next);
            place++;
          }
          history = history.then(next, "to " + next);
        }
      }
      assertEquals(states.get(place), history.now());
      assertEquals(place > 0, history.undoSentence().isPresent());
      assertEquals(place < states.size() - 1, history.redoSentence().isPresent());
    }
  }

  @Test
  void amendingIsNoStep() {
    History<String> history = History.of("a").then("b", "to b").amended("B");
    assertEquals("B", history.now());
    assertEquals("a", history.undo().now());
    assertEquals("B", history.undo().redo().now());
  }
}
