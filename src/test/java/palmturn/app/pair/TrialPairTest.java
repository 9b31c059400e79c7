package palmturn.app.pair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import palmturn.app.pair.PairTrial.From;
import palmturn.clip.FrameTable;
import palmturn.clip.FrameTables;
import palmturn.clip.Picture;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class TrialPairTest {
  private final FrameTable sixty = FrameTables.steady(300, 60);
  private final FrameTable thirty = FrameTables.steady(150, 30);
  private final List<CompletableFuture<Picture>> late = new ArrayList<>();
  private final TrialPair pair = new TrialPair(Runnable::run);

  @Test
  void beginsOnTheFirstSlapOfBoth() {
    open(trial(Hand.RIGHT, 1.0, 1.2, 1.4), trial(Hand.LEFT, 2.0, 2.5, 3.0));

    assertEquals(60, frame(pair.one()));
    assertEquals(60, frame(pair.other()));
    assertSame(pair.other(), pair.left());
    assertEquals("slap 1, palm", PairWords.position(pair.other().handClock(), 2.0).slap());
  }

  @Test
  void slapsAreGoneThroughInBoth() {
    open(trial(Hand.RIGHT, 1.0, 1.2, 1.4), trial(Hand.LEFT, 2.0, 2.5));
    pair.stepSlap(true);
    assertEquals(72, frame(pair.one()));
    assertEquals(75, frame(pair.other()));
    pair.stepSlap(true);
    assertEquals(72, frame(pair.one()), "the third slap has none to meet");
    pair.step(1);
    pair.stepSlap(false);
    assertEquals(72, frame(pair.one()), "back to the slap just passed");
    pair.stepSlap(false);
    assertEquals(60, frame(pair.one()));
  }

  @Test
  void aStepShowsTheFrameNearestToTheSameMomentOfTheOther() {
    open(trial(Hand.RIGHT, 1.0, 1.2, 1.4), trial(Hand.LEFT, 2.0, 2.6));
    pair.step(6);
    assertEquals(66, frame(pair.one()));
    assertEquals(63, frame(pair.other()), "100 ms after slap 1 in real time");
    pair.toggleSamePace();
    assertEquals(69, frame(pair.other()), "half of the interval at the same pace");
    assertEquals("300 of 600 ms to slap 2, 50 %", at(pair.other()).interval());
    assertEquals("100 of 200 ms to slap 2, 50 %", at(pair.one()).interval());
  }

  @Test
  void wherePalmMeetsBackALaterSlapCanBeLetMeet() {
    open(trial(Hand.RIGHT, 1.0, 1.2, 1.4), trial(Hand.LEFT, 2.0, 2.5, 3.0));
    pair.shiftMeeting(1);
    assertEquals(75, frame(pair.other()));
    assertEquals("palm meets back", PairWords.sidesWarning(pair.meetingProperty().get()));
    pair.shiftMeeting(1);
    assertEquals(90, frame(pair.other()));
    assertEquals("", PairWords.sidesWarning(pair.meetingProperty().get()));
    pair.shiftMeeting(1);
    assertEquals(90, frame(pair.other()), "there is no slap 4");
  }

  @Test
  void beyondItsTrialTheOtherSaysSo() {
    open(trial(Hand.RIGHT, 1.0, 1.2, 1.4), trial(Hand.LEFT, 4.0, 4.5));
    pair.step(90);
    assertEquals(149, frame(pair.other()));
    assertEquals("this trial ended 533 ms earlier", pair.other().outsideReasonProperty().get());
    pair.step(-90);
    assertEquals("", pair.other().outsideReasonProperty().get());
  }

  @Test
  void playsRoundByRealTimeAndWaitsForBothPictures() {
    PairTrial slow = trial(Hand.LEFT, TimeScale.uniform(0.5), 2.0, 2.4);
    pair.begin(slow);
    pair.openOne(slow, sixty, index -> CompletableFuture.completedFuture(picture(sixty, index)));
    PairTrial other = trial(Hand.RIGHT, 1.0, 1.2);
    pair.setOtherComing(other, "");
    pair.openOther(other, thirty, this::later);
    late.get(late.size() - 1).complete(picture(thirty, 30));
    pair.playOrStop();
    pair.tick(0);
    pair.tick(800_000_000);
    assertEquals(132, frame(pair.one()), "0.1 real seconds at 1/8 are 0.2 of the clip");
    assertEquals(33, frame(pair.other()));
    pair.tick(1_600_000_000);
    assertEquals(132, frame(pair.one()), "the other picture is still to come");
    late.get(late.size() - 1).complete(picture(thirty, 33));
    pair.tick(1_600_000_000);
    assertEquals(144, frame(pair.one()));
    late.get(late.size() - 1).complete(picture(thirty, 36));
    pair.tick(60_000_000_000L);
    assertEquals(78, frame(pair.one()), "round to 0.35 real seconds before the first slap");
    assertTrue(pair.playingProperty().get());
  }

  @Test
  void aTrialWithoutMarksIsAlignedOnItsFirstFrameAndSaysSo() {
    PairTrial unread = new PairTrial(bare(Hand.LEFT, TimeScale.REAL), null, From.NOBODY, null);
    open(trial(Hand.RIGHT, 1.0, 1.2, 1.4), unread);
    assertEquals(0, frame(pair.other()));
    pair.step(6);
    assertEquals(3, frame(pair.other()));
    assertEquals(List.of("no slaps: starts at its first frame"), PairWords.notes(unread, false));
    pair.toggleSamePace();
    assertFalse(pair.meetingProperty().get().samePace());
  }

  @Test
  void letsGoOfBoth() {
    open(trial(Hand.RIGHT, 1.0, 1.2), trial(Hand.LEFT, 2.0, 2.5));
    pair.close();
    assertFalse(pair.activeProperty().get());
    assertNull(pair.meetingProperty().get());
    assertNull(pair.one().stage().framesProperty().get());
    assertNull(pair.other().stage().framesProperty().get());
  }

  @Test
  void theOtherHandsTwinComesFirstThenWhatHasMarks() {
    TrialId open = new TrialId(Hand.RIGHT, "baseline", 2);
    PairTrial marked = trial(Hand.LEFT, 1.0);
    PairTrial twin =
        new PairTrial(bare(new TrialId(Hand.LEFT, "baseline", 2)), null, From.NOBODY, null);
    PairTrial third =
        new PairTrial(bare(new TrialId(Hand.LEFT, "baseline", 3)), null, From.NOBODY, null);
    PairTrial same = trial(Hand.RIGHT, 1.0);
    List<PairTrial> filmed = List.of(same, third, marked, twin);
    assertEquals(List.of(twin, marked, third, same), PairPartners.rank(open, filmed));
    assertEquals(marked, PairPartners.rank(open, List.of(same, third, marked)).get(0));
    assertNull(PairPartners.preferred(open, List.of(same)));
  }

  private void open(PairTrial one, PairTrial other) {
    pair.begin(one);
    pair.openOne(one, sixty, index -> CompletableFuture.completedFuture(picture(sixty, index)));
    pair.setOtherComing(other, "");
    pair.openOther(
        other, thirty, index -> CompletableFuture.completedFuture(picture(thirty, index)));
  }

  private CompletableFuture<Picture> later(int index) {
    CompletableFuture<Picture> asked = new CompletableFuture<>();
    late.add(asked);
    return asked;
  }

  private static PairWords.SlapPosition at(PairMember half) {
    return PairWords.position(half.handClock(), half.momentS());
  }

  private static int frame(PairMember half) {
    return half.stage().frameProperty().get();
  }

  private static Picture picture(FrameTable frames, int index) {
    return new Picture(index, frames.timeS(index), 1, 1, new int[1]);
  }

  private static PairTrial trial(Hand hand, double... slapsS) {
    return trial(hand, TimeScale.REAL, slapsS);
  }

  private static PairTrial trial(Hand hand, TimeScale scale, double... slapsS) {
    List<Slap> slaps = new ArrayList<>();
    for (double timeS : slapsS) {
      Side side = slaps.size() % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(Slap.onFrame(Slap.Kind.SLAP, timeS, 0.01, side, Zone.CENTRE));
    }
    Reading reading = new Reading("AK", true, StartedFrom.NOTHING, slaps, List.of(), Extra.NONE);
    return new PairTrial(bare(hand, scale), reading, From.READER, null);
  }

  private static Trial bare(Hand hand, TimeScale scale) {
    return bare(new TrialId(hand, "baseline", 1), scale);
  }

  private static Trial bare(TrialId id) {
    return bare(id, TimeScale.REAL);
  }

  private static Trial bare(TrialId id, TimeScale scale) {
    return new Trial(
        id,
        new ClipRef("clips/a.mp4", "00", 1 / 60.0, Extra.NONE),
        null,
        null,
        Mirrored.FALSE,
        null,
        scale,
        null,
        null,
        List.of(),
        null,
        Extra.NONE);
  }
}
