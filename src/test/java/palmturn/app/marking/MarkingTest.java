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
    marking.markSlap(2, Side.PALM, false);

    assertEquals(0.05, only().timeS());
    assertEquals(0.03, only().resolutionS(), 1e-12);
    assertEquals(Zone.CENTRE, only().zone());
    assertEquals(Side.PALM, only().side());
  }

  @Test
  void secondMarkOnAFrameChangesTheSideInsteadOfStandingTwice() {
    marking.markSlap(2, Side.PALM, false);
    marking.markSlap(2, Side.BACK, false);

    assertEquals(Side.BACK, only().side());
  }

  @Test
  void sameKeyAgainIsNoStep() {
    marking.markSlap(2, Side.PALM, false);
    marking.markSlap(2, Side.PALM, false);

    assertEquals(1, kept.size());
  }

  @Test
  void faultIsUnnamedUntilAZoneOrKindNamesIt() {
    marking.markSlap(2, Side.PALM, true);
    assertEquals(Slap.Kind.OTHER, only().kind());
    assertEquals(Zone.UNKNOWN, only().zone());

    marking.toggleZone(Zone.WRIST);
    assertEquals(Slap.Kind.SLAP, only().kind());
    assertEquals(Zone.WRIST, only().zone());
  }

  @Test
  void sameZoneAgainIsTheCentre() {
    marking.markSlap(2, Side.PALM, false);
    marking.toggleZone(Zone.EDGE);
    marking.toggleZone(Zone.EDGE);

    assertEquals(Zone.CENTRE, only().zone());
  }

  @Test
  void doubleAgainIsAPlainSlap() {
    marking.markSlap(2, Side.PALM, false);
    marking.toggleKind(Slap.Kind.DOUBLE);
    assertEquals(Slap.Kind.DOUBLE, only().kind());
    marking.toggleKind(Slap.Kind.DOUBLE);
    assertEquals(Slap.Kind.SLAP, only().kind());
  }

  @Test
  void missedTurnTouchesNoZone() {
    marking.markMissed(3);

    assertEquals(Slap.Kind.MISSED, only().kind());
    assertEquals(Zone.UNKNOWN, only().zone());
    assertEquals(1, kept.size());
  }

  @Test
  void sameSpanKeyBeginsAndEndsInEitherDirection() {
    marking.toggleSpan(Span.SpanKind.BENT_WRIST, 4);
    assertTrue(reading().spans().isEmpty());
    marking.toggleSpan(Span.SpanKind.BENT_WRIST, 1);

    Span span = reading().spans().get(0);
    assertEquals(0.02, span.startS());
    assertEquals(0.1, span.endS());
    assertTrue(marking.openSpansProperty().get().isEmpty());
  }

  @Test
  void spanWithoutLengthIsGivenUp() {
    marking.toggleSpan(Span.SpanKind.PAUSE, 4);
    marking.toggleSpan(Span.SpanKind.PAUSE, 4);

    assertTrue(reading().spans().isEmpty());
    assertTrue(kept.isEmpty());
  }

  @Test
  void nudgeMovesByOneFrameOfUnevenLength() {
    marking.markSlap(2, Side.PALM, false);
    marking.nudgeSlap(1);

    assertEquals(0.06, only().timeS());
    assertEquals(0.01, only().resolutionS(), 1e-12);
  }

  @Test
  void markIsNotMovedOntoAnother() {
    marking.markSlap(2, Side.PALM, false);
    marking.markSlap(3, Side.BACK, false);
    marking.nudgeSlap(-1);

    assertEquals(List.of(0.05, 0.06), reading().slaps().stream().map(Slap::timeS).toList());
    assertEquals(2, kept.size());
  }

  @Test
  void nudgeStopsAtTheEndsOfTheClip() {
    marking.markSlap(6, Side.PALM, false);
    marking.nudgeSlap(1);

    assertEquals(0.15, only().timeS());
  }

  @Test
  void deleteTakesTheCurrentMarkAndMakesTheOneBeforeCurrent() {
    marking.markSlap(1, Side.PALM, false);
    marking.markSlap(3, Side.BACK, false);
    marking.delete();

    assertEquals(0.02, only().timeS());
    assertEquals(only(), marking.slapProperty().get());
  }

  @Test
  void undoAndRedoAreKeptTooAndSayWhatTheyDid() {
    marking.markSlap(1, Side.PALM, false);
    marking.toggleZone(Zone.FINGERS);
    marking.undo();
    assertEquals(Zone.CENTRE, only().zone());
    assertEquals("Undone: fingers at clip 0.020 s", marking.stepProperty().get());
    marking.redo();
    assertEquals(Zone.FINGERS, only().zone());
    assertEquals("Redone: fingers at clip 0.020 s", marking.stepProperty().get());

    assertEquals(4, kept.size());
    assertEquals(reading(), kept.get(3));
    assertEquals(
        List.of(
            "palm slap at clip 0.020 s",
            "fingers at clip 0.020 s",
            "Undone: fingers at clip 0.020 s",
            "Redone: fingers at clip 0.020 s"),
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
    marking.markSlap(1, Side.PALM, false);
    marking.markSlap(4, Side.BACK, false);
    marking.chooseSlapOn(1);
    assertEquals(0.02, marking.slapProperty().get().timeS());
    marking.chooseSlapOn(2);
    assertEquals(0.02, marking.slapProperty().get().timeS());
  }

  @Test
  void neighboursAreFoundBothWays() {
    marking.markSlap(1, Side.PALM, false);
    marking.markSlap(4, Side.BACK, false);

    assertEquals(Optional.of(4), marking.neighbourFrame(1, true));
    assertEquals(Optional.of(1), marking.neighbourFrame(4, false));
    assertEquals(Optional.empty(), marking.neighbourFrame(4, true));
  }

  @Test
  void editOpensAFinishedReadingAgain() {
    marking.markSlap(1, Side.PALM, false);
    marking.toggleFinished();
    assertTrue(reading().finished());
    marking.toggleZone(Zone.EDGE);
    assertFalse(reading().finished());
    assertEquals(List.of(Instant.EPOCH), reading().reopenedAt());
  }

  @Test
  void openingAFinishedReadingAgainIsNotedAndUndoKeepsTheNote() {
    marking.markSlap(1, Side.PALM, false);
    marking.toggleFinished();
    assertEquals(List.of(), reading().reopenedAt());
    marking.toggleFinished();
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
    marking.markSlap(1, Side.PALM, false);

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
    assertEquals(Optional.of(1), marking.firstUnseenFrame());

    marking.markSeen(2);
    assertEquals(Optional.of(1), marking.firstUnseenFrame());
    marking.markSeen(1);
    assertTrue(now().slaps().get(0).seen());
    assertEquals(Zone.CENTRE, now().slaps().get(0).zone(), "seen without a fault");
    assertEquals(Zone.UNKNOWN, now().slaps().get(1).zone());
    assertEquals(Optional.of(4), marking.firstUnseenFrame());
  }

  @Test
  void readingIsFinishedOnlyWhenAllIsSeen() {
    marking.startFrom(twoContacts());
    marking.markSeen(1);
    marking.toggleFinished();
    assertFalse(now().finished());
    assertEquals(
        "not finished: one copied mark is still to be checked", marking.stepProperty().get());
    marking.markSeen(4);
    marking.toggleFinished();
    assertTrue(now().finished());
  }

  @Test
  void copyingIsOneStepThatCanBeUndone() {
    marking.markSlap(3, Side.BACK, false);
    Reading before = now();
    marking.startFrom(twoContacts());
    marking.markSeen(1);
    marking.undo();
    // What was seen of an estimate can't be unseen.
    assertEquals(before.withEstimateSeen(true), now());
    marking.redo();
    assertEquals(2, now().slaps().size());
  }

  @Test
  void whatWasSeenStaysSeenWhenAnEditIsUndone() {
    marking.startFrom(twoContacts());
    marking.chooseSlapOn(1);
    marking.markSeen(1);
    marking.toggleZone(Zone.EDGE);
    marking.markSeen(4);
    marking.undo();
    assertEquals(Optional.empty(), marking.firstUnseenFrame());
    assertEquals(Zone.CENTRE, now().slaps().get(0).zone());
  }

  @Test
  void oneNamedSideNamesTheOthers() {
    Estimate estimate = twoContacts();
    marking.setEstimate(estimate);
    marking.startFrom(estimate);
    marking.markSlap(4, Side.PALM, false);
    assertEquals(List.of(Side.BACK, Side.PALM), now().slaps().stream().map(Slap::side).toList());
    marking.markSlap(4, Side.BACK, false);
    assertEquals(Side.BACK, now().slaps().get(0).side(), "what is named is not turned again");
  }

  @Test
  void ownMarksNeverFollowTheEstimate() {
    marking.setEstimate(twoContacts());
    marking.markSlap(1, Side.PALM, false);
    marking.markSlap(4, Side.PALM, false);
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
        EstimatedSlap.Timing.seen(timeS, 0.02),
        EstimatedSlap.EstimatedSide.of(pose, 0.9),
        EstimatedSlap.EstimatedZone.UNKNOWN,
        false,
        Set.of(Estimate.Source.MOTION),
        0.9,
        "");
  }
}
