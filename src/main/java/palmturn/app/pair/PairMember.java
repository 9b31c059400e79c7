package palmturn.app.pair;

import java.util.concurrent.Executor;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.measure.TrialClock;
import palmturn.trial.Slap;

/** One of the two trials side by side: its marks, and the stage that its exact frames stand on. */
public final class PairMember {
  private final Stage stage;
  private final ReadOnlyObjectWrapper<@Nullable PairTrial> trial = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper outsideReason = new ReadOnlyStringWrapper("");
  private final BooleanProperty mirrored = new SimpleBooleanProperty(false);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable TrialClock handClock;

  PairMember(Executor screen) {
    stage = new Stage(screen);
  }

  /** The stage with its frames. */
  public Stage stage() {
    return stage;
  }

  /** The trial; null where there is none. */
  public ReadOnlyObjectProperty<@Nullable PairTrial> trialProperty() {
    return trial.getReadOnlyProperty();
  }

  /** The reason why the moment lies outside the trial; empty if it does not. */
  public ReadOnlyStringProperty outsideReasonProperty() {
    return outsideReason.getReadOnlyProperty();
  }

  /** True if its picture is mirrored for comparison. */
  public BooleanProperty mirroredProperty() {
    return mirrored;
  }

  /** An error with its clip; empty for none. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Returns its marks; null until its clip is open. */
  @Nullable TrialClock handClock() {
    return handClock;
  }

  /** Sets the trial whose clip is loading. */
  void setComing(@Nullable PairTrial coming) {
    close();
    trial.set(coming);
  }

  void open(PairTrial opened, FrameTable frames, Stage.PictureSource pictures) {
    trial.set(opened);
    stage.open(frames, pictures, opened.trial().fromS(), opened.trial().toS());
    handClock = TrialClock.of(opened.trial(), opened.marks(), frames.timeS(stage.first()));
  }

  /** Reports an error with its clip. */
  public void setTrouble(String words) {
    trouble.set(words);
  }

  void close() {
    handClock = null;
    stage.close();
    outsideReason.set("");
    trouble.set("");
    mirrored.set(false);
    trial.set(null);
  }

  /**
   * Returns the moment that the frame stands for, media seconds: a slap's own time on the frame
   * nearest to it, else the time of the frame.
   */
  double momentS() {
    FrameTable frames = stage.framesProperty().get();
    TrialClock marks = handClock;
    if (frames == null || marks == null) {
      return 0;
    }
    int frame = stage.frameProperty().get();
    double timeS = frames.timeS(frame);
    for (Slap slap : marks.slaps()) {
      if (frames.nearest(slap.timeS()) == frame) {
        return slap.timeS();
      }
    }
    return timeS;
  }

  /** Goes to the frame nearest to a moment; outside the trial, to its end with a reason. */
  void goTo(double mediaS) {
    FrameTable frames = stage.framesProperty().get();
    TrialClock marks = handClock;
    if (frames == null || marks == null) {
      return;
    }
    double reachS = frames.medianS();
    double firstS = frames.timeS(stage.first());
    double lastS = frames.timeS(stage.last());
    stage.seek(frames.nearest(mediaS));
    outsideReason.set(
        mediaS < firstS - reachS
            ? "this trial starts "
                + PairWords.duration(marks.scale().realBetween(mediaS, firstS))
                + " later"
            : mediaS > lastS + reachS
                ? "this trial ended "
                    + PairWords.duration(marks.scale().realBetween(lastS, mediaS))
                    + " earlier"
                : "");
  }
}
