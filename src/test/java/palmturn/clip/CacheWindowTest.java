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

class CacheWindowTest {
  private static final long[] SEEDS = {1, 2, 3, 4, 5, 6, 7, 8};

  @Test
  void theNextFramesComeFirstThenThoseBehindThenTheRestAhead() {
    Set<Integer> atHand = new HashSet<>(Set.of(500));
    CacheWindow window = new CacheWindow(500, 1, 1000, 101);
    List<CacheWindow.Run> runs = new ArrayList<>();
    for (CacheWindow.Run run = window.nextRun(atHand::contains);
        run != null;
        run = window.nextRun(atHand::contains)) {
      runs.add(run);
      for (int i = run.from(); i <= run.to(); i++) {
        atHand.add(i);
      }
    }
    assertEquals(
        List.of(
            new CacheWindow.Run(501, 512),
            new CacheWindow.Run(455, 499),
            new CacheWindow.Run(513, 545)),
        runs);
  }

  @Test
  void goingBackMoreIsKeptBehind() {
    CacheWindow window = new CacheWindow(500, -1, 1000, 101);
    assertEquals(437, window.first());
    assertEquals(527, window.last());
    assertEquals(new CacheWindow.Run(437, 499), window.nextRun(i -> i == 500));
  }

  @Test
  void oneStepBackAsksForNothingNew() {
    CacheWindow window = new CacheWindow(500, -1, 1000, 101);
    int first = window.first();
    int last = window.last();
    CacheWindow after = new CacheWindow(499, -1, 1000, 101);
    assertNull(after.nextRun(i -> i >= first && i <= last));
  }

  @Test
  void atTheEndsOfTheClipNothingBeyondIsAskedFor() {
    assertNull(new CacheWindow(0, -1, 1, 50).nextRun(i -> i == 0));
    CacheWindow.Run run = new CacheWindow(99, 1, 100, 50).nextRun(i -> i == 99);
    assertNotNull(run);
    assertEquals(98, run.to());
  }

  @Test
  void theWindowFitsAndWhatIsOutsideIsFartherThanWhatIsInside() {
    for (long seed : SEEDS) {
      Random random = new Random(seed);
      int size = 1 + random.nextInt(400);
      int most = 1 + random.nextInt(200);
      CacheWindow window =
          new CacheWindow(random.nextInt(size), random.nextBoolean() ? 1 : -1, size, most);
      assertTrue(window.last() - window.first() + 1 <= most, "seed " + seed);
      for (int i = 0; i < size; i++) {
        boolean inside = i >= window.first() && i <= window.last();
        assertEquals(inside, window.relativeDistance(i) < 1, "seed %d frame %d".formatted(seed, i));
      }
    }
  }
}
