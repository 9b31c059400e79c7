package palmturn.lab.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.SampleFiles;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.Zone;

class ShapeComparisonTest {
  static EstimatedSlap slap(double timeS, Side side, double sure, Zone zone, double zoneSure) {
    return new EstimatedSlap(
        EstimatedSlap.Timing.seen(timeS, 0.016),
        new EstimatedSlap.EstimatedSide(1, side, sure),
        new EstimatedSlap.EstimatedZone(zone, zoneSure),
        false,
        Set.of(Estimate.Source.MOTION),
        1,
        "");
  }

  static Estimate estimate(
      Set<Estimate.Source> sources, List<EstimatedSlap> slaps, List<EstimatedSpan> spans) {
    return estimate(sources, slaps, spans, null);
  }

  static Estimate estimate(
      Set<Estimate.Source> sources,
      List<EstimatedSlap> slaps,
      List<EstimatedSpan> spans,
      Estimate.Shape shape) {
    return new Estimate(
        new Estimate.Basis(SampleFiles.SHA, sources, 60, false, null),
        new Estimate.Findings(true, slaps, spans, List.of()),
        Estimate.Figures.UNKNOWN,
        Estimate.Traces.NONE,
        new Estimate.Limbs(null, shape),
        List.of(),
        Extra.NONE);
  }

  static ClipTruth truth(
      List<ClipTruth.BentStretch> bent,
      ClipTruth.AngleSeries bend,
      ClipTruth.TrueContact... contacts) {
    return new ClipTruth(Hand.RIGHT, false, List.of(contacts), bent, bend, null, null);
  }

  static ClipTruth.TrueContact contact(double timeS, Side side, Zone zone) {
    return new ClipTruth.TrueContact(timeS, side, zone, false);
  }

  /** Four contacts, one of them missed; four slaps, one of them invented. */
  static ShapeComparison mixed() {
    return ShapeComparison.of(
        truth(
            List.of(),
            null,
            contact(1.0, Side.PALM, Zone.CENTRE),
            contact(1.2, Side.BACK, Zone.FINGERS),
            contact(1.4, Side.PALM, Zone.WRIST),
            contact(1.6, Side.BACK, Zone.FINGERS)),
        estimate(
            Set.of(Estimate.Source.MOTION, Estimate.Source.SHAPE),
            List.of(
                slap(1.01, Side.PALM, 0.97, Zone.FINGERS, 0.8),
                slap(1.2, Side.PALM, 0.6, Zone.FINGERS, 0.999),
                slap(1.41, Side.UNKNOWN, 0, Zone.UNKNOWN, 0),
                slap(2.0, Side.PALM, 0.99, Zone.FINGERS, 0.9)),
            List.of()),
        0.025);
  }

  @Test
  void anUnknownSideIsNotRightAndAnUnknownZoneIsCountedAsThat() {
    ShapeComparison found = mixed();
    assertEquals(4, found.contacts());
    assertEquals(4, found.found());
    assertEquals(3, found.pairs().size());
    assertEquals(0.75, found.f(), 1e-12);
    assertEquals(1, found.sidesRight());
    assertEquals(1, found.sidesUnknown());
    assertEquals(1, found.zones(Zone.CENTRE, Zone.FINGERS));
    assertEquals(1, found.zones(Zone.FINGERS, Zone.FINGERS));
    assertEquals(1, found.zones(Zone.WRIST, Zone.UNKNOWN));
    assertEquals(1, found.missed(Zone.FINGERS));
    assertEquals(1, found.invented(Zone.FINGERS));
    assertTrue(found.shapeUsed());
  }

  @Test
  void timeWithABentWristIsComparedAsTime() {
    ClipTruth truth =
        truth(
            List.of(new ClipTruth.BentStretch(1, 2), new ClipTruth.BentStretch(3, 4)),
            new ClipTruth.AngleSeries(0, 2, new double[] {90, 0, 0, 20, 0, -80, 0, -35, 0}),
            contact(1.0, Side.PALM, Zone.CENTRE));
    List<EstimatedSpan> spans =
        List.of(
            new EstimatedSpan(Span.SpanKind.BENT_WRIST, 1.5, 2.5, 0.9),
            new EstimatedSpan(Span.SpanKind.ELBOW_OUT, 0, 9, 0.9),
            new EstimatedSpan(Span.SpanKind.BENT_WRIST, 3.5, 3.75, 0.9));
    ShapeComparison.BentWristTime bent =
        ShapeComparison.of(truth, estimate(Set.of(), List.of(), spans), 0.025).bentWrist();
    assertEquals(2, bent.trueS(), 1e-12);
    assertEquals(1.25, bent.foundS(), 1e-12);
    assertEquals(0.75, bent.overlapS(), 1e-12);
    assertEquals(0.75 / 2.5, bent.intersectionOverUnion(), 1e-12);
    assertEquals(35, bent.largestDeg());
  }

  @Test
  void whereNoWristIsBentAndNoneSaidThereIsNothingToCompare() {
    ShapeComparison found = mixed();
    assertNull(found.bentWrist().intersectionOverUnion());
    assertNull(found.bentWrist().largestDeg());
  }

  private static ShapeMeasurement measured(String name, ShapeComparison with, Double estimateS) {
    ShapeComparison without =
        ShapeComparison.of(
            truth(List.of(), null, contact(1.0, Side.PALM, Zone.CENTRE)),
            estimate(
                Set.of(Estimate.Source.MOTION),
                List.of(slap(1.0, Side.PALM, 0.9, Zone.UNKNOWN, 0)),
                List.of()),
            0.025);
    return new ShapeMeasurement(name, 60, 4, without, with, estimateS, List.of());
  }

  private static ShapeComparison right() {
    return ShapeComparison.of(
        truth(
            List.of(new ClipTruth.BentStretch(1, 2)), null, contact(1.0, Side.PALM, Zone.FINGERS)),
        estimate(
            Set.of(Estimate.Source.SHAPE),
            List.of(slap(1.0, Side.PALM, 0.96, Zone.FINGERS, 0.95)),
            List.of(new EstimatedSpan(Span.SpanKind.BENT_WRIST, 1, 2, 0.9))),
        0.025);
  }

  @Test
  void figuresArePooledAndNameTheWorstClip() {
    ShapeResult result =
        new ShapeResult(
            true,
            List.of(measured("mixed", mixed(), 8.0), measured("right", right(), 2.0)),
            List.of());
    assertEquals(80, row(result, "shapeFoundPct").value());
    assertEquals(100, row(result, "motionFoundPct").value());
    BenchFigure sides = row(result, "shapeSidesPct");
    assertEquals(50, sides.value());
    assertEquals(4, sides.n());
    assertEquals("mixed", sides.worstClip());
    assertEquals(25, row(result, "shapeSidesUnknownPct").value());
    // One contact on the fingers was not found: it counts against the recall.
    assertEquals(2.0 / 3, row(result, "fingersRecall").value(), 1e-12);
    // A slap in the middle and an invented one were told as on the fingers.
    assertEquals(2.0 / 4, row(result, "fingersPrecision").value(), 1e-12);
    assertEquals(0.0, row(result, "wristRecall").value());
    assertNull(row(result, "wristPrecision").value());
    assertNull(row(result, "edgeRecall").value());
    assertEquals(25, row(result, "shapeZonesUnknownPct").value());
    assertEquals(100, row(result, "motionZonesUnknownPct").value());
    assertEquals(100, row(result, "motionSidesPct").value());
    assertEquals(1, row(result, "bentWristIou").n());
    assertEquals(1, row(result, "bentWristIou").value());
    assertEquals(10.0 / 8, row(result, "shapeTimeOfLength").value());
    assertEquals(0.0, row(result, "shapeNotUsed").value());
    String tables = result.markdown();
    assertTrue(tables.contains("| fingers | 0 | 2 | 0 | 0 | 0 | 1 |"), tables);
    assertTrue(tables.contains("| mixed | 60 | 4 | 0.750 | 33 | 1 | 100 | 1/1/1 |"), tables);
    assertTrue(tables.indexOf("| mixed |") < tables.indexOf("| right |"), tables);
    assertTrue(result.json().contains("\"fingersRecall\""));
  }

  @Test
  void withoutTheNetworksItSaysSoAndGivesTheRest() {
    ShapeResult result = new ShapeResult(false, List.of(measured("only", null, null)), List.of());
    assertTrue(result.markdown().startsWith("shape: not installed\n"), result.markdown());
    assertTrue(result.markdown().contains("| only | 60 | 1 | 1.000 | – | – | 100 | 0/0/1 |"));
    assertEquals(100, row(result, "motionSidesPct").value());
    assertFalse(result.figures().stream().anyMatch(row -> row.id().startsWith("shape")));
    assertFalse(result.markdown().contains("truly"));
  }

  @Test
  void aBinHoldsWhatWasSaidWithAboutTheSameConfidence() {
    List<Calibration.Bin> sides = Calibration.bins(Calibration.sides(List.of(mixed(), right())));
    // The unknown side says nothing.
    assertEquals(3, sides.stream().mapToInt(Calibration.Bin::count).sum());
    Calibration.Bin at95 = sides.get(4);
    assertEquals(0.95, at95.from());
    assertEquals(2, at95.count());
    assertEquals(1, at95.shareRight());
    assertEquals(0.965, at95.meanStated(), 1e-12);
    assertEquals(0, sides.get(1).shareRight());
    assertNull(sides.get(0).shareRight());
    assertNull(sides.get(0).interval());
    List<Calibration.Bin> zones = Calibration.bins(Calibration.zones(List.of(mixed())));
    assertEquals(1, zones.get(2).count());
    assertEquals(0, zones.get(2).right());
    assertEquals(1, zones.get(5).right());
    assertNotNull(zones.get(5).interval());
  }

  private static BenchFigure row(ShapeResult result, String id) {
    return result.figures().stream().filter(row -> row.id().equals(id)).findFirst().orElseThrow();
  }
}
