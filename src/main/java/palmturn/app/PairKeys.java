package palmturn.app;

import palmturn.app.desk.Pairing;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.pair.TrialPair;

/** What keys do while two trials are looked at side by side. */
final class PairKeys {
  private static final int TEN = 10;

  private final TrialPair pair;

  PairKeys(Pairing pairing, Commands does) {
    pair = pairing.pair();
    does.bind(Where.WINDOW, Action.BOTH_HANDS, pairing::open);
    does.bind(Where.PAIR, Action.BOTH_HANDS, pairing::leave);
    does.bind(Action.PAIR_LEAVE, pairing::leave);
    does.bind(Action.PAIR_OTHER, arrow -> pairing.another(arrow.equals("↑") ? -1 : 1));
    does.bind(Where.PAIR, Action.FRAME_BACK, () -> pair.step(-1));
    does.bind(Where.PAIR, Action.FRAME_ON, () -> pair.step(1));
    does.bind(Where.PAIR, Action.TEN_BACK, () -> pair.step(-TEN));
    does.bind(Where.PAIR, Action.TEN_ON, () -> pair.step(TEN));
    does.bind(Where.PAIR, Action.SLAP_BEFORE, () -> pair.stepSlap(false));
    does.bind(Where.PAIR, Action.SLAP_NEXT, () -> pair.stepSlap(true));
    does.bind(Where.PAIR, Action.FIRST, () -> pair.goToEndSlap(false));
    does.bind(Where.PAIR, Action.LAST, () -> pair.goToEndSlap(true));
    does.bind(Where.PAIR, Action.PLAY, pair::playOrStop);
    does.bind(Where.PAIR, Action.LOOP_SLAP, pair::loopSlap);
    does.bind(Where.PAIR, Action.SLOWER, pair::slower);
    does.bind(Where.PAIR, Action.FASTER, pair::faster);
    does.bind(Where.PAIR, Action.ZOOM_TO_HANDS, pairing::zoomToHands);
    does.bind(Where.PAIR, Action.WHOLE_PICTURE, pair::showWhole);
    does.bind(Where.PAIR, Action.LARGER, () -> pair.zoom(true));
    does.bind(Where.PAIR, Action.SMALLER, () -> pair.zoom(false));
    does.bind(Action.PAIR_PACE, pair::toggleSamePace);
    does.bind(Action.PAIR_EARLIER, () -> pair.shiftMeeting(-1));
    does.bind(Action.PAIR_LATER, () -> pair.shiftMeeting(1));
    does.bind(Action.PAIR_MIRROR, pair::toggleMirror);
  }

  /** Returns whether the two are looked at. */
  boolean active() {
    return pair.activeProperty().get();
  }
}
