package palmturn.app.inbox;

import java.io.File;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Message;
import palmturn.work.pack.Unpacking;
import palmturn.work.search.InboxSearch;
import palmturn.work.search.InboxSearch.Found;
import palmturn.work.search.InboxSearch.SessionState;

/** The wording of the inbox. */
final class InboxWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  private InboxWords() {}

  static String state(SessionState state) {
    return switch (state) {
      case NEW -> "New";
      case IN_WORK -> "In work";
      case ANSWERED -> "Answered";
      case NOT_FILMED -> "Nothing filmed yet";
      case PACK -> "Packs";
      case UNREADABLE -> "Can’t be read";
    };
  }

  static String day(@Nullable LocalDate date) {
    return date == null ? "" : DAY.format(date);
  }

  static String athlete(Found found) {
    return found.athlete().isEmpty()
        ? String.valueOf(found.path().getFileName()).replace(InboxSearch.PACK, "")
        : found.athlete();
  }

  /** Returns "4 of 6", or nothing where nothing is filmed. */
  static String of(int some, Found found) {
    return found.filmed() == 0 ? "" : some + " of " + found.filmed();
  }

  /** Returns the last message, or the reason why the session can't be read. */
  static String last(Found found) {
    Message last = found.last();
    return switch (found.state()) {
      case UNREADABLE -> found.problem().replace(found.path() + File.separator, "");
      default ->
          last == null
              ? ""
              : "%s, %s: %s"
                  .formatted(
                      last.from(),
                      DAY.format(last.at().atOffset(ZoneOffset.UTC)),
                      last.text().replaceAll("\\s+", " "));
    };
  }

  /**
   * Returns what to read before an unpacked session is shown; nothing where it is new and whole.
   */
  static List<String> notes(Unpacking.Unpacked unpacked) {
    List<String> notes = new ArrayList<>();
    unpacked.left().forEach(line -> notes.add("left out: " + line));
    if (unpacked.standards().isLeft()) {
      notes.add(
          "left out: its own limits and drills, which palmturn unpack --limits shows and takes");
    }
    if (!unpacked.fresh()) {
      unpacked.brought().forEach(line -> notes.add("brought: " + line));
    }
    return notes;
  }

  static String where(@Nullable Path folder) {
    return folder == null ? "" : folder.toString();
  }
}
