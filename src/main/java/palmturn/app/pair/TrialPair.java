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
import palmturn.app.stage.PlaySpeed;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.measure.TrialAlignment;
import palmturn.measure.TrialClock;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/**
 * Two trials at the same moment. The first is stepped and played; the other follows to the frame
 * that is nearest to the same moment.
 */
public final class TrialPair {
  /** Time played before the first slap and after the last, real seconds. */
  private static final double AROUND_S = 0.35;

  /** Time played before and after a looped slap, real seconds. */
  private static final double BEFORE_SLAP_S = 0.25;

  private static final double AFTER_SLAP_S = 0.15;

  /** A frame that is due now is not to be missed by a rounding. */
  private static final double ROUNDING_S = 1e-6;

  private final PairMember one;
  private final PairMember other;
  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<@Nullable TrialAlignment> meeting =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper missingReason = new ReadOnlyStringWrapper("");
  private final LoopClock loopClock = new LoopClock();

  /**
   * Starts with nothing.
   *
   * @param screen hands work to the screen's thread
   */
  public TrialPair(Executor screen) {
    one = new PairMember(screen);
    other = new PairMember(screen);
    one.stage().frameProperty().addListener((frame, before, now) -> moveOther());
  }

  /** The trial that is stepped. */
  public PairMember one() {
    return one;
  }

  /** The trial that follows. */
  public PairMember other() {
    return other;
  }

  /** Returns the half on the left: the left hand, or of two trials of one hand the earlier. */
  public PairMember left() {
    return oneIsLeft() ? one : other;
  }

  /** Returns the half on the right. */
  public PairMember right() {
    return oneIsLeft() ? other : one;
  }

  /** True while the pair is shown. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /** The alignment of the two; null until both clips are open. */
  public ReadOnlyObjectProperty<@Nullable TrialAlignment> meetingProperty() {
    return meeting.getReadOnlyProperty();
  }

  /** The reason for a missing other trial; empty if there is one. */
  public ReadOnlyStringProperty missingReasonProperty() {
    return missingReason.getReadOnlyProperty();
  }

  /** True while both play. */
  public ReadOnlyBooleanProperty playingProperty() {
    return loopClock.playingProperty();
  }

  /** The play speed, as a share of real time. */
  public ReadOnlyObjectProperty<PlaySpeed> speedProperty() {
    return loopClock.speedProperty();
  }

  /** Begins with a trial, whose clip is on its way. */
  public void begin(PairTrial trial) {
    close();
    one.setComing(trial);
    active.set(true);
  }

  /** Shows the first trial's frames. */
  public void openOne(PairTrial trial, FrameTable frames, Stage.PictureSource pictures) {
    one.open(trial, frames, pictures);
    alignFirstSlaps();
  }

  /**
   * Sets the other trial, whose clip is loading.
   *
   * @param why reason if there is none; empty otherwise
   */
  public void setOtherComing(@Nullable PairTrial trial, String why) {
    stop();
    meeting.set(null);
    other.setComing(trial);
    missingReason.set(why);
  }

  /** Shows the other trial's frames. */
  public void openOther(PairTrial trial, FrameTable frames, Stage.PictureSource pictures) {
    other.open(trial, frames, pictures);
    alignFirstSlaps();
  }

  /** Closes both. */
  public void close() {
    stop();
    active.set(false);
    meeting.set(null);
    one.close();
    other.close();
    missingReason.set("");
  }

  private void alignFirstSlaps() {
    TrialClock here = one.handClock();
    TrialClock there = other.handClock();
    if (here != null && there != null) {
      meeting.set(new TrialAlignment(here, there, 1, 0, false));
    }
    if (here != null) {
      one.goTo(here.mediaS(0));
      moveOther();
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
    showMoment(realS);
  }

  /** Goes to the next slap in both, or to the one before, and aligns them there. */
  public void stepSlap(boolean forward) {
    TrialAlignment now = meeting.get();
    TrialClock here = one.handClock();
    stop();
    if (now != null && now.onSlap()) {
      int last = now.one().lastAt(one.momentS());
      boolean onIt = last > 0 && now.one().slaps().get(last - 1).timeS() == one.momentS();
      meetAt(forward ? last + 1 : onIt ? last - 1 : last);
    } else if (here != null) {
      showMoment(0);
    }
  }

  /** Goes to the first slap that both have, or to the last. */
  public void goToEndSlap(boolean last) {
    stop();
    TrialAlignment now = meeting.get();
    if (now != null && now.onSlap()) {
      meetAt(last ? now.last() : now.first());
    }
  }

  private void meetAt(int wanted) {
    TrialAlignment now = meeting.get();
    if (now != null) {
      int slap = Math.max(now.first(), Math.min(now.last(), wanted));
      meeting.set(new TrialAlignment(now.one(), now.other(), slap, now.shift(), now.samePace()));
      showMoment(now.one().slapS(slap));
    }
  }

  /** Aligns a later slap of the other trial, or an earlier one if negative. */
  public void shiftMeeting(int by) {
    TrialAlignment now = meeting.get();
    if (now != null && now.onSlap()) {
      TrialAlignment moved =
          new TrialAlignment(now.one(), now.other(), now.slap(), now.shift() + by, now.samePace());
      if (moved.onSlap()) {
        meeting.set(moved);
        meetAt(moved.slap());
      }
    }
  }

  /** Switches between aligning every slap and real time. */
  public void toggleSamePace() {
    TrialAlignment now = meeting.get();
    if (now != null && now.onSlap()) {
      meeting.set(
          new TrialAlignment(now.one(), now.other(), now.slap(), now.shift(), !now.samePace()));
      moveOther();
    }
  }

  /** Mirrors the other trial's picture, or shows it as it was filmed. */
  public void toggleMirror() {
    other.mirroredProperty().set(!other.mirroredProperty().get());
  }

  /**
   * Zooms both pictures to the hands, or back to the whole.
   *
   * @return whether the place of the hands is known in either
   */
  public boolean toggleHandsZoom() {
    boolean known = false;
    for (PairMember half : List.of(one, other)) {
      PairTrial trial = half.trialProperty().get();
      if (trial != null && trial.hands() != null) {
        half.stage().viewing().toggleZoomTo(trial.hands());
        known = true;
      }
    }
    return known;
  }

  /** Shows both pictures whole. */
  public void showWhole() {
    one.stage().viewing().showWhole();
    other.stage().viewing().showWhole();
  }

  /** Shows both pictures larger, or more of them. */
  public void zoom(boolean larger) {
    for (PairMember half : List.of(one, other)) {
      if (larger) {
        half.stage().viewing().zoomIn();
      } else {
        half.stage().viewing().zoomOut();
      }
    }
  }

  /** Plays both slowly from here, again and again over all slaps, or stops. */
  public void playOrStop() {
    if (loopClock.playingProperty().get()) {
      stop();
    } else {
      TrialAlignment now = meeting.get();
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
    TrialAlignment now = meeting.get();
    if (loopClock.playingProperty().get()) {
      stop();
    } else if (now != null && now.onSlap()) {
      double atS = now.one().slapS(now.slap());
      play(atS - BEFORE_SLAP_S, atS + AFTER_SLAP_S, atS - BEFORE_SLAP_S);
    }
  }

  /** Plays twice as fast, up to 1. */
  public void faster() {
    loopClock.setSpeed(speedProperty().get().faster(), nowS());
  }

  /** Plays half as fast, down to 1/16. */
  public void slower() {
    loopClock.setSpeed(speedProperty().get().slower(), nowS());
  }

  /** Stops playing. */
  public void stop() {
    loopClock.stop();
  }

  private void play(double fromS, double toS, double startS) {
    TrialClock here = one.handClock();
    FrameTable frames = one.stage().framesProperty().get();
    if (here == null || frames == null) {
      return;
    }
    loopClock.play(
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
    if (!loopClock.playingProperty().get()) {
      return;
    }
    loopClock.tick(nanos);
    if (isBroken(one) || isBroken(other)) {
      stop();
    } else if (isReady(one) && isReady(other)) {
      showDueFrame(loopClock.dueS(nanos));
    }
  }

  /** Shows the last frame that is due, never one that is still to come. */
  private void showDueFrame(double realS) {
    TrialClock here = one.handClock();
    FrameTable frames = one.stage().framesProperty().get();
    if (here != null && frames != null) {
      one.stage().seek(frames.indexAt(here.mediaS(realS) + ROUNDING_S));
    }
  }

  private static boolean isReady(PairMember half) {
    return half.handClock() == null || half.stage().showsItsFrame();
  }

  private static boolean isBroken(PairMember half) {
    return !half.stage().troubleProperty().get().isEmpty();
  }

  /** Returns where the first trial is on its own clock, real seconds. */
  double nowS() {
    TrialClock here = one.handClock();
    return here == null ? 0 : here.realS(one.momentS());
  }

  private void showMoment(double realS) {
    TrialClock here = one.handClock();
    if (here != null) {
      one.goTo(here.mediaS(realS));
      moveOther();
    }
  }

  private void moveOther() {
    TrialAlignment now = meeting.get();
    if (now != null) {
      other.goTo(now.toOther(one.momentS()));
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
