package palmturn.advise;

import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Session;

/**
 * Something to heed of all that a session says of its athlete.
 *
 * @param brief for where there is little room
 * @param sentence in full
 */
public record Heed(String brief, String sentence) {
  /** How people write that there is none, in English. */
  private static final Pattern NONE =
      Pattern.compile("(no|none|nothing|no pain|[-–—])[.!]?", Pattern.CASE_INSENSITIVE);

  private static final Heed NO_CONSENT =
      new Heed("No guardian’s consent", "A guardian has not agreed to the filming.");

  /** Returns what was said of pain or injury on the day; null where nothing was. */
  public static @Nullable Heed pain(Session.Facts facts) {
    String pain = facts.painToday() == null ? "" : facts.painToday().strip();
    if (pain.isEmpty()) {
      return null;
    }
    String end = pain.matches("(?s).*[.!?…]") ? "" : ".";
    return new Heed("Pain or injury: " + pain, "Pain or injury on the day: " + pain + end);
  }

  /** Returns that a guardian has not agreed; null where one has, or nothing was said of it. */
  public static @Nullable Heed consent(Session.Facts facts) {
    return Boolean.FALSE.equals(facts.guardianConsent()) ? NO_CONSENT : null;
  }

  /** Returns all of it; to say that there is no pain is nothing to heed. */
  public static List<Heed> all(Session.Facts facts) {
    String pain = facts.painToday() == null ? "" : facts.painToday().strip();
    return Stream.of(NONE.matcher(pain).matches() ? null : pain(facts), consent(facts))
        .filter(Objects::nonNull)
        .toList();
  }
}
