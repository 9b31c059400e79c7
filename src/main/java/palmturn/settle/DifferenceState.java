package palmturn.settle;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Decision;
import palmturn.trial.Extra;

/**
 * A difference and its last decision.
 *
 * @param <M> {@link palmturn.trial.Slap} or {@link palmturn.trial.Span}
 * @param difference where the readings differ
 * @param decision the last one on it, null if there is none
 */
public record DifferenceState<M>(Difference<M> difference, @Nullable Decision<M> decision) {

  /** Returns whether it has no decision yet. */
  public boolean isOpen() {
    return decision == null || decision.choice() == Decision.Choice.OPEN;
  }

  /**
   * Returns a decision on this difference that records both marks as they are now.
   *
   * @param by who decides
   * @param why in words, often empty
   * @param anew the mark made instead of both, only with {@link Decision.Choice#NEITHER}
   */
  public Decision<M> decide(
      Decision.Choice choice, String by, Instant at, String why, @Nullable M anew) {
    return new Decision<>(choice, by, at, why, difference.a(), difference.b(), anew, Extra.NONE);
  }
}
