package palmturn.clip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class WindowTest {
  private static final long[] SEEDS = {1, 2, 3, 4, 5, 6, 7, 8};

  @Test
  void theNextFramesComeFirstThenThoseBehindThenTheRestAhead() {
    Set<Integer> atHand = new HashSet<>(Set.of(500));
    Window window = new Window(500, 1, 1000, 101);
    List<Window.Run> runs = new ArrayList<>();
    for (Window.Run run = window.missing(atHand::contains);
        run != null;
        run = window.missing(atHand::contains)) {
      runs.add(run);
      for (int i = run.from(); i <= run.to(); i++) {
        atHand.add(i);
      }
    }
    assertEquals(
        List.of(new Window.Run(501, 512), new Window.Run(455, 499), new Window.Run(513, 545)),
        runs);
  }

  @Test
  void goingBackMoreIsKeptBehind() {
    Window window = new Window(500, -1, 1000, 101);
    assertEquals(437, window.first());
    assertEquals(527, window.last());
    assertEquals(new Window.Run(437, 499), window.missing(i -> i == 500));
  }

  @Test
  void oneStepBackAsksForNothingNew() {
    Window window = new Window(500, -1, 1000, 101);
    int first = window.first();
    int last = window.last();
    Window after = new Window(499, -1, 1000, 101);
    assertNull(after.missing(i -> i >= first && i <= last));
  }

  @Test
  void atTheEndsOfTheClipNothingBeyondIsAskedFor() {
    assertNull(new Window(0, -1, 1, 50).missing(i -> i == 0));
    Window.Run run = new Window(99, 1, 100, 50).missing(i -> i == 99);
    assertNotNull(run);
    assertEquals(98, run.to());
  }

  @Test
  void theWindowFitsAndWhatIsOutsideIsFartherThanWhatIsInside() {
    for (long seed : SEEDS) {
      Random random = new Random(seed);
      int size = 1 + random.nextInt(400);
      int most = 1 + random.nextInt(200);
      Window window = new Window(random.nextInt(size), random.nextBoolean() ? 1 : -1, size, most);
      assertTrue(window.last() - window.first() + 1 <= most, "seed " + seed);
      for (int i = 0; i < size; i++) {
        boolean inside = i >= window.first() && i <= window.last();
        assertEquals(inside, window.farness(i) < 1, "seed %d frame %d".formatted(seed, i));
      }
    }
  }
}
