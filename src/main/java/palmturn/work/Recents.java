package palmturn.work;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
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
  private static final int MOST = 9;

  private final @Nullable Path file;
  private List<Left> all;
  private @Nullable Adding adding;
  private @Nullable Path inbox;

  /**
   * A session and where it was left.
   *
   * @param folder where it lies
   * @param heading whose it is, of which day
   * @param trial the trial that was open; null when none was
   * @param timeS where in it, media seconds; null when no trial was open
   * @param reader who read it, initials; null when nobody said so
   */
  public record Left(
      Path folder,
      String heading,
      @Nullable TrialId trial,
      @Nullable Double timeS,
      @Nullable String reader) {}

  /**
   * Trials that were on their way into a session when the program ended.
   *
   * @param folder the session
   * @param trials their names
   */
  public record Adding(Path folder, List<String> trials) {
    public Adding {
      trials = List.copyOf(trials);
    }
  }

  private Recents(@Nullable Path file, List<Left> all, @Nullable Adding adding) {
    this.file = file;
    this.all = all;
    this.adding = adding;
  }

  /** Returns what lies in the settings; it is made with the first session that is remembered. */
  public static Recents in(Path settings) {
    Path file = settings.resolve("recent.properties");
    Properties kept = Kept.read(file);
    Recents recents = new Recents(file, lefts(kept), adding(kept));
    recents.inbox = path(kept.getProperty("inbox.folder"));
    return recents;
  }

  /** Returns recents that are forgotten with the program. */
  public static Recents unkept() {
    return new Recents(null, List.of(), null);
  }

  /**
   * Returns the folder of a user's settings for this program, which need not be there yet.
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
    return base.resolve("palmturn");
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
    more.add(new Left(folder, left.heading(), left.trial(), left.timeS(), left.reader()));
    all.stream().filter(each -> !each.folder().equals(folder)).forEach(more::add);
    all = List.copyOf(more.subList(0, Math.min(MOST, more.size())));
    write();
  }

  /** Returns who may be reading a session now: who did so last, there or anywhere. */
  public synchronized Optional<String> reader(Path folder) {
    return of(folder)
        .map(Left::reader)
        .or(() -> all.stream().map(Left::reader).filter(Objects::nonNull).findFirst());
  }

  /** Remembers what is being added until {@link #added}, for the case that the program ends. */
  public synchronized void adding(Path folder, List<String> trials) {
    adding = new Adding(whole(folder), trials);
    write();
  }

  /** Says that what was being added is in, or was refused in words. */
  public synchronized void added() {
    adding = null;
    write();
  }

  /** Returns what was being added when the program ended; null when nothing was. */
  public synchronized @Nullable Adding wasAdding() {
    return adding;
  }

  /** Remembers the folder that a coach's sessions come in. */
  public synchronized void setInbox(Path folder) {
    inbox = whole(folder);
    write();
  }

  /** Returns the folder that a coach's sessions come in; null where none was chosen. */
  public synchronized @Nullable Path inbox() {
    return inbox;
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

  private static @Nullable Adding adding(Properties kept) {
    Path folder = path(kept.getProperty("adding.folder"));
    String trials = kept.getProperty("adding.trials", "");
    return folder == null || trials.isBlank()
        ? null
        : new Adding(folder, List.of(trials.split(" ")));
  }

  private static @Nullable Path path(@Nullable String name) {
    try {
      return name == null ? null : whole(Path.of(name));
    } catch (InvalidPathException e) {
      return null;
    }
  }

  private static List<Left> lefts(Properties kept) {
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
                  timeS == null ? null : finite(Double.parseDouble(timeS)),
                  kept.getProperty(i + ".reader")));
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
      if (left.reader() != null) {
        kept.setProperty(i + ".reader", left.reader());
      }
    }
    if (adding != null) {
      kept.setProperty("adding.folder", adding.folder().toString());
      kept.setProperty("adding.trials", String.join(" ", adding.trials()));
    }
    if (inbox != null) {
      kept.setProperty("inbox.folder", inbox.toString());
    }
    Kept.write(file, kept);
  }
}
