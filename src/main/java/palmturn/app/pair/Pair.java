package palmturn.app.pair;

import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Speed;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.measure.HandClock;
import palmturn.measure.Meeting;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/**
 * Two trials at the same moment. The first is stepped and played; the other follows to the frame
 * that is nearest to the same moment.
 */
public final class Pair {
  /** What a loop shows before the first slap and after the last, real seconds. */
  private static final double AROUND_S = 0.35;

  /** What the loop over one slap shows before it and after it, real seconds. */
  private static final double BEFORE_SLAP_S = 0.25;

  private static final double AFTER_SLAP_S = 0.15;

  /** A frame that is due now is not to be missed by a rounding. */
  private static final double ROUNDING_S = 1e-6;

  private final Half one;
  private final Half other;
  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<@Nullable Meeting> meeting = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper empty = new ReadOnlyStringWrapper("");
  private final Rounds rounds = new Rounds();

  /**
   * Starts with nothing.
   *
   * @param screen hands work to the screen's thread
   */
  public Pair(Executor screen) {
    one = new Half(screen);
    other = new Half(screen);
    one.stage().frameProperty().addListener((frame, before, now) -> follow());
  }

  /** The trial that is stepped. */
  public Half one() {
    return one;
  }

  /** The trial that follows. */
  public Half other() {
    return other;
  }

  /** Returns the half on the left: the left hand, or of two trials of one hand the earlier. */
  public Half left() {
    return oneIsLeft() ? one : other;
  }

  /** Returns the half on the right. */
  public Half right() {
    return oneIsLeft() ? other : one;
  }

  /** Whether it is looked at. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /** Which moments are the same; null until both clips are open. */
  public ReadOnlyObjectProperty<@Nullable Meeting> meetingProperty() {
    return meeting.getReadOnlyProperty();
  }

  /** Why there is no other trial, in words; empty where there is one. */
  public ReadOnlyStringProperty emptyProperty() {
    return empty.getReadOnlyProperty();
  }

  /** Whether both play. */
  public ReadOnlyBooleanProperty playingProperty() {
    return rounds.playingProperty();
  }

  /** How fast they play, as a share of real time. */
  public ReadOnlyObjectProperty<Speed> speedProperty() {
    return rounds.speedProperty();
  }

  /** Begins with a trial, whose clip is on its way. */
  public void begin(PairTrial trial) {
    close();
    one.await(trial);
    active.set(true);
  }

  /** Shows the first trial's frames. */
  public void openOne(PairTrial trial, FrameTable frames, Stage.Pictures pictures) {
    one.open(trial, frames, pictures);
    meet();
  }

  /**
   * Names the other trial, whose clip is on its way.
   *
   * @param why why there is none; empty where there is
   */
  public void awaitOther(@Nullable PairTrial trial, String why) {
    stop();
    meeting.set(null);
    other.await(trial);
    empty.set(why);
  }

  /** Shows the other trial's frames. */
  public void openOther(PairTrial trial, FrameTable frames, Stage.Pictures pictures) {
    other.open(trial, frames, pictures);
    meet();
  }

  /** Lets go of both. */
  public void close() {
    stop();
    active.set(false);
    meeting.set(null);
    one.close();
    other.close();
    empty.set("");
  }

  private void meet() {
    HandClock here = one.beats();
    HandClock there = other.beats();
    if (here != null && there != null) {
      meeting.set(new Meeting(here, there, 1, 0, false));
    }
    if (here != null) {
      one.goTo(here.mediaS(0));
      follow();
    }
  }

  /** Goes some frames of the first trial on, or back when negative. */
  public void step(int by) {
    stop();
    one.stage().step(by);
  }

  /** Goes to the first trial's frame nearest to a moment of its clock, real seconds. */
  public void goTo(double realS) {
    stop();
    go(realS);
  }

  /** Goes to the next slap in both, or to the one before, and aligns them there. */
  public void slap(boolean forward) {
    Meeting now = meeting.get();
    HandClock here = one.beats();
    stop();
    if (now != null && now.onSlap()) {
      int last = now.one().lastAt(one.momentS());
      boolean onIt = last > 0 && now.one().slaps().get(last - 1).timeS() == one.momentS();
      meetAt(forward ? last + 1 : onIt ? last - 1 : last);
    } else if (here != null) {
      go(0);
    }
  }

  /** Goes to the first slap that both have, or to the last. */
  public void toEnd(boolean last) {
    stop();
    Meeting now = meeting.get();
    if (now != null && now.onSlap()) {
      meetAt(last ? now.last() : now.first());
    }
  }

  private void meetAt(int wanted) {
    Meeting now = meeting.get();
    if (now != null) {
      int slap = Math.max(now.first(), Math.min(now.last(), wanted));
      meeting.set(new Meeting(now.one(), now.other(), slap, now.shift(), now.samePace()));
      go(now.one().slapS(slap));
    }
  }

  /** Lets a later slap of the other trial meet the first one's, or an earlier when negative. */
  public void shift(int by) {
    Meeting now = meeting.get();
    if (now != null && now.onSlap()) {
      Meeting moved =
          new Meeting(now.one(), now.other(), now.slap(), now.shift() + by, now.samePace());
      if (moved.onSlap()) {
        meeting.set(moved);
        meetAt(moved.slap());
      }
    }
  }

  /** Lets every slap meet, or real time pass alike in both. */
  public void samePaceOrReal() {
    Meeting now = meeting.get();
    if (now != null && now.onSlap()) {
      meeting.set(new Meeting(now.one(), now.other(), now.slap(), now.shift(), !now.samePace()));
      follow();
    }
  }

  /** Mirrors the other trial's picture, or shows it as it was filmed. */
  public void mirror() {
    other.mirroredProperty().set(!other.mirroredProperty().get());
  }

  /**
   * Shows the hands as large as they fit, then the whole pictures again.
   *
   * @return whether it is known in either where they are
   */
  public boolean ontoHands() {
    boolean known = false;
    for (Half half : List.of(one, other)) {
      PairTrial trial = half.trialProperty().get();
      if (trial != null && trial.hands() != null) {
        half.stage().viewing().ontoOrWhole(trial.hands());
        known = true;
      }
    }
    return known;
  }

  /** Shows both pictures whole. */
  public void whole() {
    one.stage().viewing().whole();
    other.stage().viewing().whole();
  }

  /** Shows both pictures larger, or more of them. */
  public void zoom(boolean larger) {
    for (Half half : List.of(one, other)) {
      if (larger) {
        half.stage().viewing().larger();
      } else {
        half.stage().viewing().smaller();
      }
    }
  }

  /** Plays both slowly from here, again and again over all slaps, or stops. */
  public void playOrStop() {
    if (rounds.playingProperty().get()) {
      stop();
    } else {
      Meeting now = meeting.get();
      double fromS = now == null || !now.onSlap() ? 0 : now.one().slapS(now.first());
      double toS =
          now == null || !now.onSlap()
              ? Double.POSITIVE_INFINITY
              : now.one().slapS(now.last()) + AROUND_S;
      play(fromS - AROUND_S, toS, nowS());
    }
  }

  /** Plays the slap that was gone to last again and again, or stops. */
  public void loopSlap() {
    Meeting now = meeting.get();
    if (rounds.playingProperty().get()) {
      stop();
    } else if (now != null && now.onSlap()) {
      double atS = now.one().slapS(now.slap());
      play(atS - BEFORE_SLAP_S, atS + AFTER_SLAP_S, atS - BEFORE_SLAP_S);
    }
  }

  /** Plays twice as fast, up to 1. */
  public void faster() {
    rounds.setSpeed(speedProperty().get().faster(), nowS());
  }

  /** Plays half as fast, down to 1/16. */
  public void slower() {
    rounds.setSpeed(speedProperty().get().slower(), nowS());
  }

  /** Stops playing. */
  public void stop() {
    rounds.stop();
  }

  private void play(double fromS, double toS, double startS) {
    HandClock here = one.beats();
    FrameTable frames = one.stage().framesProperty().get();
    if (here == null || frames == null) {
      return;
    }
    rounds.play(
        Math.max(fromS, here.realS(frames.timeS(one.stage().first()))),
        Math.min(toS, here.realS(frames.timeS(one.stage().last()))),
        startS);
  }

  /**
   * Goes to the frames that are due while playing, once those before are both on the screen.
   *
   * @param nanos of a clock that never jumps
   */
  public void tick(long nanos) {
    if (!rounds.playingProperty().get()) {
      return;
    }
    rounds.tick(nanos);
    if (broken(one) || broken(other)) {
      stop();
    } else if (there(one) && there(other)) {
      due(rounds.dueS(nanos));
    }
  }

  /** Shows the last frame that is due, never one that is still to come. */
  private void due(double realS) {
    HandClock here = one.beats();
    FrameTable frames = one.stage().framesProperty().get();
    if (here != null && frames != null) {
      one.stage().seek(frames.indexAt(here.mediaS(realS) + ROUNDING_S));
    }
  }

  private static boolean there(Half half) {
    return half.beats() == null || half.stage().pictureIsThere();
  }

  private static boolean broken(Half half) {
    return !half.stage().troubleProperty().get().isEmpty();
  }

  /** Returns where the first trial is on its own clock, real seconds. */
  double nowS() {
    HandClock here = one.beats();
    return here == null ? 0 : here.realS(one.momentS());
  }

  private void go(double realS) {
    HandClock here = one.beats();
    if (here != null) {
      one.goTo(here.mediaS(realS));
      follow();
    }
  }

  private void follow() {
    Meeting now = meeting.get();
    if (now != null) {
      other.goTo(now.there(one.momentS()));
    }
  }

  private boolean oneIsLeft() {
    PairTrial here = one.trialProperty().get();
    PairTrial there = other.trialProperty().get();
    if (here == null) {
      return true;
    }
    TrialId id = here.id();
    if (there == null || there.id().hand() != id.hand()) {
      return id.hand() == Hand.LEFT;
    }
    int blocks = Block.order(id.block()) - Block.order(there.id().block());
    return blocks < 0 || blocks == 0 && id.repeat() < there.id().repeat();
  }
}
