package palmturn.app.differences;

import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.settle.Difference.What;
import palmturn.trial.TimeScale;

/** A player of a difference in a short loop, with still pictures beside it. */
public final class DifferencePlayer {
  /** Time played before and after, real seconds. */
  private static final double LEAD_S = 0.25;

  private final Stage stage;
  private final StillPair stills;
  private @Nullable ReviewedTrial opened;
  private @Nullable ReviewItem item;
  private boolean stopped;
  private boolean ready;

  DifferencePlayer(Executor screen) {
    stage = new Stage(screen);
    stills = new StillPair(screen);
    stage.pictureProperty().addListener((picture, before, now) -> showNeighbours(now));
  }

  Stage stage() {
    return stage;
  }

  StillPair stills() {
    return stills;
  }

  /** Shows the frames of a difference and plays it; shows nothing where there is none. */
  void show(@Nullable ReviewedTrial in, @Nullable ReviewItem what) {
    clear();
    opened = in;
    item = what;
    if (in != null && what != null) {
      Frames frames = framesOf(what, in);
      stills.load(
          in.pictures(),
          frames.left(),
          frames.right(),
          () -> {
            ready = true;
            if (!stopped) {
              play();
            }
          });
    }
  }

  /** Stops at a frame, even before the still pictures are loaded. */
  void stopAt(int frame) {
    stopped = true;
    stage.seek(frame);
    showNeighbours(stage.pictureProperty().get());
  }

  /** Stops, and shows nothing. */
  void clear() {
    stage.stop();
    stills.clear();
    opened = null;
    item = null;
    stopped = false;
    ready = false;
  }

  private void play() {
    ReviewItem what = item;
    if (opened != null && what != null) {
      TimeScale scale = opened.trial().timeScale();
      double leadS = scale.known() ? LEAD_S / scale.factorAt(what.fromS()) : LEAD_S;
      stage.loop(what.fromS() - leadS, what.toS() + leadS);
    }
  }

  /** Shows the neighbours of the frame it is stopped at. */
  private void showNeighbours(@Nullable Picture shown) {
    if (stopped
        && opened != null
        && shown != null
        && shown.index() == stage.frameProperty().get()) {
      stills.load(
          opened.pictures(),
          Math.max(0, shown.index() - 1),
          Math.min(opened.frames().size() - 1, shown.index() + 1),
          () -> {});
    }
  }

  /** Plays the difference once its pictures are there, or stops on its own frame. */
  public void playOrStop() {
    if (item == null || opened == null || !ready) {
      return;
    }
    if (stage.playingProperty().get()) {
      stage.seek(framesOf(item, opened).middle());
    } else {
      play();
    }
  }

  /** Frames shown side by side; the middle one plays. */
  record Frames(int left, int middle, int right) {}

  /** Returns the frames of a difference: around its own, or both ends where there are two. */
  static Frames framesOf(ReviewItem item, ReviewedTrial in) {
    FrameTable table = in.frames();
    int from = table.nearest(item.fromS());
    int to = table.nearest(item.toS());
    if (hasTwoMoments(item) && to > from) {
      return new Frames(from, item instanceof ReviewItem.OfSpan ? from : (from + to) / 2, to);
    }
    return new Frames(Math.max(0, from - 1), from, Math.min(table.size() - 1, from + 1));
  }

  /** Returns whether a difference has a beginning and an end, and not only one moment. */
  static boolean hasTwoMoments(ReviewItem item) {
    return item instanceof ReviewItem.OfSpan || item.difference().what().contains(What.APART);
  }
}
