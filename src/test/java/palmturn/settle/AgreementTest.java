package palmturn.settle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.settle.Samples.at;
import static palmturn.settle.Samples.changed;
import static palmturn.settle.Samples.compare;
import static palmturn.settle.Samples.even;
import static palmturn.settle.Samples.reading;
import static palmturn.settle.Samples.span;
import static palmturn.settle.Samples.trial;
import static palmturn.settle.Samples.without;

import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.numbers.BlandAltman;
import palmturn.numbers.Kappa;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;

class AgreementTest {

  @Test
  void equalReadingsAgreeInEverything() throws SettleException {
    Agreement agreement = Agreement.of(compare(reading("JM", even(20)), reading("TK", even(20))));
    assertEquals(1.0, agreement.counts().f());
    Kappa side = agreement.side().kappa();
    assertNotNull(side);
    assertEquals(1, side.kappa(), 1e-12);
    assertEquals(100.0, agreement.side().agreementPct());
    // All are centre and none is double: agreement there can't be told from chance.
    assertNull(agreement.zone().kappa());
    assertNull(agreement.doubles().kappa());
    assertEquals(100.0, agreement.zone().agreementPct());
    assertTrue(agreement.independent());
  }

  @Test
  void labelsAreCountedOverMatchedSlapsThatBothTell() throws SettleException {
    List<Slap> b = changed(even(20), 3, slap -> slap.withSide(Side.PALM));
    b = changed(b, 4, slap -> slap.withSide(Side.UNKNOWN));
    b = changed(b, 5, slap -> slap.withZone(Zone.WRIST));
    b = without(b, 19);
    Agreement agreement = Agreement.of(compare(reading("JM", even(20)), reading("TK", b)));
    assertEquals(List.of(List.of(9, 0), List.of(1, 8)), agreement.side().counts());
    assertEquals(1, agreement.side().unlabelled());
    assertEquals(100.0 * 17 / 18, agreement.side().agreementPct());
    assertEquals(List.of(18, 0, 1, 0), agreement.zone().counts().get(0));
    assertEquals(new MatchCounts(19, 1, 0), agreement.counts());
    assertEquals(0.95, agreement.counts().recall());
    assertEquals(1.0, agreement.counts().precision());
  }

  @Test
  void pooledAgreementAddsCountsBeforeItTakesShares() throws SettleException {
    Agreement one =
        Agreement.of(compare(reading("JM", even(20)), reading("TK", without(even(20), 3))));
    Agreement two =
        Agreement.of(compare(reading("JM", even(4)), reading("TK", even(4).subList(0, 2))));
    Agreement both = Agreement.pooled(List.of(one, two));
    assertNotNull(both);
    assertEquals(new MatchCounts(21, 3, 0), both.counts());
    assertEquals(21.0 / 24, both.counts().recall());
    assertEquals(21, both.side().n());
    assertEquals(21, both.differencesS().size());
    assertNull(Agreement.pooled(List.of()));
  }

  @Test
  void timesOfMatchedSlapsGiveTheOffsetAndItsLimits() throws SettleException {
    List<Slap> b = even(20);
    for (int i = 0; i < 20; i++) {
      double byS = i % 2 == 0 ? 0.012 : 0.008;
      b = changed(b, i, slap -> at(slap, slap.timeS() + byS));
    }
    BlandAltman offset = Agreement.of(compare(reading("JM", even(20)), reading("TK", b))).offset();
    assertNotNull(offset);
    assertEquals(0.010, offset.bias(), 1e-9);
    assertEquals(0.002 * Math.sqrt(20.0 / 19), offset.sd(), 1e-9);
  }

  @Test
  void fNeverFallsAsTheToleranceGrows() throws SettleException {
    List<Slap> b = even(20);
    for (int i = 0; i < 20; i++) {
      double byS = 0.004 * i;
      b = changed(b, i, slap -> at(slap, slap.timeS() + byS));
    }
    List<Agreement.CurvePoint> curve =
        Agreement.curve(
            compare(reading("JM", even(20)), reading("TK", b)), 0.0005, 0.01, 0.03, 0.08);
    assertEquals(
        List.of(0.05, 0.15, 0.40, 1.0), curve.stream().map(Agreement.CurvePoint::f).toList());
  }

  @Test
  void stretchesAgreeByOverlapOfAllTheTimeMarked() throws SettleException {
    Span.SpanKind wrist = Span.SpanKind.BENT_WRIST;
    Agreement agreement =
        Agreement.of(
            compare(
                reading("JM", even(9), span(wrist, 1, 2), span(wrist, 1.5, 3)),
                reading("TK", even(9), span(wrist, 2, 4), span(Span.SpanKind.PAUSE, 1, 2))));
    SpanAgreement bent = agreement.spans().get(wrist.ordinal());
    assertEquals(1.0 / 3, bent.iou());
    assertEquals(0, bent.same());
    assertEquals(1, bent.onlyA());
    assertEquals(1, bent.onlyB());
    assertEquals(0.0, agreement.spans().get(Span.SpanKind.PAUSE.ordinal()).iou());
    assertNull(agreement.spans().get(Span.SpanKind.ELBOW_OUT.ordinal()).iou());
  }

  @Test
  void readingsThatStartedFromAnotherAreNotIndependent() throws SettleException {
    Reading copied =
        new Reading(
            "TK",
            true,
            new StartedFrom(StartedFrom.Origin.READER, "JM"),
            even(5),
            List.of(),
            Extra.NONE);
    Agreement agreement =
        Agreement.of(
            ReadingComparison.of(
                trial(reading("JM", even(5)), copied), Settlement.begin("JM", "TK")));
    assertFalse(agreement.independent());
  }

  @Test
  void agreementIsTheSameFromEitherSide() throws SettleException {
    List<Slap> b = changed(without(even(30), 7), 9, slap -> slap.withSide(Side.PALM));
    Agreement there = Agreement.of(compare(reading("JM", even(30)), reading("TK", b)));
    Agreement back = Agreement.of(compare(reading("TK", b), reading("JM", even(30))));
    assertEquals(there.counts().f(), back.counts().f());
    assertEquals(there.counts().precision(), back.counts().recall());
    Kappa one = there.side().kappa();
    Kappa other = back.side().kappa();
    assertNotNull(one);
    assertNotNull(other);
    assertEquals(one.kappa(), other.kappa(), 1e-12);
    assertEquals(one.se(), other.se(), 1e-12);
  }
}
