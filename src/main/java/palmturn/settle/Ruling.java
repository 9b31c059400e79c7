package palmturn.settle;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Decision;

/**
 * A difference and what was decided about it.
 *
 * @param <M> {@link palmturn.trial.Slap} or {@link palmturn.trial.Span}
 * @param difference where the readings differ
 * @param decision the last one on it, null if there is none
 */
public record Ruling<M>(Difference<M> difference, @Nullable Decision<M> decision) {

  /** Returns whether it still waits for a decision. */
  public boolean open() {
    return decision == null || decision.choice() == Decision.Choice.OPEN;
  }
}
