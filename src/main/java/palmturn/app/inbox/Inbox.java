package palmturn.app.inbox;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.RunningTask;
import palmturn.app.tasks.Tasks;
import palmturn.settings.RecentSessions;
import palmturn.work.pack.Unpacking;
import palmturn.work.search.InboxSearch;
import palmturn.work.search.InboxSearch.Found;
import palmturn.work.search.InboxSearch.SessionState;

/** The sessions in a coach's folder, those that need work first, and the one that is chosen. */
public final class Inbox {
  private final Tasks tasks;
  private final Executor screen;
  private final RecentSessions recents;
  private final Sessions sessions;

  private final ReadOnlyBooleanWrapper shown = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<@Nullable Path> folder = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<List<Found>> found = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable Path> chosen = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable RunningTask> search = new ReadOnlyObjectWrapper<>();
  private boolean chosenByHand;
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");

  /** The sessions as the window opens them. */
  public interface Sessions {
    /** Returns whether a session is open in the window. */
    boolean isOpen(Path folder);

    /** Opens a session. */
    void open(Path folder);

    /** Returns the number of a session's messages that have not been seen. */
    int unseen(Found session);
  }

  /**
   * Starts out of sight, at the folder that was chosen last.
   *
   * @param tasks runs the search
   * @param screen hands what was found to the screen's thread
   * @param sessions opens what was found
   */
  public Inbox(Tasks tasks, Executor screen, RecentSessions recents, Sessions sessions) {
    this.tasks = tasks;
    this.screen = screen;
    this.recents = recents;
    this.sessions = sessions;
    folder.set(recents.inbox());
  }

  /** Whether the inbox is shown. */
  public ReadOnlyBooleanProperty shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** The folder that is searched; null until one is chosen. */
  public ReadOnlyObjectProperty<@Nullable Path> folderProperty() {
    return folder.getReadOnlyProperty();
  }

  /** The sessions found so far, those that need work first. */
  public ReadOnlyObjectProperty<List<Found>> foundProperty() {
    return found.getReadOnlyProperty();
  }

  /** The session that is chosen; null where there is none. */
  public ReadOnlyObjectProperty<@Nullable Path> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** The search that goes on; null when none does. */
  public ReadOnlyObjectProperty<@Nullable RunningTask> searchProperty() {
    return search.getReadOnlyProperty();
  }

  /** A sentence about the list as a whole; empty where the list needs none. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Returns how many of a session's messages have not been seen. */
  public int unseen(Found session) {
    return sessions.unseen(session);
  }

  /** Brings it into sight and looks again at what is there. */
  public void show() {
    shown.set(true);
    search();
  }

  /** Takes it out of sight. */
  public void hide() {
    shown.set(false);
    stop();
  }

  /** Searches another folder from now on. */
  public void choose(Path where) {
    recents.setInbox(where);
    folder.set(recents.inbox());
    found.set(List.of());
    chosen.set(null);
    chosenByHand = false;
    search();
  }

  /** Searches the folder anew; what is listed stays until it has been looked at again. */
  public void search() {
    stop();
    Path where = folder.get();
    if (where == null) {
      words.set(
          "Choose the folder in which the sessions of your athletes arrive. Here they are then listed:"
              + " new ones, those in work and those answered.");
      return;
    }
    RunningTask run = new RunningTask(screen::execute, "Searching");
    search.set(run);
    words.set("");
    List<Found> fresh = new ArrayList<>();
    tasks.run(
        () -> {
          if (!run.stopped()) {
            InboxSearch.search(where, run, each -> screen.execute(() -> add(run, fresh, each)));
          }
          return run.stopped();
        },
        stopped -> ended(run, fresh, stopped),
        problem -> {
          if (search.get() == run) {
            search.set(null);
            found.set(List.of());
            words.set(String.valueOf(problem.getMessage()));
          }
        });
  }

  private void add(RunningTask run, List<Found> fresh, Found each) {
    if (search.get() == run) {
      fresh.add(each);
      List<Found> all = new ArrayList<>(found.get());
      all.removeIf(old -> old.path().equals(each.path()));
      all.add(each);
      show(all);
    }
  }

  private void ended(RunningTask run, List<Found> fresh, boolean stopped) {
    if (search.get() != run) {
      return;
    }
    search.set(null);
    if (!stopped) {
      // Sessions that are gone from the folder go from the list.
      show(fresh);
    }
    words.set(
        stopped
            ? "Stopped; not everything was looked at."
            : fresh.isEmpty() ? "There is no session in this folder yet." : "");
  }

  private void show(List<Found> all) {
    List<Found> sorted = all.stream().sorted(InboxSearch.ORDER).toList();
    found.set(sorted);
    boolean there =
        chosenByHand && sorted.stream().anyMatch(each -> each.path().equals(chosen.get()));
    if (!there) {
      chosen.set(sorted.isEmpty() ? null : sorted.get(0).path());
    }
  }

  /** Stops the search. */
  public void stop() {
    RunningTask run = search.get();
    if (run != null) {
      run.stop();
    }
  }

  /** Chooses one. */
  public void choose(Found which) {
    chosenByHand = true;
    chosen.set(which.path());
  }

  /** Chooses one so many further down, or up where negative. */
  public void move(int by) {
    List<Found> all = found.get();
    if (!all.isEmpty()) {
      chosenByHand = true;
      int to = Math.max(0, Math.min(all.size() - 1, at() + by));
      chosen.set(all.get(to).path());
    }
  }

  private int at() {
    List<Path> paths = found.get().stream().map(Found::path).toList();
    return Math.max(0, paths.indexOf(chosen.get()));
  }

  /**
   * Opens the one that is chosen, a pack by bringing it into its session beside it first; says so
   * where that can't be done.
   */
  public void open() {
    List<Found> all = found.get();
    if (all.isEmpty()) {
      return;
    }
    Found which = all.get(at());
    if (which.state() == SessionState.PACK) {
      unpack(which.path());
    } else if (which.state() == SessionState.UNREADABLE) {
      words.set(which.problem());
    } else {
      open(which.path());
    }
  }

  private void open(Path session) {
    if (sessions.isOpen(session)) {
      hide();
    } else {
      sessions.open(session);
    }
  }

  /** Unpacks a pack; notes about it are read here before its session is shown. */
  private void unpack(Path pack) {
    words.set("Unpacking " + pack.getFileName() + " …");
    tasks.run(
        () ->
            Unpacking.unpack(
                pack,
                pack.resolveSibling(Unpacking.folderName(pack)),
                false,
                Clock.systemDefaultZone()),
        unpacked -> {
          List<String> notes = InboxWords.notes(unpacked);
          if (notes.isEmpty()) {
            words.set("");
            open(unpacked.session());
          } else {
            search();
            words.set("Unpacked. " + String.join("; ", notes));
          }
        },
        problem -> words.set(String.valueOf(problem.getMessage())));
  }
}
