package palmturn.settle;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Decision;
import palmturn.trial.Extra;

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

  /**
   * Returns a decision on this difference, with what both readings say of it now.
   *
   * @param by who decides
   * @param why in words, often empty
   * @param anew the mark made instead of both, only with {@link Decision.PairPartners#NEITHER}
   */
  public Decision<M> decide(
      Decision.Choice choice, String by, Instant at, String why, @Nullable M anew) {
    return new Decision<>(choice, by, at, why, difference.a(), difference.b(), anew, Extra.NONE);
  }
}
