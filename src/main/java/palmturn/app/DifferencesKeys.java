package palmturn.app;

import java.util.ArrayList;
import java.util.List;
import palmturn.app.desk.Reviewing;
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
  private final Does does;

  DifferencesKeys(Reviewing reviewing, Runnable forgetTrouble, Does does) {
    differences = reviewing.differences();
    this.does = does;
    Stage stage = differences.stage();
    does.does(Action.COMPARE, reviewing::openOrClose);
    here(Action.UPPER, () -> differences.take(Decision.Choice.FIRST));
    here(Action.LOWER, () -> differences.take(Decision.Choice.SECOND));
    here(Action.GO_ON, differences::goOn);
    here(Action.GO_BACK, differences::goBack);
    here(Action.MARK_AFRESH, differences::markAfresh);
    here(Action.WHY, reviewing::askWhy);
    here(Action.OTHER_PAIR, differences::otherPair);
    here(Action.SETTLED, this::settled);
    here(Action.DELETE, differences::reopen);
    here(Action.UNDO, differences::undo);
    here(Action.REDO, differences::redo);
    here(Action.READER, differences::askWho);
    here(Action.PLAY, differences.playing()::playOrStop);
    here(Action.SLOWER, stage::slower);
    here(Action.FASTER, stage::faster);
    here(
        Action.LEAVE,
        () -> {
          forgetTrouble.run();
          differences.close();
        });
    Afresh afresh = differences.afresh();
    afresh(Action.FRAME_BACK, () -> stage.step(-1));
    afresh(Action.FRAME_ON, () -> stage.step(1));
    afresh(Action.PALM, () -> afresh.side(Side.PALM));
    afresh(Action.BACK, () -> afresh.side(Side.BACK));
    afresh(Action.FINGERS, () -> afresh.zone(Zone.FINGERS));
    afresh(Action.WRIST, () -> afresh.zone(Zone.WRIST));
    afresh(Action.EDGE, () -> afresh.zone(Zone.EDGE));
    afresh(Action.DOUBLE, () -> afresh.kind(Slap.Kind.DOUBLE));
    afresh(Action.PART_TURN, () -> afresh.kind(Slap.Kind.PART_TURN));
    afresh(Action.MISSED, () -> afresh.kind(Slap.Kind.MISSED));
    afresh(Action.KEEP_AFRESH, differences::keepAfresh);
    afresh(Action.DELETE, differences::nothingThere);
    afresh(Action.LEAVE, differences::giveUp);
  }

  private void here(Action action, Runnable what) {
    does.does(Where.DIFFERENCES, action, what);
  }

  private void afresh(Action action, Runnable what) {
    does.does(Where.AFRESH, action, what);
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
