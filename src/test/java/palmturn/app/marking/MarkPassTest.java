package palmturn.app.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import palmturn.app.estimate.MadeEstimates;
import palmturn.clip.FrameTables;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class MarkPassTest {
  private final Marking marking = new Marking(Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
  private final List<Double> looped = new ArrayList<>();
  private final MarkPass pass =
      new MarkPass(
          marking,
          new MarkPass.Display() {
            @Override
            public void loop(Slap slap, MarkPass.Topic about) {
              looped.add(slap.timeS());
            }

            @Override
            public void stopAt(@Nullable Slap slap) {}
          });

  @BeforeEach
  void open() {
    marking.open(
        Reading.begin("AK", StartedFrom.NOTHING), FrameTables.steady(300, 60), (marks, said) -> {});
  }

  @Test
  void timesPassComesToTheDoubtfulOnlyAndTheZonePassToAll() {
    begin(five());
    assertEquals("Doubtful slap 1 of 3", words().substring(0, 20));
    assertTrue(words().contains("palm or back?"));
    pass.setSide(Side.PALM);
    assertEquals("Doubtful slap 2 of 3: a double?", words());
    pass.confirm();
    assertEquals("Doubtful slap 3 of 3: seen, not heard; confidence 0.40", words());
    pass.confirm();
    assertEquals("Zone of slap 1 of 5", words());
    assertEquals(5, Edits.countUnseen(reading()), "a time that was kept says nothing of the zone");
    pass.confirm();
    pass.setZone(Zone.FINGERS);
    pass.confirm();
    pass.setZone(Zone.EDGE);
    assertEquals("Zone of slap 5 of 5", words());
    pass.confirm();
    assertNull(pass.positionProperty().get());

    assertEquals(0, Edits.countUnseen(reading()));
    assertEquals(
        List.of(Zone.CENTRE, Zone.FINGERS, Zone.CENTRE, Zone.EDGE, Zone.CENTRE),
        reading().slaps().stream().map(Slap::zone).toList());
    assertEquals(Slap.Kind.DOUBLE, reading().slaps().get(2).kind());
    assertEquals(
        List.of(Side.PALM, Side.BACK, Side.BACK, Side.PALM, Side.BACK),
        reading().slaps().stream().map(Slap::side).toList());
    assertEquals(List.of(1.0, 1.4, 1.8, 1.0, 1.2, 1.4, 1.6, 1.8), looped);
  }

  @Test
  void droppedMarkIsGoneAndUndoBringsItAndThePassBack() {
    begin(five());
    pass.setSide(Side.PALM);
    pass.deleteMark();
    assertEquals(4, reading().slaps().size());
    assertEquals("Doubtful slap 3 of 3", words().substring(0, 20));
    pass.undo();
    assertEquals(5, reading().slaps().size());
    assertEquals("Doubtful slap 2 of 3: a double?", words());
    pass.deleteMark();
    pass.goBy(-1);
    assertEquals("Doubtful slap 1 of 3", words().substring(0, 20));
  }

  @Test
  void movedMarkStaysTheOneThatIsLookedAt() {
    begin(five());
    pass.moveMark(2);
    assertEquals(1 + 2 / 60.0, reading().slaps().get(0).timeS(), 1e-9);
    assertEquals(TimedBy.PICTURE, reading().slaps().get(0).timedBy());
    pass.undo();
    assertEquals(1.0, reading().slaps().get(0).timeS());
    assertEquals("Doubtful slap 1 of 3", words().substring(0, 20));
  }

  @Test
  void anotherZoneReplacesAZoneAndUndoGoesBackToItsSlap() {
    begin(five());
    pass.confirm();
    pass.confirm();
    pass.confirm();
    pass.setZone(Zone.WRIST);
    pass.confirm();
    pass.undo();
    assertEquals("Zone of slap 2 of 5", words());
    pass.undo();
    assertEquals("Zone of slap 1 of 5", words());
    pass.setZone(Zone.WRIST);
    pass.goBy(-1);
    pass.setZone(Zone.WRIST);
    assertEquals(Zone.WRIST, reading().slaps().get(0).zone(), "the same zone twice is no toggle");
  }

  @Test
  void leavingKeepsWhatWasDoneAndBeginningAgainGoesOnThere() {
    begin(five());
    pass.confirm();
    pass.confirm();
    pass.confirm();
    pass.confirm();
    pass.confirm();
    pass.leave();
    assertNull(pass.positionProperty().get());
    assertEquals(3, Edits.countUnseen(reading()));
    pass.begin(null);
    assertEquals("Zone of slap 3 of 5", words());
  }

  @Test
  void doubleCanBeTakenBackAndMade() {
    begin(five());
    pass.setSide(Side.PALM);
    pass.toggleDouble();
    assertEquals(Slap.Kind.SLAP, reading().slaps().get(2).kind());
    assertFalse(reading().slaps().get(2).seen());
  }

  @Test
  void withoutMarksNothingBegins() {
    pass.begin(null);
    assertNull(pass.positionProperty().get());
  }

  @Test
  void closingTheTrialEndsThePass() {
    begin(five());
    assertNotNull(pass.positionProperty().get());
    marking.close();
    assertNull(pass.positionProperty().get());
  }

  private void begin(Estimate found) {
    marking.setEstimate(found);
    marking.startFrom(found);
    pass.begin(found);
  }

  private Reading reading() {
    return marking.readingProperty().get();
  }

  private String words() {
    return pass.positionProperty().get().words();
  }

  /** Sure, sure, a double, sure, and one that was seen but not heard. */
  private static Estimate five() {
    return MadeEstimates.of(
        List.of(
            found(1.0, 1, false, 0.9, ""),
            found(1.2, -1, false, 0.9, ""),
            found(1.4, -1, true, 0.9, ""),
            found(1.6, 1, false, 0.9, ""),
            found(1.8, -1, false, 0.4, "seen, not heard")),
        null);
  }

  private static EstimatedSlap found(
      double timeS, int pose, boolean isDouble, double confidence, String why) {
    return new EstimatedSlap(
        EstimatedSlap.Timing.seen(timeS, 1 / 60.0),
        EstimatedSlap.EstimatedSide.of(pose, 0.9),
        EstimatedSlap.EstimatedZone.UNKNOWN,
        isDouble,
        Set.of(Estimate.Source.MOTION),
        confidence,
        why);
  }
}
