package palmturn.app.desk;

import java.util.Objects;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import palmturn.app.board.Board;
import palmturn.app.marking.Marking;
import palmturn.app.tally.Tally;
import palmturn.trial.Reading;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;

/** The figures of the reading on the stage, brought up to date with every mark. */
public final class ReadingFigures {
  private final OpenSession session;
  private final ClipLoader loader;
  private final Marking marking;
  private final Board board;
  private final Tally tally;
  private final Review review;
  private final ReadOnlyStringWrapper state = new ReadOnlyStringWrapper("");

  ReadingFigures(
      OpenSession session,
      ClipLoader loader,
      Marking marking,
      Board board,
      Tally tally,
      Review review) {
    this.session = session;
    this.loader = loader;
    this.marking = marking;
    this.board = board;
    this.tally = tally;
    this.review = review;
    marking.readingProperty().addListener((reading, before, now) -> update());
  }

  /** The reading's reader, and whether it is finished. */
  public ReadOnlyStringProperty stateProperty() {
    return state.getReadOnlyProperty();
  }

  /** Brings the figures, the board and the differences up to the marks. */
  void update() {
    ScoredTrials trials = session.trials();
    Trial now = session.trial();
    if (now == null || loader.clip() == null) {
      return;
    }
    Reading reading = marking.readingProperty().get();
    Reading marks =
        reading != null
            ? reading
            : Reading.begin(Objects.requireNonNullElse(session.reader(), ""), StartedFrom.NOTHING);
    if (reading != null) {
      now = now.withReading(reading);
      trials.put(now);
    }
    state.set(ScoredTrials.describe(reading));
    int unseen = (int) marks.slaps().stream().filter(slap -> !slap.seen()).count();
    tally.show(
        trials.score(now, marks),
        trials.limits(),
        trials.other(now.id(), session.readers()::shown),
        unseen);
    board.update(trials.cell(now, reading));
    review.offer(now);
  }

  void clear() {
    tally.clear();
    state.set("");
  }
}
