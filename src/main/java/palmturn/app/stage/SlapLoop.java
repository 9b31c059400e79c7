package palmturn.app.stage;

import palmturn.clip.FrameTable;

/** Plays a few frames over and over. */
public final class SlapLoop {
  private final Stage stage;
  private int from;
  private int to;
  private boolean active;

  /** Loops on a stage. */
  public SlapLoop(Stage stage) {
    this.stage = stage;
    stage
        .pictureProperty()
        .addListener(
            (picture, before, now) -> {
              if (active && now != null && (now.index() >= to || now.index() < from)) {
                restart();
              }
            });
  }

  /** Plays from one moment to another, media seconds, until {@link #end}. */
  public void play(double fromS, double toS) {
    FrameTable frames = stage.framesProperty().get();
    if (frames == null) {
      return;
    }
    from = Math.max(stage.first(), frames.indexAt(fromS));
    to = Math.min(stage.last(), Math.max(from + 1, frames.indexAt(toS)));
    active = true;
    restart();
  }

  /** Stops. */
  public void end() {
    active = false;
    stage.stop();
  }

  private void restart() {
    stage.seek(from);
    stage.playOrStop();
  }
}
