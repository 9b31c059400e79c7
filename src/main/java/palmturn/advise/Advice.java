package palmturn.advise;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Quality;
import palmturn.trial.DrillHand;

/**
 * One thing to do, with the figures that say so.
 *
 * @param rule 0 film again, 1 the hands differ, 2 not clean enough, 3 slow or uneven, 4 slows down,
 *     5 nothing
 * @param hand which hand to train; both where it takes both, none where it is about filming
 * @param quality what to train; null where it is about filming, a trade-off or nothing
 * @param sure whether the whole 95 % interval says so too, not the mean alone
 * @param why the figures, one sentence or more
 * @param action what to do, one sentence or more
 * @param drills codes of the drills that fit, the first one first
 */
public record Advice(
    int rule,
    DrillHand hand,
    @Nullable Quality quality,
    boolean sure,
    String why,
    String action,
    List<String> drills) {

  /** The rule of a clip that is not good enough. */
  public static final int FILM_AGAIN = 0;

  /** The rule of two hands that differ. */
  public static final int SIDES = 1;

  /** The rule of a hand that is not clean enough, or whose elbow leaves its place. */
  public static final int CLEAN = 2;

  /** The rule of a hand that is accurate and slow or uneven. */
  public static final int SLOW = 3;

  /** The rule of a hand that slows down. */
  public static final int LASTING = 4;

  /** The rule that holds where no other does. */
  public static final int NOTHING = 5;

  public Advice {
    drills = List.copyOf(drills);
  }
}
