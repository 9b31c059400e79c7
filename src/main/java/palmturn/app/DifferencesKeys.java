package palmturn.app;

import palmturn.app.desk.Review;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.differences.NewMark;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.stage.Stage;
import palmturn.trial.Decision;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** The keys of the list of differences; a key stands where its choice does. */
final class DifferencesKeys {
  private final DifferenceReview differences;
  private final Commands commands;

  DifferencesKeys(Review review, Runnable clearNotice, Commands commands) {
    differences = review.differences();
    this.commands = commands;
    Stage stage = differences.stage();
    commands.bind(Action.COMPARE, review::openOrClose);
    bind(Action.UPPER, () -> differences.choose(Decision.Choice.FIRST));
    bind(Action.LOWER, () -> differences.choose(Decision.Choice.SECOND));
    bind(Action.LEAVE_OPEN, differences::goForward);
    bind(Action.GO_BACK, differences::goBack);
    bind(Action.MARK_NEW, differences::beginNewMark);
    bind(Action.GIVE_REASON, review::askWhy);
    bind(Action.OTHER_PAIR, differences::compareNextPair);
    bind(Action.CONFIRM_SETTLED, this::settled);
    bind(Action.DELETE, differences::reopen);
    bind(Action.UNDO, differences::undo);
    bind(Action.REDO, differences::redo);
    bind(Action.READER, differences::askReviewer);
    bind(Action.PLAY, differences.player()::playOrStop);
    bind(Action.SLOWER, stage::slower);
    bind(Action.FASTER, stage::faster);
    bind(
        Action.LEAVE,
        () -> {
          clearNotice.run();
          differences.close();
        });
    NewMark afresh = differences.newMark();
    bindAfresh(Action.FRAME_BACK, () -> stage.step(-1));
    bindAfresh(Action.FRAME_ON, () -> stage.step(1));
    bindAfresh(Action.PALM, () -> afresh.setSide(Side.PALM));
    bindAfresh(Action.BACK, () -> afresh.setSide(Side.BACK));
    bindAfresh(Action.FINGERS, () -> afresh.toggleZone(Zone.FINGERS));
    bindAfresh(Action.WRIST, () -> afresh.toggleZone(Zone.WRIST));
    bindAfresh(Action.EDGE, () -> afresh.toggleZone(Zone.EDGE));
    bindAfresh(Action.DOUBLE, () -> afresh.toggleKind(Slap.Kind.DOUBLE));
    bindAfresh(Action.PART_TURN, () -> afresh.toggleKind(Slap.Kind.PART_TURN));
    bindAfresh(Action.MISSED, () -> afresh.toggleKind(Slap.Kind.MISSED));
    bindAfresh(Action.KEEP_NEW_MARK, differences::saveNewMark);
    bindAfresh(Action.DELETE, differences::decideNothing);
    bindAfresh(Action.LEAVE, differences::cancelNewMark);
  }

  private void bind(Action action, Runnable what) {
    commands.bind(Where.DIFFERENCES, action, what);
  }

  private void bindAfresh(Action action, Runnable what) {
    commands.bind(Where.NEW_MARK, action, what);
  }

  private void settled() {
    if (differences.current() == null && !differences.finish()) {
      differences.close();
    }
  }
}
