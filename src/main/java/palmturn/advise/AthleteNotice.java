package palmturn.advise;

import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Session;

/**
 * A notice about the athlete's pain or consent that must be read before training.
 *
 * @param brief short form
 * @param sentence full form
 */
public record AthleteNotice(String brief, String sentence) {
  /** English ways to state that there is no pain. */
  private static final Pattern NONE =
      Pattern.compile("(no|none|nothing|no pain|[-–—])[.!]?", Pattern.CASE_INSENSITIVE);

  private static final AthleteNotice NO_CONSENT =
      new AthleteNotice("No guardian’s consent", "A guardian has not agreed to the filming.");

  /** Returns the stated pain or injury of the day; null where none was stated. */
  public static @Nullable AthleteNotice pain(Session.Facts facts) {
    String pain = facts.painToday() == null ? "" : facts.painToday().strip();
    if (pain.isEmpty()) {
      return null;
    }
    String end = pain.matches("(?s).*[.!?…]") ? "" : ".";
    return new AthleteNotice("Pain or injury: " + pain, "Pain or injury on the day: " + pain + end);
  }

  /** Returns the notice of missing consent; null where it was given, or not recorded. */
  public static @Nullable AthleteNotice consent(Session.Facts facts) {
    return Boolean.FALSE.equals(facts.guardianConsent()) ? NO_CONSENT : null;
  }

  /** Returns all notices; a statement that there is no pain is none. */
  public static List<AthleteNotice> all(Session.Facts facts) {
    String pain = facts.painToday() == null ? "" : facts.painToday().strip();
    return Stream.of(NONE.matcher(pain).matches() ? null : pain(facts), consent(facts))
        .filter(Objects::nonNull)
        .toList();
  }
}
