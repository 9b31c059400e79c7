package palmturn.clip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FrameStoreTest {
  private final List<String> gone = new ArrayList<>();
  private final FrameStore<String> near = new FrameStore<>(String::length, gone::add);

  @Test
  void theFarthestGoFirstUntilTheRestFits() {
    for (int i = 0; i < 6; i++) {
      near.put(i, "frame" + i);
    }
    near.trim(18, i -> Math.abs(i - 4));
    assertEquals(List.of("frame0", "frame1", "frame2"), gone);
    assertEquals(18, near.bytes());
  }

  @Test
  void theNearestStaysHoweverLargeItIs() {
    near.put(3, "a very large frame");
    near.put(9, "another");
    near.trim(4, i -> Math.abs(i - 3));
    assertTrue(near.has(3));
    assertEquals(List.of("another"), gone);
  }

  @Test
  void whatIsReplacedGoes() {
    near.put(3, "old");
    near.put(3, "newer");
    assertEquals(List.of("old"), gone);
    assertEquals(5, near.bytes());
    near.clear();
    assertEquals(List.of("old", "newer"), gone);
    assertEquals(0, near.bytes());
  }
}
