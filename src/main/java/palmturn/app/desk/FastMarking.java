package palmturn.app.desk;

import palmturn.app.estimate.ShownEstimate;
import palmturn.app.marking.MarkPass;
import palmturn.app.marking.Marking;
import palmturn.app.marking.Typing;
import palmturn.trial.Reading;

/** The two fast ways to mark: typing along, and going through marks one by one. */
public record FastMarking(
    OpenSession session,
    OpenReading reading,
    Marking marking,
    Typing typing,
    MarkPass pass,
    ShownEstimate estimate,
    Notices notices) {
  /** Plays slowly and takes keys for rough marks; again: stops, and they settle. */
  public void type() {
    if (typing.activeProperty().get()) {
      typing.stop();
    } else {
      reading.edit(() -> typing.begin(session.timeScale()));
    }
  }

  /** Goes through the marks, from the first that is still to be looked at. */
  public void goThrough() {
    reading.edit(
        () -> {
          Reading now = marking.readingProperty().get();
          if (now == null || now.slaps().isEmpty()) {
            notices.warn("there are no marks to go through yet");
          } else {
            pass.begin(estimate.visibleProperty().getValue());
          }
        });
  }
}
