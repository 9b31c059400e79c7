package palmturn.app.stage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import palmturn.trial.Estimate;
import palmturn.trial.KnownLength;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

class PlaceEditorTest {
  private final List<PlacedPoints> kept = new ArrayList<>();
  private final PlaceEditor placing = new PlaceEditor();

  @BeforeEach
  void open() {
    placing.open(PlacedPoints.NONE, kept::add);
    placing.begin(640, 480, null);
  }

  @Test
  void clickSetsAPointAndEnterKeepsIt() {
    placing.choose(OverlayItem.ELBOW);
    placing.press(400.5, 300);
    placing.release();
    assertEquals(List.of(), kept);
    placing.save();
    assertEquals(List.of(PlacedPoints.NONE.withElbow(new Point(400.5, 300))), kept);
    assertFalse(placing.activeProperty().get());
  }

  @Test
  void dragIsOneStepAndABoxWhicheverWayItGoes() {
    placing.press(300, 200);
    placing.drag(280, 190);
    placing.drag(200, 120);
    placing.release();
    assertEquals(new Estimate.Region(200, 120, 100, 80), placing.places().handRegion());
    placing.undo();
    assertNull(placing.places().handRegion());
    placing.redo();
    assertEquals(new Estimate.Region(200, 120, 100, 80), placing.places().handRegion());
  }

  @Test
  void placesStayInThePicture() {
    placing.choose(OverlayItem.TRUNK);
    placing.press(-20, 900);
    assertEquals(new Point(0, 480), placing.places().trunk());
  }

  @Test
  void arrowsSetAPointInTheMiddleThenMoveIt() {
    placing.choose(OverlayItem.TARGET);
    placing.move(1, 0);
    assertEquals(new Point(320, 240), placing.places().target());
    placing.move(1, 0);
    placing.move(0, -10);
    assertEquals(new Point(321, 230), placing.places().target());
    placing.undo();
    assertEquals(new Point(321, 240), placing.places().target());
  }

  @Test
  void arrowsMoveAndSizeTheRegion() {
    placing.move(1, 0);
    Estimate.Region first = placing.places().handRegion();
    placing.move(5, -3);
    placing.resize(10, 2);
    assertEquals(
        new Estimate.Region(first.x() + 5, first.y() - 3, first.width() + 10, first.height() + 2),
        placing.places().handRegion());
  }

  @Test
  void scaleIsKeptOnlyWithItsLength() {
    placing.choose(OverlayItem.SCALE);
    placing.press(100, 100);
    placing.drag(200, 100);
    placing.release();
    assertNull(placing.places().scale());
    placing.save();
    assertTrue(placing.activeProperty().get(), "asks for the length first");
    assertEquals(List.of(), kept);
    "25.5".chars().forEach(c -> placing.type(Character.toString(c)));
    placing.save();
    assertEquals(
        List.of(
            PlacedPoints.NONE.withScale(
                new KnownLength(new Point(100, 100), new Point(200, 100), 25.5))),
        kept);
  }

  @Test
  void forearmIsTheLengthUntilAnotherIsTyped() {
    placing.begin(640, 480, 26.0);
    placing.choose(OverlayItem.SCALE);
    placing.press(100, 100);
    placing.drag(200, 100);
    assertEquals(26, placing.places().scale().cm());
    placing.type("3");
    placing.type("0");
    assertEquals(30, placing.places().scale().cm());
    placing.delete();
    assertEquals(3, placing.places().scale().cm());
  }

  @Test
  void leavingBringsBackWhatWasKept() {
    placing.choose(OverlayItem.ELBOW);
    placing.press(10, 10);
    placing.save();
    placing.begin(640, 480, null);
    placing.press(50, 50);
    placing.choose(OverlayItem.TRUNK);
    placing.press(60, 60);
    placing.cancel();
    assertEquals(PlacedPoints.NONE.withElbow(new Point(10, 10)), placing.places());
    assertEquals(1, kept.size());
  }

  @Test
  void whatWasKeptCanBeUndoneLater() {
    placing.choose(OverlayItem.ELBOW);
    placing.press(10, 10);
    placing.save();
    placing.begin(640, 480, null);
    placing.undo();
    placing.save();
    assertEquals(PlacedPoints.NONE, kept.get(1));
  }

  @Test
  void nothingChangedKeepsNothing() {
    placing.save();
    assertEquals(List.of(), kept);
  }

  @Test
  void placesOfATrialAreThereToGoOnFrom() {
    PlacedPoints there =
        PlacedPoints.NONE
            .withTrunk(new Point(5, 6))
            .withScale(new KnownLength(new Point(1, 2), new Point(3, 4), 20));
    placing.open(there, kept::add);
    assertEquals(there, placing.places());
    placing.begin(640, 480, null);
    placing.choose(OverlayItem.TRUNK);
    placing.delete();
    placing.save();
    assertEquals(List.of(there.withTrunk(null)), kept);
  }
}
