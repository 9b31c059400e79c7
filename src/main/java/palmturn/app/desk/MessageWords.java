package palmturn.app.desk;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import palmturn.app.board.CellWords;
import palmturn.trial.Message;

/** The wording of messages: time, subject and count. */
public final class MessageWords {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);

  private MessageWords() {}

  /** Returns when a message was written. */
  public static String when(Message message, ZoneId zone) {
    return WHEN.format(message.at().atZone(zone));
  }

  /** Returns a moment, such as "Right hand 2, baseline, 2.364 s", or the whole session. */
  public static String where(Messages.Moment moment) {
    if (moment.trial() == null) {
      return "the session";
    }
    String name = CellWords.name(moment.trial());
    return moment.timeS() == null
        ? name
        : String.format(Locale.ROOT, "%s, %.3f s", name, moment.timeS());
  }

  /** Returns the number of messages and of new ones; empty where there are none. */
  public static String count(int all, int unseen) {
    if (all == 0) {
      return "";
    }
    String some = all + (all == 1 ? " message" : " messages");
    return unseen == 0 ? some : some + ", " + unseen + " new";
  }
}
