package palmturn.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The sound around slaps, and the silence between them. */
class SoundFilterTest {
  private static final int RATE = 1_000;

  @Test
  void onlyFortyMillisecondsAroundASlapAreKept() {
    float[] speech = new float[2 * RATE];
    Arrays.fill(speech, 0.5f);
    float[] kept = SoundFilter.around(List.of(0.5, 0.51, 1.995)).of(speech, RATE);
    assertNotNull(kept);
    assertEquals(speech.length, kept.length);
    for (int i = 0; i < kept.length; i++) {
      boolean near = i > 479 && i < 530 || i > 1974;
      assertEquals(near, kept[i] != 0 || i == 480 || i == 1975, "at " + i);
    }
    assertEquals(0.5f, kept[500]);
    assertNull(SoundFilter.NONE.of(speech, RATE));
  }
}
