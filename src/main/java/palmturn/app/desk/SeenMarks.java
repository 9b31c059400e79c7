package palmturn.app.desk;

import palmturn.app.marking.MarkPass;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.clip.Picture;
import palmturn.trial.Reading;

/** Marks a reader's slaps as seen once their own picture is on the stage and stands still. */
final class SeenMarks {
  private final OpenSession session;
  private final Marking marking;
  private final Stage stage;
  private final MarkPass pass;

  SeenMarks(OpenSession session, Marking marking, Stage stage, MarkPass pass) {
    this.session = session;
    this.marking = marking;
    this.stage = stage;
    this.pass = pass;
    stage.pictureProperty().addListener((picture, before, now) -> update());
    stage.playingProperty().addListener((playing, before, now) -> update());
  }

  /** Marks what stands on the stage as seen. */
  void update() {
    Picture picture = stage.pictureProperty().get();
    if (picture != null
        && !stage.playingProperty().get()
        && picture.index() == stage.frameProperty().get()
        && pass.positionProperty().get() == null
        && areOwn()) {
      marking.markSeen(picture.index());
    }
  }

  private boolean areOwn() {
    Reading shown = marking.readingProperty().get();
    return !session.readOnly() && shown != null && shown.reader().equals(session.reader());
  }
}
