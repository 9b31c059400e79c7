package palmturn.settings;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Message;

/** The moment up to which each session's messages were seen on this computer. */
public final class SeenMessages {
  private final @Nullable Path file;
  private final Properties seenUntil;

  private SeenMessages(@Nullable Path file, Properties until) {
    this.file = file;
    this.seenUntil = until;
  }

  /** Returns those of a file, which is made with the first message seen. */
  public static SeenMessages in(Path file) {
    return new SeenMessages(file, PropertiesFile.readOrEmpty(file));
  }

  /** Returns those that are forgotten when the program ends. */
  public static SeenMessages inMemory() {
    return new SeenMessages(null, new Properties());
  }

  /** Marks all messages of a session as seen. */
  public synchronized void markSeen(Path folder, List<Message> all) {
    if (countUnseen(folder, all) > 0) {
      Instant last = all.stream().map(Message::at).max(Instant::compareTo).orElse(Instant.EPOCH);
      seenUntil.setProperty(key(folder), last.toString());
      if (file != null) {
        PropertiesFile.tryWrite(file, seenUntil);
      }
    }
  }

  /** Returns how many messages of a session have not been seen. */
  public synchronized int countUnseen(Path folder, List<Message> all) {
    Instant seen = instant(seenUntil.getProperty(key(folder)));
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
