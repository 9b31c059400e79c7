package palmturn.trial;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
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
  /** Clocks differ by less. */
  private static final Duration CLOCKS_DIFFER = Duration.ofDays(1);

  /**
   * Returns the order of a list of messages: by time, but one dated in the future tells nothing
   * about its place and comes first.
   *
   * @param now the moment at which they are put in order
   */
  public static Comparator<Message> order(Instant now) {
    return Comparator.comparing((Message each) -> !each.isAhead(now)).thenComparing(Message::at);
  }

  /** Returns whether it is dated later than any clock can say at a moment. */
  public boolean isAhead(Instant now) {
    return at.isAfter(now.plus(CLOCKS_DIFFER));
  }

  /** Who is filmed, as {@code from}. */
  public static final String ATHLETE = "athlete";

  /** Who answers, as {@code from}. */
  public static final String COACH = "coach";
}
