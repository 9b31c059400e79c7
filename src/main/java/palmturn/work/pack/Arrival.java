package palmturn.work.pack;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.trial.PackOrigin;
import palmturn.trial.Reading;

/**
 * The arrival of a pack, and the naming of what packs bring.
 *
 * @param packedAt when the pack was made, as it says
 * @param session the day of filming
 * @param now when it arrives
 */
record Arrival(Instant packedAt, LocalDate session, Instant now) {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);
  private static final DateTimeFormatter DAY_OF_YEAR =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  /** Clocks differ by less, and so do time zones that a clock was set to by mistake. */
  private static final Duration CLOCKS_DIFFER = Duration.ofDays(1);

  /** Stands in every name that this program gives, and in none that a person may have. */
  private static final String FROM = ", from ";

  /** Returns the origin of the pack's own readings and settlements. */
  PackOrigin origin(int place) {
    return new PackOrigin(packedAt, place);
  }

  /** Returns whether a moment can't have come yet, whatever a file says. */
  boolean isAhead(Instant moment) {
    return moment.isAfter(now.plus(CLOCKS_DIFFER));
  }

  /** Returns the pack's day in words. */
  String pack() {
    return pack(origin(0));
  }

  private String pack(@Nullable PackOrigin origin) {
    if (origin == null) {
      return "an earlier pack";
    }
    boolean sameYear = origin.at().atZone(ZoneOffset.UTC).getYear() == session.getYear();
    String day = (sameYear ? DAY : DAY_OF_YEAR).format(origin.at());
    return isAhead(origin.at()) ? "a pack dated " + day + ", in the future" : "the pack of " + day;
  }

  /** Returns the name of a reading that is kept beside another by the same reader. */
  String name(String reader, @Nullable PackOrigin origin) {
    return reader + FROM + pack(origin);
  }

  /** Returns whether a name is one that a person may have. */
  static boolean isPersons(String name) {
    return !name.contains(FROM) && !name.equals("estimate") && !name.equals("settled");
  }

  /** The order of what came with packs: earliest first, but nothing by a date in the future. */
  Comparator<@Nullable PackOrigin> order() {
    return Comparator.comparing(
            (@Nullable PackOrigin origin) -> origin != null && isAhead(origin.at()))
        .thenComparing(Comparator.nullsFirst(Comparator.naturalOrder()));
  }

  /** Returns the earlier of two origins, where one is not recorded the other. */
  static @Nullable PackOrigin earlier(@Nullable PackOrigin one, @Nullable PackOrigin other) {
    return one == null || other != null && other.compareTo(one) < 0 ? other : one;
  }

  /** Returns the maker of a reading that came with a pack, else its reader. */
  static String maker(Reading reading) {
    return reading.received() == null || reading.own()
        ? reading.reader()
        : reading.received().reader();
  }
}
