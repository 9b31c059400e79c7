package palmturn.work;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import palmturn.trial.TrialId;

/**
 * The sessions that were opened last and where each was left, kept in the user's own settings and
 * never in a session. A file that can't be read or written is as good as none: it holds nothing
 * that can't be done again.
 */
public final class Recents {
  private static final int MOST = 8;

  private final @Nullable Path file;
  private List<Left> all;

  /**
   * A session and where it was left.
   *
   * @param folder where it lies
   * @param heading whose it is, of which day
   * @param trial the trial that was open; null when none was
   * @param timeS where in it, media seconds; null when no trial was open
   */
  public record Left(
      Path folder, String heading, @Nullable TrialId trial, @Nullable Double timeS) {}

  private Recents(@Nullable Path file, List<Left> all) {
    this.file = file;
    this.all = all;
  }

  /** Returns what a file holds; it is made with the first session that is remembered. */
  public static Recents in(Path file) {
    return new Recents(file, read(file));
  }

  /** Returns recents that are forgotten with the program. */
  public static Recents unkept() {
    return new Recents(null, List.of());
  }

  /**
   * Returns where a user's settings lie on this computer.
   *
   * @param os the operating system's name
   * @param home the user's folder
   * @param config where the system says that settings belong; null where it does not
   */
  public static Path settings(String os, Path home, @Nullable String config) {
    String name = os.toLowerCase(Locale.ROOT);
    Path base =
        config != null && !config.isBlank()
            ? Path.of(config)
            : name.contains("mac")
                ? home.resolve("Library").resolve("Application Support")
                : name.contains("windows")
                    ? home.resolve("AppData").resolve("Roaming")
                    : home.resolve(".config");
    return base.resolve("palmturn").resolve("recent.properties");
  }

  /** Returns the sessions, the last opened first. */
  public synchronized List<Left> all() {
    return all;
  }

  /** Returns where a session was left. */
  public synchronized Optional<Left> of(Path folder) {
    Path wanted = whole(folder);
    return all.stream().filter(each -> each.folder().equals(wanted)).findFirst();
  }

  /** Remembers a session as the last one, in place of what was known of it. */
  public synchronized void remember(Left left) {
    Path folder = whole(left.folder());
    List<Left> more = new ArrayList<>();
    more.add(new Left(folder, left.heading(), left.trial(), left.timeS()));
    all.stream().filter(each -> !each.folder().equals(folder)).forEach(more::add);
    all = List.copyOf(more.subList(0, Math.min(MOST, more.size())));
    write();
  }

  /** Forgets a session, which may have been moved or deleted. */
  public synchronized void forget(Path folder) {
    Path gone = whole(folder);
    all = all.stream().filter(each -> !each.folder().equals(gone)).toList();
    write();
  }

  private static Path whole(Path folder) {
    return folder.toAbsolutePath().normalize();
  }

  private static List<Left> read(Path file) {
    Properties kept = new Properties();
    try (Reader in = new StringReader(Files.readString(file))) {
      kept.load(in);
    } catch (IOException | IllegalArgumentException e) {
      return List.of();
    }
    List<Left> read = new ArrayList<>();
    for (int i = 0; i < MOST; i++) {
      String folder = kept.getProperty(i + ".folder");
      if (folder != null) {
        try {
          String trial = kept.getProperty(i + ".trial");
          String timeS = kept.getProperty(i + ".timeS");
          read.add(
              new Left(
                  whole(Path.of(folder)),
                  kept.getProperty(i + ".heading", ""),
                  trial == null ? null : TrialId.parse(trial),
                  timeS == null ? null : finite(Double.parseDouble(timeS))));
        } catch (IllegalArgumentException e) {
          // One damaged entry is left out; the others are still of use.
          continue;
        }
      }
    }
    return List.copyOf(read);
  }

  private static @Nullable Double finite(double value) {
    return Double.isFinite(value) ? value : null;
  }

  private void write() {
    if (file == null) {
      return;
    }
    Properties kept = new Properties();
    for (int i = 0; i < all.size(); i++) {
      Left left = all.get(i);
      kept.setProperty(i + ".folder", left.folder().toString());
      kept.setProperty(i + ".heading", left.heading());
      if (left.trial() != null) {
        kept.setProperty(i + ".trial", left.trial().name());
      }
      if (left.timeS() != null) {
        kept.setProperty(i + ".timeS", Double.toString(left.timeS()));
      }
    }
    try {
      StringWriter text = new StringWriter();
      kept.store(text, null);
      Path folder = Files.createDirectories(file.toAbsolutePath().getParent());
      Path next = Files.createTempFile(folder, "recent", ".part");
      try {
        Files.writeString(next, text.toString(), StandardCharsets.UTF_8);
        Files.move(next, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(next);
      }
    } catch (IOException e) {
      // Without its list of sessions the program still opens every session by its folder.
      return;
    }
  }
}
