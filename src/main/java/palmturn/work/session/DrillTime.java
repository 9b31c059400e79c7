package palmturn.work.session;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.trial.UserError;

/**
 * The time at which a drill was done.
 *
 * @param start null where that is not known
 * @param end null where that is not known
 */
public record DrillTime(@Nullable Instant start, @Nullable Instant end) {
  public static final DrillTime UNKNOWN = new DrillTime(null, null);

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("H:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_CLOCK =
      DateTimeFormatter.ofPattern("uuuu-MM-dd H:mm", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  /**
   * Reads both ends as a person writes them: {@code 17:30}, {@code 2026-11-14 17:30}, or as a
   * session's file has them, {@code 2026-11-14T16:30:00Z}. Both may be empty.
   *
   * @param day that a time alone belongs to
   * @param zone that a time without one belongs to
   * @throws UserError if only one is there, one can't be read, or the end is not after the start
   */
  public static DrillTime read(String start, String end, LocalDate day, ZoneId zone)
      throws UserError {
    Instant from = moment(start, day, zone);
    Instant to = moment(end, day, zone);
    if (from == null && to == null) {
      return UNKNOWN;
    }
    if (from == null || to == null) {
      throw new UserError(
          "the drill's %s is missing: say both its start and its end, or neither"
              .formatted(from == null ? "start" : "end"));
    }
    if (!to.isAfter(from)) {
      throw new UserError(
          "the drill ends at \"%s\", not after its start at \"%s\": correct one, and name the day"
                  .formatted(end.strip(), start.strip())
              + " of each if they differ, as in 2026-11-14 23:50");
    }
    return new DrillTime(from, to);
  }

  private static @Nullable Instant moment(String text, LocalDate day, ZoneId zone)
      throws UserError {
    String said = text.strip();
    if (said.isEmpty()) {
      return null;
    }
    try {
      if (said.endsWith("Z") || said.matches(".*T.*[+-]\\d\\d:?\\d\\d")) {
        return OffsetDateTime.parse(said).toInstant();
      }
      LocalDateTime local =
          said.contains("-")
              ? LocalDateTime.parse(said.replace('T', ' '), DAY_AND_CLOCK)
              : day.atTime(LocalTime.parse(said, CLOCK));
      return local.atZone(zone).toInstant();
    } catch (DateTimeException e) {
      throw new UserError(
          "\"%s\" is not a time: write it as 17:30, or with its day as 2026-11-14 17:30"
              .formatted(said),
          e);
    }
  }
}
