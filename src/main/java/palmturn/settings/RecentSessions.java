package palmturn.settings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import palmturn.trial.TrialId;

/**
 * The sessions opened last, and where each was left: in the user's settings, never in a session. A
 * file that can't be read or written counts as none, since nothing in it is needed.
 */
public final class RecentSessions {
  private static final int MOST = 9;

  private final @Nullable Path file;
  private List<Entry> all;
  private @Nullable PendingAdd startAdding;
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
  public record Entry(
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
  public record PendingAdd(Path folder, List<String> trials) {
    public PendingAdd {
      trials = List.copyOf(trials);
    }
  }

  private RecentSessions(@Nullable Path file, List<Entry> all, @Nullable PendingAdd adding) {
    this.file = file;
    this.all = all;
    this.startAdding = adding;
  }

  /** Returns those of a folder of settings; the file is made with the first one remembered. */
  public static RecentSessions in(Path settings) {
    Path file = settings.resolve("recent.properties");
    Properties kept = PropertiesFile.readOrEmpty(file);
    RecentSessions recents = new RecentSessions(file, entries(kept), adding(kept));
    recents.inbox = path(kept.getProperty("inbox.folder"));
    return recents;
  }

  /** Returns recent sessions that are forgotten when the program ends. */
  public static RecentSessions inMemory() {
    return new RecentSessions(null, List.of(), null);
  }

  /** Returns the sessions, the last opened first. */
  public synchronized List<Entry> all() {
    return all;
  }

  /** Returns a session's entry. */
  public synchronized Optional<Entry> of(Path folder) {
    Path wanted = absolute(folder);
    return all.stream().filter(each -> each.folder().equals(wanted)).findFirst();
  }

  /** Remembers a session as the last one, in place of what was known of it. */
  public synchronized void remember(Entry left) {
    Path folder = absolute(left.folder());
    List<Entry> more = new ArrayList<>();
    more.add(new Entry(folder, left.heading(), left.trial(), left.timeS(), left.reader()));
    all.stream().filter(each -> !each.folder().equals(folder)).forEach(more::add);
    all = List.copyOf(more.subList(0, Math.min(MOST, more.size())));
    write();
  }

  /** Returns the likely reader of a session: who read it last, else who read any last. */
  public synchronized Optional<String> reader(Path folder) {
    return of(folder)
        .map(Entry::reader)
        .or(() -> all.stream().map(Entry::reader).filter(Objects::nonNull).findFirst());
  }

  /** Remembers the trials being added until {@link #finishAdding}, in case the program ends. */
  public synchronized void startAdding(Path folder, List<String> trials) {
    startAdding = new PendingAdd(absolute(folder), trials);
    write();
  }

  /** Forgets the trials being added: they are in, or were refused. */
  public synchronized void finishAdding() {
    startAdding = null;
    write();
  }

  /** Returns what was being added when the program ended; null when nothing was. */
  public synchronized @Nullable PendingAdd unfinishedAdd() {
    return startAdding;
  }

  /** Remembers the folder that a coach's sessions come in. */
  public synchronized void setInbox(Path folder) {
    inbox = absolute(folder);
    write();
  }

  /** Returns the folder that a coach's sessions come in; null where none was chosen. */
  public synchronized @Nullable Path inbox() {
    return inbox;
  }

  /** Forgets a session, which may have been moved or deleted. */
  public synchronized void forget(Path folder) {
    Path gone = absolute(folder);
    all = all.stream().filter(each -> !each.folder().equals(gone)).toList();
    write();
  }

  private static Path absolute(Path folder) {
    return folder.toAbsolutePath().normalize();
  }

  private static @Nullable PendingAdd adding(Properties kept) {
    Path folder = path(kept.getProperty("adding.folder"));
    String trials = kept.getProperty("adding.trials", "");
    return folder == null || trials.isBlank()
        ? null
        : new PendingAdd(folder, List.of(trials.split(" ")));
  }

  private static @Nullable Path path(@Nullable String name) {
    try {
      return name == null ? null : absolute(Path.of(name));
    } catch (InvalidPathException e) {
      return null;
    }
  }

  private static List<Entry> entries(Properties kept) {
    List<Entry> read = new ArrayList<>();
    for (int i = 0; i < MOST; i++) {
      String folder = kept.getProperty(i + ".folder");
      if (folder != null) {
        try {
          String trial = kept.getProperty(i + ".trial");
          String timeS = kept.getProperty(i + ".timeS");
          read.add(
              new Entry(
                  absolute(Path.of(folder)),
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
      Entry left = all.get(i);
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
    if (startAdding != null) {
      kept.setProperty("adding.folder", startAdding.folder().toString());
      kept.setProperty("adding.trials", String.join(" ", startAdding.trials()));
    }
    if (inbox != null) {
      kept.setProperty("inbox.folder", inbox.toString());
    }
    PropertiesFile.tryWrite(file, kept);
  }
}
