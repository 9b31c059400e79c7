package palmturn.app.strip;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import palmturn.app.marking.Snapping;
import palmturn.trial.Slap;

/** Marks on their way from where they were typed to where they settle. */
public final class MarkAnimation {
  private final ReadOnlyIntegerWrapper started = new ReadOnlyIntegerWrapper(0);
  private Map<Slap, Slap> fromOf = Map.of();
  private double share = 1;

  /** How often marks have set out; a change means that they do so now. */
  ReadOnlyIntegerProperty startedProperty() {
    return started.getReadOnlyProperty();
  }

  /** Marks set out. */
  public void start(List<Snapping.Move> moves) {
    Map<Slap, Slap> now = new HashMap<>();
    moves.forEach(move -> now.put(move.to(), move.from()));
    fromOf = now;
    share = 0;
    started.set(started.get() + 1);
  }

  /** Puts the marks on a part of their way, 0 to 1. */
  void setShare(double newShare) {
    share = newShare;
  }

  /** Their way is done, and with it the ghosts. */
  void end() {
    fromOf = Map.of();
    share = 1;
  }

  /** Returns where marks have come from, to be drawn as ghosts; empty once the way is done. */
  List<Slap> ghosts() {
    return List.copyOf(fromOf.values());
  }

  /** Returns marks as they look just now, in the order given. */
  List<Slap> displaced(List<Slap> slaps) {
    if (share >= 1 || fromOf.isEmpty()) {
      return slaps;
    }
    return slaps.stream().map(this::displaced).toList();
  }

  private Slap displaced(Slap to) {
    Slap from = fromOf.get(to);
    if (from == null) {
      return to;
    }
    return new Slap(
        to.kind(),
        from.timeS() + share * (to.timeS() - from.timeS()),
        to.side(),
        to.zone(),
        share < 1 ? from.timedBy() : to.timedBy(),
        from.resolutionS() + share * (to.resolutionS() - from.resolutionS()),
        to.pictureS(),
        to.soundS(),
        to.seen(),
        to.note(),
        to.extra());
  }
}
