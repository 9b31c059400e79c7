package palmturn.trial;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A message between athlete and coach.
 *
 * @param from who wrote it: {@code athlete}, {@code coach}, or a reader's initials
 * @param at when
 * @param trial the trial it is about, if one
 * @param timeS the moment in that trial's clip it is about, media seconds, if one
 * @param text what was said
 * @param extra unknown keys
 */
public record Message(
    String from,
    Instant at,
    @Nullable TrialId trial,
    @Nullable Double timeS,
    String text,
    Extra extra) {
  /** Who is filmed, as {@code from}. */
  public static final String ATHLETE = "athlete";

  /** Who answers, as {@code from}. */
  public static final String COACH = "coach";
}
