package palmturn.work.search;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.report.MarksCsv;
import palmturn.settle.SettledTrial;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Message;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.UserError;
import palmturn.work.score.LastSettled;
import palmturn.work.score.Scoring;

/** The search of a folder for sessions that were sent in, with the state of each. */
public final class InboxSearch {
  /** Sessions lie this deep at the most: club, group, athlete, session. */
  private static final int DEEP = 5;

  private static final String SESSION = "session.json";

  /** The ending of a packed session's file name. */
  public static final String PACK = ".palmturn.zip";

  private InboxSearch() {}

  /** The state of a session; those that need work come first. */
  public enum SessionState {
    /** Filmed, and nothing read. */
    NEW,
    /** A reading begun, or not everything read, or nothing said to the athlete yet. */
    IN_WORK,
    /** All is read, and a report or a coach's message tells the athlete. */
    ANSWERED,
    /** Nothing is filmed yet. */
    NOT_FILMED,
    /** Sent in one file. */
    PACK,
    /** Not to be read; the reason stands beside it. */
    UNREADABLE
  }

  /**
   * A session found.
   *
   * @param path the session's folder, or the pack's file
   * @param athlete the athlete's code; empty where it can't be told
   * @param date the day of filming; null where it can't be told
   * @param filmed trials
   * @param read trials with a finished reading, or settled
   * @param settled trials of which every difference is decided
   * @param messages between athlete and coach, in order of time
   * @param problem why it can't be read, one line; empty where it can
   */
  public record Found(
      Path path,
      SessionState state,
      String athlete,
      @Nullable LocalDate date,
      int filmed,
      int read,
      int settled,
      List<Message> messages,
      String problem) {
    public Found {
      messages = List.copyOf(messages);
    }

    /** Returns the last message; null where nothing was said. */
    public @Nullable Message last() {
      return messages.isEmpty() ? null : messages.get(messages.size() - 1);
    }

    private static Found of(Path path, SessionState state, String problem) {
      return new Found(path, state, "", null, 0, 0, 0, List.of(), problem);
    }
  }

  /** Sessions that need work first, then the newest first. */
  public static final Comparator<Found> ORDER =
      Comparator.comparing(Found::state)
          .thenComparing(Found::date, Comparator.nullsLast(Comparator.reverseOrder()))
          .thenComparing(InboxSearch::said, Comparator.reverseOrder())
          .thenComparing(found -> found.path().toString());

  private static Instant said(Found found) {
    Message last = found.last();
    return last == null ? Instant.MIN : last.at();
  }

  /**
   * Searches a folder and those in it. A session that can't be read is reported as any other, and
   * the search goes on.
   *
   * @param found receives each at once, on this thread
   * @throws UserError if there is no such folder
   */
  public static void search(Path folder, Progress progress, Consumer<Found> found)
      throws UserError {
    if (!Files.isDirectory(folder)) {
      throw new UserError(folder + " is not there: choose another folder, or connect its drive");
    }
    List<Path> there = new ArrayList<>(candidates(folder, progress, found));
    for (int i = 0; i < there.size() && !progress.stopped(); i++) {
      Path each = there.get(i);
      progress.at((double) i / there.size(), String.valueOf(each.getFileName()));
      found.accept(look(each));
    }
    progress.at(1, "done");
  }

  private static Set<Path> candidates(Path folder, Progress progress, Consumer<Found> found)
      throws UserError {
    Set<Path> there = new TreeSet<>();
    try {
      // A folder that is only a link to one is looked into as well; those inside are not followed.
      Path start = Files.isSymbolicLink(folder) ? folder.toRealPath() : folder;
      Files.walkFileTree(
          start,
          EnumSet.noneOf(FileVisitOption.class),
          DEEP,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes about) {
              if (progress.stopped()) {
                return FileVisitResult.TERMINATE;
              }
              if (Files.exists(dir.resolve(SESSION))) {
                there.add(dir);
                return FileVisitResult.SKIP_SUBTREE;
              }
              boolean hidden = !dir.equals(start) && name(dir).startsWith(".");
              return hidden ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes about) {
              if (name(file).endsWith(PACK) && about.isRegularFile()) {
                there.add(file);
              }
              return progress.stopped() ? FileVisitResult.TERMINATE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
              found.accept(Found.of(file, SessionState.UNREADABLE, "can't be looked into"));
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path dir, @Nullable IOException e) {
              // What can't be listed to its end has told what it could.
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw new UserError(folder + " can't be looked into: choose another folder", e);
    }
    return there;
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }

  /** Returns how far one session is; a pack is only named, until it is unpacked. */
  static Found look(Path path) {
    if (!Files.isDirectory(path)) {
      return Found.of(path, SessionState.PACK, "");
    }
    try {
      return of(SessionFolder.openReadOnly(path));
    } catch (StoreException e) {
      return Found.of(path, SessionState.UNREADABLE, String.valueOf(e.getMessage()));
    } catch (RuntimeException e) {
      // One session with something nobody thought of must not hide the others.
      return Found.of(
          path,
          SessionState.UNREADABLE,
          "something in it can't be read: " + e.getClass().getSimpleName());
    }
  }

  private static Found of(SessionFolder folder) {
    Session session = folder.session();
    List<Trial> trials = folder.trials();
    int read = (int) trials.stream().filter(InboxSearch::read).count();
    int settled = (int) trials.stream().filter(InboxSearch::settled).count();
    return new Found(
        folder.folder(),
        state(folder, session, trials, read),
        session.athlete(),
        session.date(),
        trials.size(),
        read,
        settled,
        session.messages(),
        "");
  }

  private static SessionState state(
      SessionFolder folder, Session session, List<Trial> trials, int read) {
    if (trials.isEmpty()) {
      return SessionState.NOT_FILMED;
    }
    boolean begun = trials.stream().anyMatch(trial -> !trial.readings().isEmpty());
    boolean answeredByCoach = fromCoach(session);
    if (!begun) {
      return answeredByCoach ? SessionState.ANSWERED : SessionState.NEW;
    }
    boolean answered = read == trials.size() && (answeredByCoach || reported(folder, trials));
    return answered ? SessionState.ANSWERED : SessionState.IN_WORK;
  }

  private static boolean read(Trial trial) {
    return settled(trial) || trial.readings().stream().anyMatch(Reading::finished);
  }

  private static boolean settled(Trial trial) {
    SettledTrial last = LastSettled.of(trial);
    return last != null && last.open() == 0;
  }

  /** Returns whether the last word is not the athlete's. */
  private static boolean fromCoach(Session session) {
    List<Message> all = session.messages();
    if (all.isEmpty()) {
      return false;
    }
    String from = all.get(all.size() - 1).from();
    return !from.equals(Message.ATHLETE) && !from.equals(session.athlete());
  }

  /**
   * Returns whether a report tells of the marks as they are now. Times of files do not say that:
   * closing a session writes its files anew, and so does copying.
   */
  private static boolean reported(SessionFolder folder, List<Trial> trials) {
    Path reports = folder.folder().resolve("report");
    if (!Files.isRegularFile(reports.resolve("report.html"))) {
      return false;
    }
    for (Trial trial : trials) {
      Reading scored = Scoring.choice(null).of(trial);
      Path marks = reports.resolve(trial.id().name() + ".csv");
      try {
        if (scored == null || !Files.readString(marks).equals(MarksCsv.write(scored))) {
          return false;
        }
      } catch (IOException e) {
        return false;
      }
    }
    return true;
  }
}
