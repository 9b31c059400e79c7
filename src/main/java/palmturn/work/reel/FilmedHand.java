package palmturn.work.reel;

import java.awt.Rectangle;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.measure.TrialClock;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipFacts;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.UserError;

/** A hand's trial with its marks and its open clip. */
final class FilmedHand implements AutoCloseable {
  /** A mark is shown on the picture for so long after its moment, real seconds. */
  private static final double SHOWN_S = 0.08;

  private final Trial trial;
  private final Reading reading;
  private final FrameTable frames;
  private final FrameReader reader;
  private final Rectangle part;
  private @Nullable Picture shown;

  private FilmedHand(
      Trial trial, Reading reading, FrameTable frames, FrameReader reader, Rectangle part) {
    this.trial = trial;
    this.reading = reading;
    this.frames = frames;
    this.reader = reader;
    this.part = part;
  }

  /**
   * Opens a trial's clip.
   *
   * @param view how much of the picture is shown
   * @throws UserError if the clip can't be read, or where the hands are is not known but needed
   */
  static FilmedHand open(SessionFolder folder, Trial trial, Reading reading, Reels.View view)
      throws UserError {
    ClipFile clip = ClipFile.open(folder.clipPath(trial));
    ClipFacts facts = clip.facts();
    boolean hands =
        view == Reels.View.HANDS || view == Reels.View.HANDS_IF_KNOWN && HandsRegion.known(trial);
    Rectangle part =
        hands
            ? HandsRegion.of(trial, facts.width(), facts.height(), view != Reels.View.HANDS)
            : new Rectangle(0, 0, facts.width(), facts.height());
    return new FilmedHand(trial, reading, clip.frames(), clip.newReader(), part);
  }

  Trial trial() {
    return trial;
  }

  Reading reading() {
    return reading;
  }

  /** The part of each picture that is shown, pixels. */
  Rectangle part() {
    return part;
  }

  /** Returns the picture that is on the screen at a moment, media seconds. */
  Picture at(double mediaS) throws ClipException {
    int index = frames.indexAt(mediaS);
    if (shown == null || shown.index() != index) {
      shown = reader.read(index);
    }
    return shown;
  }

  /** Returns the trial's own clock and its slaps by number. */
  TrialClock clock() {
    return TrialClock.of(trial, reading, frames.timeS(0));
  }

  /** Returns the mark whose picture is on the screen, or was a moment ago. */
  @Nullable Slap markAt(double mediaS) {
    double shownS = frames.timeS(frames.indexAt(mediaS));
    Slap last = null;
    for (Slap slap : reading.slaps()) {
      double agoS = real(frames.timeS(frames.indexAt(slap.timeS())), shownS);
      if (agoS >= 0 && agoS <= SHOWN_S) {
        last = slap;
      }
    }
    return last;
  }

  /** Returns whether a mark has no fault of its own and lies in no span that spoils it. */
  boolean clean(Slap mark) {
    return !mark.faulty()
        && reading.spans().stream()
            .noneMatch(span -> span.kind().spoils() && span.contains(mark.timeS()));
  }

  /** Returns real seconds between two moments; media seconds where real ones can't be told. */
  double real(double fromS, double toS) {
    TimeScale scale = trial.timeScale();
    return scale.known() ? scale.realBetween(fromS, toS) : toS - fromS;
  }

  /** Returns the moment some real seconds after another, or before it. */
  double after(double fromS, double realS) {
    TimeScale scale = trial.timeScale();
    return scale.known() ? scale.mediaAfter(fromS, realS) : fromS + realS;
  }

  @Override
  public void close() {
    reader.close();
  }
}
