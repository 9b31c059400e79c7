package palmturn.work.reel;

import java.awt.Rectangle;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFacts;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.Placed;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.work.UserError;

/** One hand's trial with its marks and its open clip. */
final class Filmed implements AutoCloseable {
  /** Around what is known of hands and elbow, in shares of the larger side. */
  private static final double AROUND = 0.15;

  private final Trial trial;
  private final Reading reading;
  private final FrameTable frames;
  private final FrameReader reader;
  private final Rectangle part;
  private @Nullable Picture shown;

  private Filmed(
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
  static Filmed open(SessionFolder folder, Trial trial, Reading reading, Reels.View view)
      throws UserError {
    try {
      ClipFile clip = ClipFile.open(folder.clipPath(trial));
      ClipFacts facts = clip.facts();
      Rectangle whole = new Rectangle(0, 0, facts.width(), facts.height());
      Rectangle part = view == Reels.View.WHOLE ? whole : hands(trial, view, whole);
      return new Filmed(trial, reading, clip.frames(), clip.newReader(), part);
    } catch (ClipException e) {
      throw UserError.of(e);
    }
  }

  Trial trial() {
    return trial;
  }

  Reading reading() {
    return reading;
  }

  /** What is shown of each picture, pixels. */
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

  /** Returns the time of that picture. */
  double frameS(double mediaS) {
    return frames.timeS(frames.indexAt(mediaS));
  }

  @Override
  public void close() {
    reader.close();
  }

  /** The moving hand and its elbow, as far as a person has pointed at them or they were found. */
  private static Rectangle hands(Trial trial, Reels.View view, Rectangle whole) throws UserError {
    Placed places = trial.places();
    Estimate estimate = trial.estimate();
    Estimate.Region region = places.handRegion();
    if (region == null && estimate != null) {
      region = estimate.handRegion();
    }
    if (region == null && view == Reels.View.HANDS_IF_KNOWN) {
      return whole;
    }
    if (region == null) {
      throw new UserError(
          trial.id().name()
              + ": where the hands are is not known: estimate it first, or point at the hand in the"
              + " app");
    }
    Rectangle all = box(region.x(), region.y(), region.width(), region.height());
    if (places.elbow() != null) {
      all.add(places.elbow().x(), places.elbow().y());
    } else if (estimate != null && estimate.elbow() != null) {
      all.add(estimate.elbow().startXPx(), estimate.elbow().startYPx());
    }
    int around = (int) Math.round(AROUND * Math.max(all.width, all.height));
    // Where no face may be seen nothing is added above, which is where it is.
    int above = view == Reels.View.HANDS ? 0 : around;
    return new Rectangle(
            all.x - around, all.y - above, all.width + 2 * around, all.height + around + above)
        .intersection(whole);
  }

  private static Rectangle box(double x, double y, double width, double height) {
    return new Rectangle(
        (int) Math.round(x),
        (int) Math.round(y),
        (int) Math.round(width),
        (int) Math.round(height));
  }
}
