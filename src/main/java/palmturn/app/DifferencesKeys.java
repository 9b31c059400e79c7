package palmturn.app;

import java.util.ArrayList;
import java.util.List;
import palmturn.app.desk.Review;
import palmturn.app.differences.Afresh;
import palmturn.app.differences.Differences;
import palmturn.app.differences.Item;
import palmturn.app.hints.Hint;
import palmturn.app.hints.Hints;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.stage.Stage;
import palmturn.trial.Decision;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** What keys do while differences are gone through; a key stands where its choice does. */
final class DifferencesKeys {
  private final Differences differences;
  private final Commands commands;

  DifferencesKeys(Review reviewing, Runnable forgetTrouble, Commands does) {
    differences = reviewing.differences();
    this.commands = does;
    Stage stage = differences.stage();
    does.bind(Action.COMPARE, reviewing::openOrClose);
    bind(Action.UPPER, () -> differences.take(Decision.Choice.FIRST));
    bind(Action.LOWER, () -> differences.take(Decision.Choice.SECOND));
    bind(Action.GO_ON, differences::goOn);
    bind(Action.GO_BACK, differences::goBack);
    bind(Action.MARK_AFRESH, differences::markAfresh);
    bind(Action.WHY, reviewing::askWhy);
    bind(Action.OTHER_PAIR, differences::otherPair);
    bind(Action.SETTLED, this::settled);
    bind(Action.DELETE, differences::reopen);
    bind(Action.UNDO, differences::undo);
    bind(Action.REDO, differences::redo);
    bind(Action.READER, differences::askWho);
    bind(Action.PLAY, differences.playing()::playOrStop);
    bind(Action.SLOWER, stage::slower);
    bind(Action.FASTER, stage::faster);
    bind(
        Action.LEAVE,
        () -> {
          forgetTrouble.run();
          differences.close();
        });
    Afresh afresh = differences.afresh();
    bindAfresh(Action.FRAME_BACK, () -> stage.step(-1));
    bindAfresh(Action.FRAME_ON, () -> stage.step(1));
    bindAfresh(Action.PALM, () -> afresh.side(Side.PALM));
    bindAfresh(Action.BACK, () -> afresh.side(Side.BACK));
    bindAfresh(Action.FINGERS, () -> afresh.zone(Zone.FINGERS));
    bindAfresh(Action.WRIST, () -> afresh.zone(Zone.WRIST));
    bindAfresh(Action.EDGE, () -> afresh.zone(Zone.EDGE));
    bindAfresh(Action.DOUBLE, () -> afresh.kind(Slap.Kind.DOUBLE));
    bindAfresh(Action.PART_TURN, () -> afresh.kind(Slap.Kind.PART_TURN));
    bindAfresh(Action.MISSED, () -> afresh.kind(Slap.Kind.MISSED));
    bindAfresh(Action.KEEP_AFRESH, differences::keepAfresh);
    bindAfresh(Action.DELETE, differences::nothingThere);
    bindAfresh(Action.LEAVE, differences::giveUp);
  }

  private void bind(Action action, Runnable what) {
    commands.bind(Where.DIFFERENCES, action, what);
  }

  private void bindAfresh(Action action, Runnable what) {
    commands.bind(Where.AFRESH, action, what);
  }

  private void settled() {
    if (differences.current() == null && !differences.finish()) {
      differences.close();
    }
  }

  /** Returns whether differences are gone through. */
  boolean open() {
    return differences.isOpen();
  }

  /** Returns where the keyboard then is. */
  Where where() {
    return differences.afresh().activeProperty().get() ? Where.AFRESH : Where.DIFFERENCES;
  }

  /** Returns the keys that are valid just now; none while no differences are open. */
  List<Hint> hints() {
    if (!open()) {
      return List.of();
    }
    Item item = differences.current();
    if (where() == Where.AFRESH) {
      return item instanceof Item.OfSpan ? Hints.SPAN_AFRESH : Hints.SLAP_AFRESH;
    }
    List<Hint> now = new ArrayList<>(item == null ? Hints.DIFFERENCES_END : Hints.DIFFERENCES);
    if (item != null && !item.open()) {
      now.add(now.size() - 1, Hints.REOPEN);
    }
    return now;
  }
}
