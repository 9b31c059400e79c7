package palmturn.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The figures of a series: those of the measures' definitions. */
class BeatsTest {
  private static final double FRAME_VARIANCE = 1 / 60.0 / 60.0 / 12;

  private static Beats.Contact at(double timeS, @Nullable Double soundS, boolean isDouble) {
    return new Beats.Contact(timeS, timeS, FRAME_VARIANCE, soundS, 1e-6, !isDouble, isDouble);
  }

  private static List<Beats.Contact> even(int n, double everyS, int unheard) {
    List<Beats.Contact> contacts = new ArrayList<>();
    for (int j = 0; j < n; j++) {
      contacts.add(at(j * everyS, j < unheard ? null : j * everyS + 0.01, false));
    }
    return contacts;
  }

  @Test
  void rateCountsGapsAndFrequencyIsHalfOfIt() {
    Beats beats = Beats.of(even(21, 0.2, 0));
    assertEquals(5, value(beats.rateSlapsPerS()), 1e-9);
    assertEquals(2.5, value(beats.turnHz()), 1e-9);
    assertEquals(0, value(beats.intervalCvPct()), 1e-9);
    assertTrue(beats.bySound());
    assertEquals(100 * Math.sqrt(2e-6) / 0.2, value(beats.timingFloorPct()), 1e-9);
  }

  @Test
  void underFourFifthsHeardThePictureTimesAll() {
    Beats beats = Beats.of(even(21, 0.2, 5));
    assertFalse(beats.bySound());
    assertEquals(100 * Math.sqrt(2 * FRAME_VARIANCE) / 0.2, value(beats.timingFloorPct()), 1e-9);
  }

  @Test
  void aPauseIsInTheRateAndNowhereElse() {
    List<Beats.Contact> contacts = even(21, 0.2, 0);
    for (int j = 0; j < 10; j++) {
      contacts.add(at(4 + 0.8 + j * 0.2, 4.81 + j * 0.2, false));
    }
    Beats beats = Beats.of(contacts);
    assertEquals(List.of(21), beats.pauses());
    assertEquals(30 / 6.6, value(beats.rateSlapsPerS()), 1e-9);
    assertEquals(2.5, value(beats.turnHz()), 1e-9);
    assertEquals(0, value(beats.intervalCvPct()), 1e-9);
  }

  @Test
  void doublesAreLeftOut() {
    List<Beats.Contact> contacts = even(21, 0.2, 0);
    contacts.add(8, at(7 * 0.2 + 0.08, 7 * 0.2 + 0.09, true));
    Beats beats = Beats.of(contacts);
    assertEquals(5, value(beats.rateSlapsPerS()), 1e-9);
    assertEquals(2.5, value(beats.turnHz()), 1e-9);
  }

  @Test
  void oneContactTellsNothing() {
    assertNull(Beats.of(even(1, 0.2, 0)).rateSlapsPerS());
    assertNull(Beats.of(List.of()).turnHz());
  }

  private static double value(@Nullable Double value) {
    assertNotNull(value);
    return value;
  }
}
