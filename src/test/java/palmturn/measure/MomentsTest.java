package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

/** Which moments of a trial are shown. */
class MomentsTest {
  private static final Trial TRIAL = Made.trial(TimeScale.REAL);

  /** 21 slaps, 0.2 s apart but for the first three intervals. */
  private static List<Slap> slaps() {
    double[] intervals = new double[20];
    java.util.Arrays.fill(intervals, 0.2);
    intervals[0] = 0.17;
    intervals[1] = 0.23;
    intervals[2] = 0.17;
    return new ArrayList<>(Made.slaps(1, intervals));
  }

  private static Moments moments(List<Slap> slaps, List<Span> spans) {
    Reading reading = new Reading("AB", true, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
    return Moments.of(TRIAL, reading, 5, 2);
  }

  private static void fault(List<Slap> slaps, int at) {
    slaps.set(at, slaps.get(at).withZone(Zone.FINGERS));
  }

  @Test
  void theThickestFaultsComeFirstAndAreShownInOrderOfTime() {
    List<Slap> slaps = slaps();
    fault(slaps, 5);
    fault(slaps, 14);
    fault(slaps, 16);
    fault(slaps, 20);
    Moments moments = moments(slaps, List.of());
    assertEquals(
        List.of(List.of(slaps.get(5)), List.of(slaps.get(14), slaps.get(16))),
        moments.worst().stream().map(Moments.Moment::faulty).toList());
    assertEquals(slaps.get(16).timeS(), moments.worst().get(1).toS());
  }

  @Test
  void noneLiesOverAnother() {
    List<Slap> slaps = slaps();
    for (int i = 4; i < 12; i++) {
      fault(slaps, i);
    }
    List<Moments.Moment> worst = moments(slaps, List.of()).worst();
    assertTrue(worst.get(0).toS() < worst.get(1).fromS());
  }

  @Test
  void aSpoilingSpanMakesItsSlapsFaulty() {
    List<Slap> slaps = slaps();
    Span bent =
        new Span(
            Span.SpanKind.BENT_WRIST, slaps.get(8).timeS(), slaps.get(9).timeS(), "", Extra.NONE);
    Moments moments = moments(slaps, List.of(bent));
    assertEquals(List.of(bent), moments.worst().get(0).spans());
    assertEquals(2, moments.worst().get(0).faulty().size());
  }

  @Test
  void theCleanestSecondIsCleanAndTheMostEven() {
    List<Slap> slaps = slaps();
    fault(slaps, 12);
    Moments.Moment cleanest = moments(slaps, List.of()).cleanest();
    assertNotNull(cleanest);
    assertEquals(List.of(), cleanest.faulty());
    assertEquals(slaps.get(3).timeS(), cleanest.fromS(), 1e-9);
  }

  @Test
  void withoutMarksThereIsNothing() {
    Moments none = moments(List.of(), List.of());
    assertEquals(List.of(), none.worst());
    assertNull(none.cleanest());
  }
}
