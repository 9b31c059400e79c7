package palmturn.settings;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Message;

/** The messages of each session that were seen on this computer, each known by its own digest. */
public final class SeenMessages {
  private final @Nullable Path file;
  private final Properties seen;

  private SeenMessages(@Nullable Path file, Properties seen) {
    this.file = file;
    this.seen = seen;
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
      seen.setProperty(
          key(folder), all.stream().map(SeenMessages::digest).collect(Collectors.joining(" ")));
      if (file != null) {
        PropertiesFile.tryWrite(file, seen);
      }
    }
  }

  /** Returns how many messages of a session have not been seen. */
  public synchronized int countUnseen(Path folder, List<Message> all) {
    Set<String> known = new HashSet<>(Arrays.asList(seen.getProperty(key(folder), "").split(" ")));
    return (int) all.stream().filter(each -> !known.contains(digest(each))).count();
  }

  private static String key(Path folder) {
    return folder.toAbsolutePath().normalize().toString();
  }

  private static String digest(Message message) {
    String whole =
        List.of(
                message.from(),
                message.at(),
                String.valueOf(message.trial()),
                String.valueOf(message.timeS()),
                message.text())
            .toString();
    return UUID.nameUUIDFromBytes(whole.getBytes(StandardCharsets.UTF_8)).toString();
  }
}
