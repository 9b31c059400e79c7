package palmturn.app;

import palmturn.app.desk.Pairing;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.pair.TrialPair;

/** The keys of two trials side by side. */
final class PairKeys {
  private static final int TEN = 10;

  PairKeys(Pairing pairing, Commands commands) {
    TrialPair pair = pairing.pair();
    commands.bind(Where.WINDOW, Action.BOTH_HANDS, pairing::open);
    commands.bind(Where.PAIR, Action.BOTH_HANDS, pairing::leave);
    commands.bind(Action.PAIR_LEAVE, pairing::leave);
    commands.bind(Action.PAIR_OTHER, arrow -> pairing.another(arrow.equals("↑") ? -1 : 1));
    commands.bind(Where.PAIR, Action.FRAME_BACK, () -> pair.step(-1));
    commands.bind(Where.PAIR, Action.FRAME_ON, () -> pair.step(1));
    commands.bind(Where.PAIR, Action.TEN_BACK, () -> pair.step(-TEN));
    commands.bind(Where.PAIR, Action.TEN_ON, () -> pair.step(TEN));
    commands.bind(Where.PAIR, Action.SLAP_BEFORE, () -> pair.stepSlap(false));
    commands.bind(Where.PAIR, Action.SLAP_NEXT, () -> pair.stepSlap(true));
    commands.bind(Where.PAIR, Action.FIRST, () -> pair.goToEndSlap(false));
    commands.bind(Where.PAIR, Action.LAST, () -> pair.goToEndSlap(true));
    commands.bind(Where.PAIR, Action.PLAY, pair::playOrStop);
    commands.bind(Where.PAIR, Action.LOOP_SLAP, pair::loopSlap);
    commands.bind(Where.PAIR, Action.SLOWER, pair::slower);
    commands.bind(Where.PAIR, Action.FASTER, pair::faster);
    commands.bind(Where.PAIR, Action.ZOOM_TO_HANDS, pairing::zoomToHands);
    commands.bind(Where.PAIR, Action.WHOLE_PICTURE, pair::showWhole);
    commands.bind(Where.PAIR, Action.LARGER, () -> pair.zoom(true));
    commands.bind(Where.PAIR, Action.SMALLER, () -> pair.zoom(false));
    commands.bind(Action.PAIR_PACE, pair::toggleSamePace);
    commands.bind(Action.PAIR_EARLIER, () -> pair.shiftMeeting(-1));
    commands.bind(Action.PAIR_LATER, () -> pair.shiftMeeting(1));
    commands.bind(Action.PAIR_MIRROR, pair::toggleMirror);
  }
}
