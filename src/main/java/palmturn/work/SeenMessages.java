package palmturn.work;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Message;

/**
 * Up to when the messages of each session were seen on this computer, kept in the user's settings.
 */
public final class SeenMessages {
  private final @Nullable Path file;
  private final Properties until;

  private SeenMessages(@Nullable Path file, Properties until) {
    this.file = file;
    this.until = until;
  }

  /** Returns what a file holds; it is made with the first message that is seen. */
  public static SeenMessages in(Path file) {
    return new SeenMessages(file, Kept.read(file));
  }

  /** Returns what is forgotten with the program. */
  public static SeenMessages unkept() {
    return new SeenMessages(null, new Properties());
  }

  /** Says that all messages of a session have been seen. */
  public synchronized void seen(Path folder, List<Message> all) {
    if (unseen(folder, all) > 0) {
      Instant last = all.stream().map(Message::at).max(Instant::compareTo).orElse(Instant.EPOCH);
      until.setProperty(key(folder), last.toString());
      if (file != null) {
        Kept.write(file, until);
      }
    }
  }

  /** Returns how many messages of a session have not been seen. */
  public synchronized int unseen(Path folder, List<Message> all) {
    Instant seen = instant(until.getProperty(key(folder)));
    return (int) all.stream().filter(each -> each.at().isAfter(seen)).count();
  }

  private static String key(Path folder) {
    return folder.toAbsolutePath().normalize().toString();
  }

  private static Instant instant(@Nullable String text) {
    try {
      return text == null ? Instant.MIN : Instant.parse(text);
    } catch (DateTimeException e) {
      return Instant.MIN;
    }
  }
}
