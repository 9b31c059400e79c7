package palmturn.app;

import java.util.List;
import palmturn.app.desk.OpenReading;
import palmturn.app.desk.Question;
import palmturn.app.desk.Questions;
import palmturn.app.desk.SideEdits;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** The keys that mark slaps and spans of the trial on the stage. */
final class MarkingKeys {
  private final Marking marking;
  private final Stage stage;
  private final OpenReading reading;
  private final SideEdits sideEdits;
  private final Questions questions;
  private final PendingMarks pendingMarks;
  private final Commands commands;

  MarkingKeys(
      Marking marking,
      Stage stage,
      OpenReading reading,
      SideEdits sideEdits,
      Questions questions,
      PendingMarks pendingMarks,
      Commands commands) {
    this.marking = marking;
    this.stage = stage;
    this.reading = reading;
    this.sideEdits = sideEdits;
    this.questions = questions;
    this.pendingMarks = pendingMarks;
    this.commands = commands;
    bindSlaps();
    bindSpans();
    bindEdit(Action.FINISH, this::finish);
    bindEdit(Action.DELETE, marking::delete);
    bindEdit(Action.NUDGE_BACK, () -> nudge(-1));
    bindEdit(Action.NUDGE_ON, () -> nudge(1));
    commands.bind(Where.WINDOW, Action.UNDO, this::undo);
    commands.bind(Where.WINDOW, Action.REDO, this::redo);
    commands.bind(Where.TRIAL, Action.MORE_MARKS, () -> questions.ask(Question.Page.MORE_MARKS));
  }

  private void bindSlaps() {
    bindOnFrame(Action.PALM, () -> marking.markSlap(frame(), Side.PALM, false));
    bindOnFrame(Action.BACK, () -> marking.markSlap(frame(), Side.BACK, false));
    bindOnFrame(Action.PALM_FAULT, () -> marking.markSlap(frame(), Side.PALM, true));
    bindOnFrame(Action.BACK_FAULT, () -> marking.markSlap(frame(), Side.BACK, true));
    bindOnFrame(Action.MISSED, () -> marking.markMissed(frame()));
    bindEdit(Action.FINGERS, () -> marking.toggleZone(Zone.FINGERS));
    bindEdit(Action.WRIST, () -> marking.toggleZone(Zone.WRIST));
    bindEdit(Action.EDGE, () -> marking.toggleZone(Zone.EDGE));
    bindEdit(Action.DOUBLE, () -> marking.toggleKind(Slap.Kind.DOUBLE));
    bindEdit(Action.PART_TURN, () -> marking.toggleKind(Slap.Kind.PART_TURN));
    bindEdit(Action.OTHER_FAULT, this::note);
  }

  private void bindSpans() {
    bindOnFrame(Action.BENT_WRIST, () -> marking.toggleSpan(Span.SpanKind.BENT_WRIST, frame()));
    bindOnFrame(Action.ELBOW_OUT, () -> marking.toggleSpan(Span.SpanKind.ELBOW_OUT, frame()));
    bindOnFrame(Action.PAUSE, () -> marking.toggleSpan(Span.SpanKind.PAUSE, frame()));
    bindOnFrame(Action.TARGET_MOVED, () -> marking.toggleSpan(Span.SpanKind.TARGET_MOVED, frame()));
  }

  private void bindEdit(Action action, Runnable edit) {
    commands.bind(Where.TRIAL, action, () -> reading.edit(edit));
  }

  /** Marks the frame that was asked for last, once its picture is there to be seen. */
  private void bindOnFrame(Action action, Runnable edit) {
    commands.bind(Where.TRIAL, action, () -> pendingMarks.runOnFrame(() -> reading.edit(edit)));
  }

  private void undo() {
    if (!sideEdits.undo()) {
      reading.edit(marking::undo);
    }
  }

  private void redo() {
    if (!sideEdits.redo()) {
      reading.edit(marking::redo);
    }
  }

  private void finish() {
    marking.toggleFinished();
    marking.firstUnseenFrame().ifPresent(stage::seek);
  }

  private int frame() {
    return stage.frameProperty().get();
  }

  private void note() {
    if (marking.slapProperty().get() != null) {
      questions.ask(
          new Question.Line(
              "note",
              "What is wrong with this slap?",
              List.of(),
              "",
              28,
              "Mark it",
              text -> reading.edit(() -> marking.describeFault(text))));
    }
  }

  private void nudge(int by) {
    marking.nudgeSlap(by);
    Slap moved = marking.slapProperty().get();
    var frames = stage.framesProperty().get();
    if (moved != null && frames != null) {
      stage.seek(frames.nearest(moved.timeS()));
    }
  }
}
