package palmturn.app;

import java.util.List;
import palmturn.app.desk.FastMarking;
import palmturn.app.hints.Hint;
import palmturn.app.hints.Hints;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.marking.Pass;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** What keys do while they are typed along, or while marks are gone through one by one. */
final class FastKeys {
  private final FastMarking marking;

  FastKeys(FastMarking marking, Commands does) {
    this.marking = marking;
    does.bind(Where.TYPING, Action.PALM, () -> marking.typing().type(Side.PALM, false));
    does.bind(Where.TYPING, Action.BACK, () -> marking.typing().type(Side.BACK, false));
    does.bind(Where.TYPING, Action.PALM_FAULT, () -> marking.typing().type(Side.PALM, true));
    does.bind(Where.TYPING, Action.BACK_FAULT, () -> marking.typing().type(Side.BACK, true));
    does.bind(Where.TYPING, Action.SETTLE, marking.typing()::stop);
    Pass pass = marking.pass();
    does.bind(Where.PASS, Action.RIGHT, pass::keep);
    does.bind(Where.PASS, Action.FINGERS, () -> pass.zone(Zone.FINGERS));
    does.bind(Where.PASS, Action.WRIST, () -> pass.zone(Zone.WRIST));
    does.bind(Where.PASS, Action.EDGE, () -> pass.zone(Zone.EDGE));
    does.bind(Where.PASS, Action.DOUBLE, pass::doubled);
    does.bind(Where.PASS, Action.PART_TURN, () -> pass.kind(Slap.Kind.PART_TURN));
    does.bind(Where.PASS, Action.MISSED, () -> pass.kind(Slap.Kind.MISSED));
    does.bind(Where.PASS, Action.PALM, () -> pass.side(Side.PALM));
    does.bind(Where.PASS, Action.BACK, () -> pass.side(Side.BACK));
    does.bind(Where.PASS, Action.DELETE, pass::drop);
    does.bind(Where.PASS, Action.FRAME_BACK, () -> pass.move(-1));
    does.bind(Where.PASS, Action.FRAME_ON, () -> pass.move(1));
    does.bind(Where.PASS, Action.NUDGE_BACK, () -> pass.move(-1));
    does.bind(Where.PASS, Action.NUDGE_ON, () -> pass.move(1));
    does.bind(Where.PASS, Action.SLAP_BEFORE, () -> pass.go(-1));
    does.bind(Where.PASS, Action.SLAP_NEXT, () -> pass.go(1));
    does.bind(Where.PASS, Action.UNDO, pass::undo);
    does.bind(Where.PASS, Action.REDO, pass::redo);
    does.bind(Where.PASS, Action.LEAVE, pass::leave);
  }

  /** Returns the keys that are valid just now; none while nothing goes on. */
  List<Hint> hints() {
    Pass.Place place = marking.pass().placeProperty().get();
    if (place != null) {
      return place.about() == Pass.About.TIMES ? Hints.TIMES : Hints.ZONES_PASS;
    }
    return typing() ? Hints.TYPING : List.of();
  }

  /** Returns whether marks are gone through. */
  boolean passing() {
    return marking.pass().placeProperty().get() != null;
  }

  /** Returns whether keys are typed along. */
  boolean typing() {
    return marking.typing().activeProperty().get();
  }
}
