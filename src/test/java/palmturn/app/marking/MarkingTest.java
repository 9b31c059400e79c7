package palmturn.app.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import palmturn.app.estimate.MadeEstimates;
import palmturn.clip.FrameTable;
import palmturn.clip.FrameTables;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class MarkingTest {
  private final FrameTable frames = FrameTables.at(0, 0.02, 0.05, 0.06, 0.1, 0.12, 0.15);
  private final List<Reading> kept = new ArrayList<>();
  private final List<String> sentences = new ArrayList<>();
  private final Marking marking = new Marking(Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));

  @BeforeEach
  void open() {
    marking.open(
        Reading.begin("AK", StartedFrom.NOTHING),
        frames,
        (reading, sentence) -> {
          kept.add(reading);
          sentences.add(sentence);
        });
  }

  @Test
  void markStandsOnItsFrameAndReachesBackToTheOneBefore() {
    marking.mark(2, Side.PALM, false);

    assertEquals(0.05, only().timeS());
    assertEquals(0.03, only().resolutionS(), 1e-12);
    assertEquals(Zone.CENTRE, only().zone());
    assertEquals(Side.PALM, only().side());
  }

  @Test
  void secondMarkOnAFrameChangesTheSideInsteadOfStandingTwice() {
    marking.mark(2, Side.PALM, false);
    marking.mark(2, Side.BACK, false);

    assertEquals(Side.BACK, only().side());
  }

  @Test
  void sameKeyAgainIsNoStep() {
    marking.mark(2, Side.PALM, false);
    marking.mark(2, Side.PALM, false);

    assertEquals(1, kept.size());
  }

  @Test
  void faultIsUnnamedUntilAZoneOrKindNamesIt() {
    marking.mark(2, Side.PALM, true);
    assertEquals(Slap.Kind.OTHER, only().kind());
    assertEquals(Zone.UNKNOWN, only().zone());

    marking.zone(Zone.WRIST);
    assertEquals(Slap.Kind.SLAP, only().kind());
    assertEquals(Zone.WRIST, only().zone());
  }

  @Test
  void sameZoneAgainIsTheCentre() {
    marking.mark(2, Side.PALM, false);
    marking.zone(Zone.EDGE);
    marking.zone(Zone.EDGE);

    assertEquals(Zone.CENTRE, only().zone());
  }

  @Test
  void doubleAgainIsAPlainSlap() {
    marking.mark(2, Side.PALM, false);
    marking.kind(Slap.Kind.DOUBLE);
    assertEquals(Slap.Kind.DOUBLE, only().kind());
    marking.kind(Slap.Kind.DOUBLE);
    assertEquals(Slap.Kind.SLAP, only().kind());
  }

  @Test
  void missedTurnTouchesNoZone() {
    marking.missed(3);

    assertEquals(Slap.Kind.MISSED, only().kind());
    assertEquals(Zone.UNKNOWN, only().zone());
    assertEquals(1, kept.size());
  }

  @Test
  void sameSpanKeyBeginsAndEndsInEitherDirection() {
    marking.span(Span.Kind.BENT_WRIST, 4);
    assertTrue(reading().spans().isEmpty());
    marking.span(Span.Kind.BENT_WRIST, 1);

    Span span = reading().spans().get(0);
    assertEquals(0.02, span.startS());
    assertEquals(0.1, span.endS());
    assertTrue(marking.begunProperty().get().isEmpty());
  }

  @Test
  void spanWithoutLengthIsGivenUp() {
    marking.span(Span.Kind.PAUSE, 4);
    marking.span(Span.Kind.PAUSE, 4);

    assertTrue(reading().spans().isEmpty());
    assertTrue(kept.isEmpty());
  }

  @Test
  void nudgeMovesByOneFrameOfUnevenLength() {
    marking.mark(2, Side.PALM, false);
    marking.nudge(1);

    assertEquals(0.06, only().timeS());
    assertEquals(0.01, only().resolutionS(), 1e-12);
  }

  @Test
  void markIsNotMovedOntoAnother() {
    marking.mark(2, Side.PALM, false);
    marking.mark(3, Side.BACK, false);
    marking.nudge(-1);

    assertEquals(List.of(0.05, 0.06), reading().slaps().stream().map(Slap::timeS).toList());
    assertEquals(2, kept.size());
  }

  @Test
  void nudgeStopsAtTheEndsOfTheClip() {
    marking.mark(6, Side.PALM, false);
    marking.nudge(1);

    assertEquals(0.15, only().timeS());
  }

  @Test
  void deleteTakesTheCurrentMarkAndMakesTheOneBeforeCurrent() {
    marking.mark(1, Side.PALM, false);
    marking.mark(3, Side.BACK, false);
    marking.delete();

    assertEquals(0.02, only().timeS());
    assertEquals(only(), marking.slapProperty().get());
  }

  @Test
  void undoAndRedoAreKeptTooAndSayWhatTheyDid() {
    marking.mark(1, Side.PALM, false);
    marking.zone(Zone.FINGERS);
    marking.undo();
    assertEquals(Zone.CENTRE, only().zone());
    assertEquals("Undone: fingers at clip 0.020 s", marking.stepProperty().get());
    marking.redo();
    assertEquals(Zone.FINGERS, only().zone());
    assertEquals("Done again: fingers at clip 0.020 s", marking.stepProperty().get());

    assertEquals(4, kept.size());
    assertEquals(reading(), kept.get(3));
    assertEquals(
        List.of(
            "palm slap at clip 0.020 s",
            "fingers at clip 0.020 s",
            "Undone: fingers at clip 0.020 s",
            "Done again: fingers at clip 0.020 s"),
        sentences);
  }

  @Test
  void undoBeyondTheStartKeepsNothing() {
    marking.undo();

    assertTrue(kept.isEmpty());
    assertEquals("nothing to undo", marking.stepProperty().get());
  }

  @Test
  void arrivingOnAMarkMakesItCurrentAndLeavingKeepsIt() {
    marking.mark(1, Side.PALM, false);
    marking.mark(4, Side.BACK, false);
    marking.arriveAt(1);
    assertEquals(0.02, marking.slapProperty().get().timeS());
    marking.arriveAt(2);
    assertEquals(0.02, marking.slapProperty().get().timeS());
  }

  @Test
  void neighboursAreFoundBothWays() {
    marking.mark(1, Side.PALM, false);
    marking.mark(4, Side.BACK, false);

    assertEquals(Optional.of(4), marking.frameOfNeighbour(1, true));
    assertEquals(Optional.of(1), marking.frameOfNeighbour(4, false));
    assertEquals(Optional.empty(), marking.frameOfNeighbour(4, true));
  }

  @Test
  void editOpensAFinishedReadingAgain() {
    marking.mark(1, Side.PALM, false);
    marking.finish();
    assertTrue(reading().finished());
    marking.zone(Zone.EDGE);
    assertFalse(reading().finished());
    assertEquals(List.of(Instant.EPOCH), reading().reopenedAt());
  }

  @Test
  void openingAFinishedReadingAgainIsNotedAndUndoKeepsTheNote() {
    marking.mark(1, Side.PALM, false);
    marking.finish();
    assertEquals(List.of(), reading().reopenedAt());
    marking.finish();
    assertEquals(List.of(Instant.EPOCH), reading().reopenedAt());
    marking.undo();
    assertTrue(reading().finished());
    assertEquals(List.of(Instant.EPOCH), reading().reopenedAt());
    marking.undo();
    assertEquals(2, reading().reopenedAt().size());
  }

  @Test
  void nothingIsMarkedWithoutAReading() {
    marking.close();
    marking.mark(1, Side.PALM, false);

    assertNull(marking.readingProperty().get());
    assertTrue(kept.isEmpty());
  }

  private Reading reading() {
    return marking.readingProperty().get();
  }

  private Slap only() {
    assertEquals(1, reading().slaps().size());
    return reading().slaps().get(0);
  }

  @Test
  void copiedMarksAreUnseenUntilTheReaderStopsOnThem() {
    marking.startFrom(twoContacts());
    assertEquals(StartedFrom.ESTIMATE, now().startedFrom());
    assertFalse(now().independent());
    assertEquals(Optional.of(1), marking.frameOfUnseen());

    marking.see(2);
    assertEquals(Optional.of(1), marking.frameOfUnseen());
    marking.see(1);
    assertTrue(now().slaps().get(0).seen());
    assertEquals(Zone.CENTRE, now().slaps().get(0).zone(), "seen without a fault");
    assertEquals(Zone.UNKNOWN, now().slaps().get(1).zone());
    assertEquals(Optional.of(4), marking.frameOfUnseen());
  }

  @Test
  void readingIsFinishedOnlyWhenAllIsSeen() {
    marking.startFrom(twoContacts());
    marking.see(1);
    marking.finish();
    assertFalse(now().finished());
    assertEquals(
        "not finished: one copied mark is still to be looked at", marking.stepProperty().get());
    marking.see(4);
    marking.finish();
    assertTrue(now().finished());
  }

  @Test
  void copyingIsOneStepThatCanBeUndone() {
    marking.mark(3, Side.BACK, false);
    Reading before = now();
    marking.startFrom(twoContacts());
    marking.see(1);
    marking.undo();
    // What was seen of an estimate can't be unseen.
    assertEquals(before.withEstimateSeen(true), now());
    marking.redo();
    assertEquals(2, now().slaps().size());
  }

  @Test
  void whatWasSeenStaysSeenWhenAnEditIsUndone() {
    marking.startFrom(twoContacts());
    marking.arriveAt(1);
    marking.see(1);
    marking.zone(Zone.EDGE);
    marking.see(4);
    marking.undo();
    assertEquals(Optional.empty(), marking.frameOfUnseen());
    assertEquals(Zone.CENTRE, now().slaps().get(0).zone());
  }

  @Test
  void oneNamedSideNamesTheOthers() {
    Estimate estimate = twoContacts();
    marking.setEstimate(estimate);
    marking.startFrom(estimate);
    marking.mark(4, Side.PALM, false);
    assertEquals(List.of(Side.BACK, Side.PALM), now().slaps().stream().map(Slap::side).toList());
    marking.mark(4, Side.BACK, false);
    assertEquals(Side.BACK, now().slaps().get(0).side(), "what is named is not turned again");
  }

  @Test
  void ownMarksNeverFollowTheEstimate() {
    marking.setEstimate(twoContacts());
    marking.mark(1, Side.PALM, false);
    marking.mark(4, Side.PALM, false);
    assertEquals(List.of(Side.PALM, Side.PALM), now().slaps().stream().map(Slap::side).toList());
  }

  private Reading now() {
    return marking.readingProperty().get();
  }

  /** Returns contacts at 0.02 s and 0.1 s with one side of the hand and the other. */
  private static Estimate twoContacts() {
    return MadeEstimates.of(List.of(contact(0.02, 1), contact(0.1, -1)), null);
  }

  private static EstimatedSlap contact(double timeS, int pose) {
    return new EstimatedSlap(
        timeS,
        TimedBy.MOTION,
        0.02,
        pose,
        Side.UNKNOWN,
        0.9,
        Zone.UNKNOWN,
        0,
        false,
        Set.of(Estimate.Source.MOTION),
        0.9,
        timeS,
        null,
        "");
  }
}
