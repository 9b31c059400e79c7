package palmturn.app.desk;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.edit.History;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The reading of the trial on the stage: the gate to every edit, and the way to the disk. */
public final class OpenReading {
  private final OpenSession session;
  private final ClipLoader loader;
  private final Marking marking;
  private final Stage stage;
  private final ShownEstimate estimate;
  private final ReadingFigures figures;
  private final SeenMarks seen;
  private final Questions questions;

  /** The histories of readings that were left, so that every step can still be taken back. */
  private final Map<Owner, History<Reading>> left = new HashMap<>();

  private @Nullable Owner owner;

  /** The trial and the reader of a history. */
  private record Owner(TrialId trial, String reader) {}

  OpenReading(
      OpenSession session,
      ClipLoader loader,
      Marking marking,
      Stage stage,
      ShownEstimate estimate,
      ReadingFigures figures,
      SeenMarks seen,
      Questions questions) {
    this.session = session;
    this.loader = loader;
    this.marking = marking;
    this.stage = stage;
    this.estimate = estimate;
    this.figures = figures;
    this.seen = seen;
    this.questions = questions;
  }

  /** Edits the marks once it is known who marks, if the session may be written. */
  public void edit(Runnable edit) {
    TrialId id = session.trialId();
    if (id == null || session.refusesEdits()) {
      return;
    }
    String reader = session.reader();
    if (reader == null) {
      questions.ask(
          Question.Line.initials(
              initials -> {
                session.readers().setInitials(initials);
                begin(id, initials);
                edit.run();
              }));
      return;
    }
    if (marking.readingProperty().get() == null) {
      begin(id, reader);
    }
    edit.run();
  }

  private void begin(TrialId id, String reader) {
    Trial now = session.trials().get(id);
    if (now != null) {
      Reading there = marking.readingProperty().get();
      if (there == null || !there.reader().equals(reader)) {
        open(id, now.reading(reader).orElseGet(() -> Reading.begin(reader, StartedFrom.NOTHING)));
      }
    }
  }

  /** Shows the reading of a trial that was opened, where there is one to be shown. */
  void show(Trial now) {
    Reading there = session.readers().shown(now);
    session.readers().recordOpened(now);
    if (there != null) {
      open(now.id(), there);
    } else {
      figures.update();
    }
  }

  void close() {
    leave();
    marking.close();
    figures.clear();
  }

  /** Forgets all steps, for another session. */
  void forgetSteps() {
    left.clear();
  }

  private void leave() {
    History<Reading> edits = marking.history();
    if (owner != null && edits != null) {
      left.put(owner, edits);
    }
    owner = null;
  }

  private void open(TrialId id, Reading reading) {
    OpenClip at = loader.clip();
    if (at != null) {
      leave();
      owner = new Owner(id, reading.reader());
      History<Reading> edits = left.get(owner);
      if (edits == null || !edits.now().equals(reading)) {
        edits = History.of(reading);
      }
      marking.open(edits, at.clip().frames(), (marks, sentence) -> save(id, marks, sentence));
      marking.setEstimate(estimate.estimateProperty().get());
      Trial trial = session.trials().get(id);
      if (trial != null && session.readers().hasSeenOthers(trial)) {
        marking.setEstimateSeen();
      }
      marking.chooseSlapOn(stage.frameProperty().get());
      seen.update();
    }
  }

  private void save(TrialId id, Reading marks, String sentence) {
    SessionFolder to = session.folder();
    if (to != null) {
      session.saving().keep(to, id, marks, sentence, this::shown);
    }
  }

  private @Nullable Reading shown() {
    return marking.readingProperty().get();
  }
}
