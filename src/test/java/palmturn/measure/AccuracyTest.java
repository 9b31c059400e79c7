package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

class AccuracyTest {

  /** Twenty slaps 0.2 s apart from 0 s, palm first. */
  private static List<Slap> twenty() {
    return new ArrayList<>(Made.slaps(0, Made.same(19, 0.2)));
  }

  @Test
  void doublesAndMissedTurnsAreInTheShareButNotInTheRate() {
    List<Slap> marks = twenty();
    marks.add(Made.mark(Slap.Kind.DOUBLE, 1.05, Side.BACK, Zone.UNKNOWN));
    marks.add(Made.mark(Slap.Kind.MISSED, 2.1, Side.PALM, Zone.UNKNOWN));
    marks.set(3, marks.get(3).withZone(Zone.FINGERS));
    marks.set(8, marks.get(8).withKind(Slap.Kind.PART_TURN));

    TrialScore score = Made.score(marks);
    Accuracy accuracy = score.accuracy();

    assertEquals(20, accuracy.slaps());
    assertEquals(1, accuracy.doubles());
    assertEquals(22, accuracy.attempts());
    assertEquals(18, accuracy.clean());
    assertEquals(100 * 18 / 22.0, accuracy.cleanSharePct(), 1e-12);
    assertEquals(5, score.speed().rateSlapsPerS(), 1e-9);
    assertEquals(5 * 18 / 22.0, score.speed().cleanRateSlapsPerS(), 1e-9);
    assertEquals(new FaultCount(0, 1, 0, 10 / 22.0), accuracy.faults().get(FaultKind.FINGERS));
    assertEquals(new FaultCount(1, 0, 0, 10 / 22.0), accuracy.faults().get(FaultKind.PART_TURN));
    assertEquals(1, accuracy.faults().get(FaultKind.MISSED).palm());
    assertEquals(1, accuracy.faults().get(FaultKind.DOUBLE).back());
    assertEquals(0, accuracy.faults().get(FaultKind.EDGE).all());
  }

  @Test
  void aSpanSpoilsTheSlapsInsideItAndAPauseSpoilsNone() {
    TrialScore score =
        Made.score(
            twenty(),
            Made.span(Span.SpanKind.ELBOW_OUT, 0.99, 1.45),
            Made.span(Span.SpanKind.PAUSE, 2.01, 2.15));
    Accuracy accuracy = score.accuracy();
    // Slaps at 1.0, 1.2 and 1.4 s: back, palm, back.
    assertEquals(17, accuracy.clean());
    assertEquals(1, accuracy.faults().get(FaultKind.ELBOW_OUT).palm());
    assertEquals(2, accuracy.faults().get(FaultKind.ELBOW_OUT).back());
    assertEquals(0, accuracy.faults().get(FaultKind.BENT_WRIST).all());
  }

  @Test
  void oneAttemptMayHaveSeveralFaults() {
    List<Slap> marks = twenty();
    marks.set(5, Made.mark(Slap.Kind.PART_TURN, marks.get(5).timeS(), Side.BACK, Zone.WRIST));
    Accuracy accuracy =
        Made.score(marks, Made.span(Span.SpanKind.BENT_WRIST, 0.95, 1.05)).accuracy();
    assertEquals(1, accuracy.faults().get(FaultKind.PART_TURN).all());
    assertEquals(1, accuracy.faults().get(FaultKind.WRIST).all());
    assertEquals(1, accuracy.faults().get(FaultKind.BENT_WRIST).all());
    assertEquals(19, accuracy.clean());
  }

  @Test
  void anUnknownZoneLeavesCleanUntold() {
    List<Slap> marks = twenty();
    marks.set(5, marks.get(5).withZone(Zone.UNKNOWN));
    TrialScore score = Made.score(marks);
    assertNull(score.accuracy().clean());
    assertNull(score.accuracy().cleanSharePct());
    assertNull(score.accuracy().cleanShareRangePct());
    assertNull(score.speed().cleanRateSlapsPerS());
    assertNull(score.endurance().lateFaultsPct());
    assertEquals(LimitVerdict.CANNOT_TELL, score.verdicts().get(Quality.ACCURACY));
    assertEquals(5, score.speed().rateSlapsPerS(), 1e-9);
  }

  @Test
  void anUnknownZoneDoesNotMatterOnASlapThatIsFaultyAnyway() {
    List<Slap> marks = twenty();
    marks.set(5, Made.mark(Slap.Kind.PART_TURN, marks.get(5).timeS(), Side.BACK, Zone.UNKNOWN));
    assertEquals(19, Made.score(marks).accuracy().clean());
  }

  @Test
  void theIntervalOfTheCleanShareIsWilsons() {
    // From memory, Newcombe 1998: 0 of 20 is 0 to 0.1611; turned round, 20 of 20 is from 0.8389.
    TrialScore score = Made.score(twenty());
    assertNotNull(score.accuracy().cleanShareRangePct());
    assertEquals(83.89, score.accuracy().cleanShareRangePct().low(), 0.005);
    assertEquals(100, score.accuracy().cleanShareRangePct().high(), 1e-9);
  }

  @Test
  void lateFaultsCompareTheHalvesByTime() {
    List<Slap> marks = twenty();
    marks.set(2, marks.get(2).withZone(Zone.EDGE));
    for (int i : new int[] {12, 15, 18}) {
      marks.set(i, marks.get(i).withZone(Zone.EDGE));
    }
    assertEquals(30 - 10, Made.score(marks).endurance().lateFaultsPct(), 1e-9);
  }
}
