package palmturn.app.desk;

import java.util.Objects;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.marking.Marking;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The reading of the open trial: whose it is, what it changes elsewhere, how it is kept. */
final class OpenReading {
  private final Desk desk;
  private final Marking marking;
  private final Readers readers;
  private final TrialOpener opening;
  private final Saving saving;
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");

  OpenReading(Desk desk, Readers readers, TrialOpener opening, Saving saving) {
    this.desk = desk;
    this.readers = readers;
    this.opening = opening;
    this.saving = saving;
    marking = desk.marking();
    marking.readingProperty().addListener((reading, before, now) -> marked(now));
  }

  /** Whose reading, and whether it is finished. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Shows the reading of a trial that has come, where there is one to be shown. */
  void show(Trial now) {
    Reading there = readers.shown(now);
    readers.recordOpened(now);
    if (there != null) {
      open(now.id(), there);
    } else {
      marked(null);
    }
  }

  void close() {
    marking.close();
    desk.tally().clear();
    words.set("");
  }

  /** Does something to the marks once it is known who marks. */
  void mark(TrialId id, Runnable edit) {
    if (desk.reader() == null) {
      desk.ask(
          new Question.Initials(
              () -> {
                begin(id);
                edit.run();
              }));
      return;
    }
    if (marking.readingProperty().get() == null) {
      begin(id);
    }
    edit.run();
  }

  /** Returns whether the marks that are shown are those of the person in front of them. */
  boolean own() {
    Reading shown = marking.readingProperty().get();
    return shown != null && shown.reader().equals(desk.reader());
  }

  /** Brings the figures, the board and the differences up to what is marked. */
  void marked(@Nullable Reading reading) {
    ScoredTrials trials = desk.trials();
    Trial now = desk.openTrial();
    if (now == null || opening.clip() == null) {
      return;
    }
    Reading marks =
        reading != null
            ? reading
            : Reading.begin(Objects.requireNonNullElse(desk.reader(), ""), StartedFrom.NOTHING);
    if (reading != null) {
      now = now.withReading(reading);
      trials.put(now);
    }
    words.set(ScoredTrials.describe(reading));
    int unseen = (int) marks.slaps().stream().filter(slap -> !slap.seen()).count();
    desk.tally()
        .show(
            trials.score(now, marks),
            trials.limits(),
            trials.other(now.id(), readers::shown),
            unseen);
    desk.board().update(trials.cell(now, reading));
    desk.reviewing().offer(now);
  }

  private void begin(TrialId id) {
    Trial now = desk.trials().get(id);
    String who = desk.reader();
    if (now != null && who != null) {
      Reading there = marking.readingProperty().get();
      if (there == null || !there.reader().equals(who)) {
        open(id, now.reading(who).orElseGet(() -> Reading.begin(who, StartedFrom.NOTHING)));
      }
    }
  }

  private void open(TrialId id, Reading reading) {
    OpenClip at = opening.clip();
    if (at != null) {
      marking.open(reading, at.clip().frames(), (marks, sentence) -> keep(id, marks, sentence));
      marking.setEstimate(desk.estimation().found().estimateProperty().get());
      if (readers.hasSeenOthers(Objects.requireNonNull(desk.trials().get(id)))) {
        marking.setEstimateSeen();
      }
      marking.chooseSlapOn(desk.stage().frameProperty().get());
      desk.estimation().see();
    }
  }

  private void keep(TrialId id, Reading marks, String sentence) {
    SessionFolder to = desk.folderProperty().get();
    if (to != null) {
      saving.keep(to, id, marks, sentence, () -> marking.readingProperty().get());
    }
  }
}
