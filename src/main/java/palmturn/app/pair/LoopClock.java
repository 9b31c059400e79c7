package palmturn.app.pair;

import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import palmturn.app.stage.PlaySpeed;

/** The clock of a stretch played slowly in a loop; all times are real seconds. */
final class LoopClock {
  private final ReadOnlyBooleanWrapper playing = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<PlaySpeed> speed =
      new ReadOnlyObjectWrapper<>(PlaySpeed.EIGHTH);
  private double fromS;
  private double toS;
  private double startS;
  private long since;
  private boolean started;

  ReadOnlyBooleanProperty playingProperty() {
    return playing.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<PlaySpeed> speedProperty() {
    return speed.getReadOnlyProperty();
  }

  /** Plays a stretch from a moment in it; a moment outside counts as its beginning. */
  void play(double stretchFromS, double stretchToS, double atS) {
    fromS = stretchFromS;
    toS = stretchToS;
    restart(atS >= fromS && atS < toS ? atS : fromS);
    playing.set(true);
  }

  void stop() {
    playing.set(false);
  }

  /** Plays at another speed from where it is. */
  void setSpeed(PlaySpeed next, double nowS) {
    restart(nowS);
    speed.set(next);
  }

  /**
   * Lets the clock run.
   *
   * @param nanos of a clock that never jumps
   */
  void tick(long nanos) {
    if (!started) {
      since = nanos;
      started = true;
    }
  }

  /** Returns what is due; past the end that is the beginning again, from where it then goes on. */
  double dueS(long nanos) {
    double dueS = startS + (nanos - since) / 1e9 * speed.get().factor();
    if (dueS > toS) {
      restart(fromS);
      return fromS;
    }
    return dueS;
  }

  private void restart(double atS) {
    startS = atS;
    started = false;
  }
}
