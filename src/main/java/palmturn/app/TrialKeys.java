package palmturn.app;

import palmturn.app.desk.Desk;
import palmturn.app.desk.Question;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** What keys do with the open trial: going through its frames and slaps, and marking them. */
final class TrialKeys {
  private static final int TEN = 10;

  private final Desk desk;
  private final Marking marking;
  private final Stage stage;
  private final PendingMarks pendingMarks;
  private final Runnable redrawStrip;
  private final Commands commands;

  TrialKeys(Desk desk, PendingMarks later, Runnable redrawStrip, Commands does) {
    this.desk = desk;
    this.pendingMarks = later;
    this.redrawStrip = redrawStrip;
    this.commands = does;
    marking = desk.marking();
    stage = desk.stage();
    bindMoves();
    bindMarks();
  }

  private void bindMoves() {
    bindOnTrial(Action.FRAME_BACK, () -> stage.step(-1));
    bindOnTrial(Action.FRAME_ON, () -> stage.step(1));
    bindOnTrial(Action.TEN_BACK, () -> stage.step(-TEN));
    bindOnTrial(Action.TEN_ON, () -> stage.step(TEN));
    bindOnTrial(Action.SLAP_BEFORE, () -> neighbour(false));
    bindOnTrial(Action.SLAP_NEXT, () -> neighbour(true));
    bindOnTrial(Action.FIRST, stage::goToStart);
    bindOnTrial(Action.LAST, stage::goToEnd);
    bindOnTrial(Action.PLAY, stage::playOrStop);
    commands.bind(Action.SLOWER, stage::slower);
    commands.bind(Action.FASTER, stage::faster);
    commands.bind(Action.CLOSER, () -> zoom(true));
    commands.bind(Action.WIDER, () -> zoom(false));
    bindOnTrial(Action.TYPE_ALONG, desk.fast()::type);
    bindOnTrial(Action.GO_THROUGH, desk.fast()::goThrough);
  }

  private void bindMarks() {
    bindOnFrame(Action.PALM, () -> marking.markSlap(frame(), Side.PALM, false));
    bindOnFrame(Action.BACK, () -> marking.markSlap(frame(), Side.BACK, false));
    bindOnFrame(Action.PALM_FAULT, () -> marking.markSlap(frame(), Side.PALM, true));
    bindOnFrame(Action.BACK_FAULT, () -> marking.markSlap(frame(), Side.BACK, true));
    bindEdit(Action.FINGERS, () -> marking.toggleZone(Zone.FINGERS));
    bindEdit(Action.WRIST, () -> marking.toggleZone(Zone.WRIST));
    bindEdit(Action.EDGE, () -> marking.toggleZone(Zone.EDGE));
    bindEdit(Action.DOUBLE, () -> marking.toggleKind(Slap.Kind.DOUBLE));
    bindOnTrial(Action.MORE_MARKS, () -> desk.ask(new Question.More()));
    bindEdit(Action.PART_TURN, () -> marking.toggleKind(Slap.Kind.PART_TURN));
    bindOnFrame(Action.MISSED, () -> marking.markMissed(frame()));
    bindEdit(Action.OTHER_FAULT, this::note);
    bindOnFrame(Action.BENT_WRIST, () -> marking.toggleSpan(Span.Kind.BENT_WRIST, frame()));
    bindOnFrame(Action.ELBOW_OUT, () -> marking.toggleSpan(Span.Kind.ELBOW_OUT, frame()));
    bindOnFrame(Action.PAUSE, () -> marking.toggleSpan(Span.Kind.PAUSE, frame()));
    bindOnFrame(Action.TARGET_MOVED, () -> marking.toggleSpan(Span.Kind.TARGET_MOVED, frame()));
    bindEdit(Action.FINISH, this::finish);
    bindOnTrial(Action.ESTIMATE, desk.estimation()::estimate);
    bindOnTrial(Action.START_FROM, desk.estimation()::startFrom);
    commands.bind(Action.ESTIMATE_DETAILS, desk.estimation()::showSummary);
    commands.bind(Action.TOGGLE_ESTIMATE, desk.estimation()::hideOrShow);
    bindEdit(Action.DELETE, marking::delete);
    bindEdit(Action.NUDGE_BACK, () -> nudge(-1));
    bindEdit(Action.NUDGE_ON, () -> nudge(1));
    commands.bind(Where.WINDOW, Action.UNDO, () -> runUnless(desk.steps().undo(), marking::undo));
    commands.bind(Where.WINDOW, Action.REDO, () -> runUnless(desk.steps().redo(), marking::redo));
  }

  private void runUnless(boolean done, Runnable edit) {
    if (!done) {
      mark(edit);
    }
  }

  private void bindOnTrial(Action action, Runnable what) {
    commands.bind(Where.TRIAL, action, what);
  }

  private void bindEdit(Action action, Runnable edit) {
    bindOnTrial(action, () -> mark(edit));
  }

  private void mark(Runnable edit) {
    desk.mark(edit);
  }

  /** Marks the frame that was asked for last, once its picture is there to be seen. */
  private void bindOnFrame(Action action, Runnable edit) {
    bindOnTrial(action, () -> pendingMarks.runOnFrame(() -> mark(edit)));
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
      desk.ask(new Question.Note());
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

  private void neighbour(boolean forward) {
    marking.neighbourFrame(frame(), forward).ifPresent(stage::seek);
  }

  private void zoom(boolean closer) {
    desk.strip().zoomStep(closer);
    redrawStrip.run();
  }
}
