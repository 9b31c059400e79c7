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
  private final Later later;
  private final Runnable redrawStrip;
  private final Does does;

  TrialKeys(Desk desk, Later later, Runnable redrawStrip, Does does) {
    this.desk = desk;
    this.later = later;
    this.redrawStrip = redrawStrip;
    this.does = does;
    marking = desk.marking();
    stage = desk.stage();
    moves();
    marks();
  }

  private void moves() {
    trial(Action.FRAME_BACK, () -> stage.step(-1));
    trial(Action.FRAME_ON, () -> stage.step(1));
    trial(Action.TEN_BACK, () -> stage.step(-TEN));
    trial(Action.TEN_ON, () -> stage.step(TEN));
    trial(Action.SLAP_BEFORE, () -> neighbour(false));
    trial(Action.SLAP_NEXT, () -> neighbour(true));
    trial(Action.FIRST, stage::toStart);
    trial(Action.LAST, stage::toEnd);
    trial(Action.PLAY, stage::playOrStop);
    does.does(Action.SLOWER, stage::slower);
    does.does(Action.FASTER, stage::faster);
    does.does(Action.CLOSER, () -> zoom(true));
    does.does(Action.WIDER, () -> zoom(false));
    trial(Action.TYPE, desk.fast()::type);
    trial(Action.THROUGH, desk.fast()::goThrough);
  }

  private void marks() {
    onFrame(Action.PALM, () -> marking.mark(frame(), Side.PALM, false));
    onFrame(Action.BACK, () -> marking.mark(frame(), Side.BACK, false));
    onFrame(Action.PALM_FAULT, () -> marking.mark(frame(), Side.PALM, true));
    onFrame(Action.BACK_FAULT, () -> marking.mark(frame(), Side.BACK, true));
    marks(Action.FINGERS, () -> marking.zone(Zone.FINGERS));
    marks(Action.WRIST, () -> marking.zone(Zone.WRIST));
    marks(Action.EDGE, () -> marking.zone(Zone.EDGE));
    marks(Action.DOUBLE, () -> marking.kind(Slap.Kind.DOUBLE));
    trial(Action.MORE, () -> desk.ask(new Question.More()));
    marks(Action.PART_TURN, () -> marking.kind(Slap.Kind.PART_TURN));
    onFrame(Action.MISSED, () -> marking.missed(frame()));
    marks(Action.OTHER, this::note);
    onFrame(Action.BENT_WRIST, () -> marking.span(Span.Kind.BENT_WRIST, frame()));
    onFrame(Action.ELBOW_OUT, () -> marking.span(Span.Kind.ELBOW_OUT, frame()));
    onFrame(Action.PAUSE, () -> marking.span(Span.Kind.PAUSE, frame()));
    onFrame(Action.TARGET_MOVED, () -> marking.span(Span.Kind.TARGET_MOVED, frame()));
    marks(Action.FINISH, this::finish);
    trial(Action.ESTIMATE, desk.estimation()::estimate);
    trial(Action.START_FROM, desk.estimation()::startFrom);
    does.does(Action.ESTIMATE_SAYS, desk.estimation()::says);
    does.does(Action.HIDE, desk.estimation()::hideOrShow);
    marks(Action.DELETE, marking::delete);
    marks(Action.NUDGE_BACK, () -> nudge(-1));
    marks(Action.NUDGE_ON, () -> nudge(1));
    does.does(Where.WINDOW, Action.UNDO, () -> unless(desk.steps().undo(), marking::undo));
    does.does(Where.WINDOW, Action.REDO, () -> unless(desk.steps().redo(), marking::redo));
  }

  private void unless(boolean done, Runnable edit) {
    if (!done) {
      mark(edit);
    }
  }

  private void trial(Action action, Runnable what) {
    does.does(Where.TRIAL, action, what);
  }

  private void marks(Action action, Runnable edit) {
    trial(action, () -> mark(edit));
  }

  private void mark(Runnable edit) {
    desk.mark(edit);
  }

  /** Marks the frame that was asked for last, once its picture is there to be seen. */
  private void onFrame(Action action, Runnable edit) {
    trial(action, () -> later.onFrame(() -> mark(edit)));
  }

  private void finish() {
    marking.finish();
    marking.frameOfUnseen().ifPresent(stage::seek);
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
    marking.nudge(by);
    Slap moved = marking.slapProperty().get();
    var frames = stage.framesProperty().get();
    if (moved != null && frames != null) {
      stage.seek(frames.nearest(moved.timeS()));
    }
  }

  private void neighbour(boolean forward) {
    marking.frameOfNeighbour(frame(), forward).ifPresent(stage::seek);
  }

  private void zoom(boolean closer) {
    desk.strip().step(closer);
    redrawStrip.run();
  }
}
