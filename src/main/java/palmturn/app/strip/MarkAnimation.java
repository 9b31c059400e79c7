package palmturn.app.strip;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import palmturn.app.marking.Snapping;
import palmturn.trial.Slap;

/** The animation of typed marks that snap to their evidence. */
public final class MarkAnimation {
  private final ReadOnlyIntegerWrapper started = new ReadOnlyIntegerWrapper(0);
  private Map<Slap, Slap> fromOf = Map.of();
  private double share = 1;

  /** The number of animations started; a change starts one. */
  ReadOnlyIntegerProperty startedProperty() {
    return started.getReadOnlyProperty();
  }

  /** Starts the animation. */
  public void start(List<Snapping.Move> moves) {
    Map<Slap, Slap> now = new HashMap<>();
    moves.forEach(move -> now.put(move.to(), move.from()));
    fromOf = now;
    share = 0;
    started.set(started.get() + 1);
  }

  /** Moves the marks to a share of their way, 0 to 1. */
  void setShare(double newShare) {
    share = newShare;
  }

  /** Ends the animation and removes the ghosts. */
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
