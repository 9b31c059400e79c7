package palmturn.app;

import java.util.List;
import palmturn.app.desk.FastMarking;
import palmturn.app.hints.KeyHint;
import palmturn.app.hints.KeyHints;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.marking.MarkPass;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** The keys of typing along and of the pass through the marks. */
final class FastKeys {
  private final FastMarking marking;

  FastKeys(FastMarking marking, Commands commands) {
    this.marking = marking;
    commands.bind(Where.TYPING, Action.PALM, () -> marking.typing().typeSlap(Side.PALM, false));
    commands.bind(Where.TYPING, Action.BACK, () -> marking.typing().typeSlap(Side.BACK, false));
    commands.bind(
        Where.TYPING, Action.PALM_FAULT, () -> marking.typing().typeSlap(Side.PALM, true));
    commands.bind(
        Where.TYPING, Action.BACK_FAULT, () -> marking.typing().typeSlap(Side.BACK, true));
    commands.bind(Where.TYPING, Action.STOP_TYPING, marking.typing()::stop);
    MarkPass pass = marking.pass();
    commands.bind(Where.PASS, Action.CONFIRM, pass::confirm);
    commands.bind(Where.PASS, Action.FINGERS, () -> pass.setZone(Zone.FINGERS));
    commands.bind(Where.PASS, Action.WRIST, () -> pass.setZone(Zone.WRIST));
    commands.bind(Where.PASS, Action.EDGE, () -> pass.setZone(Zone.EDGE));
    commands.bind(Where.PASS, Action.DOUBLE, pass::toggleDouble);
    commands.bind(Where.PASS, Action.PART_TURN, () -> pass.setKind(Slap.Kind.PART_TURN));
    commands.bind(Where.PASS, Action.MISSED, () -> pass.setKind(Slap.Kind.MISSED));
    commands.bind(Where.PASS, Action.PALM, () -> pass.setSide(Side.PALM));
    commands.bind(Where.PASS, Action.BACK, () -> pass.setSide(Side.BACK));
    commands.bind(Where.PASS, Action.DELETE, pass::deleteMark);
    commands.bind(Where.PASS, Action.FRAME_BACK, () -> pass.moveMark(-1));
    commands.bind(Where.PASS, Action.FRAME_ON, () -> pass.moveMark(1));
    commands.bind(Where.PASS, Action.NUDGE_BACK, () -> pass.moveMark(-1));
    commands.bind(Where.PASS, Action.NUDGE_ON, () -> pass.moveMark(1));
    commands.bind(Where.PASS, Action.SLAP_BEFORE, () -> pass.goBy(-1));
    commands.bind(Where.PASS, Action.SLAP_NEXT, () -> pass.goBy(1));
    commands.bind(Where.PASS, Action.UNDO, pass::undo);
    commands.bind(Where.PASS, Action.REDO, pass::redo);
    commands.bind(Where.PASS, Action.LEAVE, pass::leave);
  }

  /** Returns the keys that are valid just now; none while nothing goes on. */
  List<KeyHint> hints() {
    MarkPass.Position place = marking.pass().positionProperty().get();
    if (place != null) {
      return place.topic() == MarkPass.Topic.TIMES ? KeyHints.TIME_PASS : KeyHints.ZONE_PASS;
    }
    return typing() ? KeyHints.TYPING : List.of();
  }

  /** Returns whether marks are gone through. */
  boolean passing() {
    return marking.pass().positionProperty().get() != null;
  }

  /** Returns whether keys are typed along. */
  boolean typing() {
    return marking.typing().activeProperty().get();
  }
}
