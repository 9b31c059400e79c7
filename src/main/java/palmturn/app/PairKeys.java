package palmturn.app;

import palmturn.app.desk.Pairing;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.pair.Pair;

/** What keys do while two trials are looked at side by side. */
final class PairKeys {
  private static final int TEN = 10;

  private final Pair pair;

  PairKeys(Pairing pairing, Does does) {
    pair = pairing.pair();
    does.does(Where.WINDOW, Action.BOTH_HANDS, pairing::open);
    does.does(Where.PAIR, Action.BOTH_HANDS, pairing::leave);
    does.does(Action.PAIR_LEAVE, pairing::leave);
    does.does(Action.PAIR_OTHER, arrow -> pairing.another(arrow.equals("↑") ? -1 : 1));
    does.does(Where.PAIR, Action.FRAME_BACK, () -> pair.step(-1));
    does.does(Where.PAIR, Action.FRAME_ON, () -> pair.step(1));
    does.does(Where.PAIR, Action.TEN_BACK, () -> pair.step(-TEN));
    does.does(Where.PAIR, Action.TEN_ON, () -> pair.step(TEN));
    does.does(Where.PAIR, Action.SLAP_BEFORE, () -> pair.slap(false));
    does.does(Where.PAIR, Action.SLAP_NEXT, () -> pair.slap(true));
    does.does(Where.PAIR, Action.FIRST, () -> pair.toEnd(false));
    does.does(Where.PAIR, Action.LAST, () -> pair.toEnd(true));
    does.does(Where.PAIR, Action.PLAY, pair::playOrStop);
    does.does(Where.PAIR, Action.LOOP_SLAP, pair::loopSlap);
    does.does(Where.PAIR, Action.SLOWER, pair::slower);
    does.does(Where.PAIR, Action.FASTER, pair::faster);
    does.does(Where.PAIR, Action.HANDS, pairing::ontoHands);
    does.does(Where.PAIR, Action.WHOLE, pair::whole);
    does.does(Where.PAIR, Action.LARGER, () -> pair.zoom(true));
    does.does(Where.PAIR, Action.SMALLER, () -> pair.zoom(false));
    does.does(Action.PAIR_PACE, pair::samePaceOrReal);
    does.does(Action.PAIR_EARLIER, () -> pair.shift(-1));
    does.does(Action.PAIR_LATER, () -> pair.shift(1));
    does.does(Action.PAIR_MIRROR, pair::mirror);
  }

  /** Returns whether the two are looked at. */
  boolean active() {
    return pair.activeProperty().get();
  }
}
