package palmturn.app.stage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.app.estimate.MadeEstimates;
import palmturn.app.stage.Overlay.Elbow;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.KnownLength;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

class OverlayTest {
  @Test
  void elbowStandsWhereItIsAtThatMoment() {
    Elbow elbow = elbow(0.1, 0.1);
    assertEquals(new Point(300, 200), elbow.place());
    assertEquals(new Point(320, 190), elbow.now());
    assertEquals(30, elbow.limitPx(), 1e-9);
    assertEquals("elbow 2.2 cm", elbow.words());
  }

  @Test
  void trailEndsNowAndBreaksWhereTheElbowWasLost() {
    assertEquals(
        List.of(List.of(new Point(300, 200), new Point(310, 195), new Point(320, 190))),
        elbow(0.1, 0.11).trail());
    assertEquals(List.of(3, 2), elbow(0.1, 0.55).trail().stream().map(List::size).toList());
  }

  @Test
  void lostElbowIsSaidToBeLost() {
    Elbow elbow = elbow(0.1, 0.3);
    assertNull(elbow.now());
    assertEquals("elbow lost", elbow.words());
    assertEquals("elbow", elbow(0.1, 2).words(), "followed no longer, but not lost");
  }

  @Test
  void lostElbowIsShownWhereItIsTakenToBe() {
    List<ElbowPath.GapEstimate> unseen =
        List.of(
            new ElbowPath.GapEstimate(0.12, 20, -10, 1),
            new ElbowPath.GapEstimate(0.3, 24, -32, 8));
    Elbow elbow =
        Overlay.at(MadeEstimates.of(List.of(), path(0.1).withGapEstimates(unseen)), 0.3, 3).elbow();
    assertNull(elbow.now());
    assertEquals(new Overlay.EstimatedElbow(new Point(324, 168), 8), elbow.estimated());
    assertEquals("elbow lost, about 4.0 ± 0.8 cm", elbow.words());
    Elbow soonAfter =
        Overlay.at(MadeEstimates.of(List.of(), path(0.1).withGapEstimates(unseen)), 0.12, 3)
            .elbow();
    assertNull(soonAfter.now(), "what was seen a frame ago is not where it is now");
    Elbow unscaled =
        Overlay.at(MadeEstimates.of(List.of(), path(null).withGapEstimates(unseen)), 0.3, 3)
            .elbow();
    assertEquals("elbow lost, no scale", unscaled.words());
    assertNull(elbow(0.1, 0.1).estimated());
  }

  @Test
  void withoutAScaleThereAreNoCentimetresAndNoLimit() {
    Elbow elbow = elbow(null, 0.1);
    assertNull(elbow.limitPx());
    assertEquals("elbow, no scale", elbow.words());
  }

  @Test
  void handRegionIsShownWithoutAnElbowToo() {
    Overlay overlay = Overlay.at(MadeEstimates.of(List.of(), null), 0.1, 3);
    assertEquals(new Estimate.Region(100, 50, 40, 30), overlay.region());
    assertNull(overlay.elbow());
  }

  @Test
  void whatWasPointedAtGoesBeforeWhatWasFound() {
    PlacedPoints placed =
        PlacedPoints.NONE
            .withHandRegion(new Estimate.Region(1, 2, 30, 40))
            .withElbow(new Point(7, 8))
            .withTarget(new Point(5, 6))
            .withScale(new KnownLength(new Point(0, 0), new Point(9, 9), 25.5));
    Overlay overlay =
        Overlay.at(MadeEstimates.of(List.of(), null), 0.1, 3)
            .withDraft(PlacesDraft.from(placed), null);
    assertEquals(new Estimate.Region(1, 2, 30, 40), overlay.region());
    assertEquals(
        Map.of(OverlayItem.ELBOW, new Point(7, 8), OverlayItem.TARGET, new Point(5, 6)),
        overlay.points());
    assertEquals("25.5 cm", overlay.scale().words());
  }

  @Test
  void eachCanBeHidden() {
    PlacedPoints placed =
        PlacedPoints.NONE
            .withHandRegion(new Estimate.Region(1, 2, 30, 40))
            .withElbow(new Point(7, 8))
            .withTrunk(new Point(8, 8))
            .withTarget(new Point(5, 6))
            .withScale(new KnownLength(new Point(0, 0), new Point(9, 9), 25.5));
    Overlay all = Overlay.NONE.withDraft(PlacesDraft.from(placed), null);
    for (OverlayItem what : OverlayItem.values()) {
      Overlay left = all.filter(each -> each != what);
      assertEquals(what == OverlayItem.HAND, left.region() == null);
      assertEquals(what == OverlayItem.SCALE, left.scale() == null);
      for (OverlayItem point : List.of(OverlayItem.ELBOW, OverlayItem.TRUNK, OverlayItem.TARGET)) {
        assertEquals(what != point, left.points().containsKey(point));
      }
    }
  }

  private static Elbow elbow(@Nullable Double cmPerPixel, double timeS) {
    return Overlay.at(MadeEstimates.of(List.of(), path(cmPerPixel)), timeS, 3).elbow();
  }

  private static ElbowPath path(@Nullable Double cmPerPixel) {
    return new ElbowPath(
        null,
        null,
        new ElbowPath.PictureScale("given", cmPerPixel, null),
        new Point(300, 200),
        List.of(
            new ElbowPath.Sample(0.0, 0.0, 0.0, 0.0),
            new ElbowPath.Sample(0.05, 10.0, -5.0, Math.hypot(10, 5)),
            new ElbowPath.Sample(0.1, 20.0, -10.0, Math.hypot(20, 10)),
            new ElbowPath.Sample(0.5, 30.0, -15.0, Math.hypot(30, 15)),
            new ElbowPath.Sample(0.55, 40.0, -20.0, 44.7)),
        List.of(new Stretch(0.1, 0.5)),
        List.of());
  }
}
