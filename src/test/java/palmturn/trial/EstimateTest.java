package palmturn.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class EstimateTest {
  private static final Reading READING = SampleFiles.fullEstimate().toReading("AB");

  @Test
  void aReadingMadeOfItIsOpenAndNotIndependent() {
    assertEquals("AB", READING.reader());
    assertFalse(READING.finished());
    assertEquals(StartedFrom.ESTIMATE, READING.startedFrom());
    assertFalse(READING.independent());
  }

  @Test
  void itsMarksAreUnseenAndKeepBothTimes() {
    assertTrue(READING.slaps().stream().noneMatch(Slap::seen));
    Slap heard = READING.slaps().get(0);
    assertEquals(TimedBy.SOUND, heard.timedBy());
    assertEquals(1.0151, heard.pictureS());
    assertEquals(1.0158, heard.soundS());
    assertEquals(Zone.UNKNOWN, heard.zone());
  }

  @Test
  void aDoubleStaysOneAndADoubtIsNoted() {
    assertEquals(
        List.of(Slap.Kind.SLAP, Slap.Kind.SLAP, Slap.Kind.DOUBLE),
        READING.slaps().stream().map(Slap::kind).toList());
    assertEquals("no onset near it", READING.slaps().get(1).note());
    assertEquals(Span.SpanKind.ELBOW_OUT, READING.spans().get(0).kind());
  }

  @Test
  void oneKnownSideNamesAll() {
    Estimate turned = SampleFiles.fullEstimate().withKnownSide(1.19, Side.PALM);
    assertEquals(
        List.of(Side.BACK, Side.PALM, Side.PALM),
        turned.slaps().stream().map(EstimatedSlap::side).toList());
  }
}
