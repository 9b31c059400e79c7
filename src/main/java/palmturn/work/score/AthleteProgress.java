package palmturn.work.score;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.json.ProgressJson;
import palmturn.measure.Courses;
import palmturn.measure.Limits;
import palmturn.measure.ProgressScore;
import palmturn.report.ChangeSentences;
import palmturn.report.ProgressReport;
import palmturn.store.SessionFolder;
import palmturn.trial.UserError;
import palmturn.work.NewFile;
import palmturn.work.session.Sessions;

/**
 * One athlete over several session folders.
 *
 * @param score the figures; null where no session has any
 * @param changes what changed within the last session given, a line for each later block
 * @param unread a line for each session that can't be read or has no figures
 * @param limits that hold over sessions: the user's, else the program's
 */
public record AthleteProgress(
    @Nullable ProgressScore score, List<String> changes, List<String> unread, Limits limits) {
  /** The caveat beside every change that is shown. */
  public static final String PRACTICE = ChangeSentences.PRACTICE;

  public AthleteProgress {
    changes = List.copyOf(changes);
    unread = List.copyOf(unread);
  }

  /**
   * Follows the athlete of sessions over all of them.
   *
   * @param settings the folder of the user's settings
   * @param reader whose readings, as in {@link Scoring#score}
   * @throws UserError if they are of different athletes
   */
  public static AthleteProgress of(
      Path settings, List<Path> folders, @Nullable String reader, Progress progress)
      throws UserError {
    LimitsInForce users = LimitsInForce.of(settings, null);
    List<String> unread = new ArrayList<>();
    List<Courses.Scored> scored = new ArrayList<>();
    for (Path folder : new LinkedHashSet<>(folders.stream().map(AthleteProgress::whole).toList())) {
      if (progress.stopped()) {
        throw new UserError("stopped; no progress was worked out");
      }
      progress.at((double) scored.size() / folders.size(), String.valueOf(folder.getFileName()));
      try {
        scored.add(scored(folder, reader, users));
      } catch (UserError e) {
        unread.add(String.valueOf(e.getMessage()));
      }
    }
    List<String> athletes =
        scored.stream().map(each -> each.session().athlete()).distinct().toList();
    if (athletes.size() > 1) {
      throw new UserError(
          "these sessions are of different athletes (%s): give those of one only"
              .formatted(String.join(", ", athletes)));
    }
    return new AthleteProgress(
        scored.isEmpty() ? null : Courses.of(scored, users.limits().margins()),
        scored.isEmpty() ? List.of() : changes(scored.get(scored.size() - 1)),
        unread,
        users.limits());
  }

  private static List<String> changes(Courses.Scored last) {
    return ChangeSentences.of(last.session(), last.score());
  }

  /**
   * Follows the athlete of a session over it and the sessions in the folders beside it; those of
   * other athletes are passed over.
   *
   * @param settings the folder of the user's settings
   * @throws UserError if the session itself can't be read
   */
  public static AthleteProgress beside(Path settings, Path session, Progress progress)
      throws UserError {
    Path folder = whole(session);
    String athlete = athlete(folder);
    Set<Path> own = new LinkedHashSet<>();
    List<String> unread = new ArrayList<>();
    for (Path each : sessionsBeside(folder)) {
      try {
        if (athlete(each).equals(athlete)) {
          own.add(each);
        }
      } catch (UserError e) {
        unread.add(String.valueOf(e.getMessage()));
      }
    }
    // The last one is the one whose blocks are told apart.
    own.remove(folder);
    own.add(folder);
    AthleteProgress found = of(settings, List.copyOf(own), null, progress);
    unread.addAll(found.unread());
    return new AthleteProgress(found.score(), found.changes(), unread, found.limits());
  }

  /** Returns the figures in the fixed form of scripts. */
  public String json() {
    return ProgressJson.write(score, unread);
  }

  /**
   * Writes a page with charts.
   *
   * @param replace whether a file that is there may go
   * @throws UserError if no session has figures, or the file can't be written
   */
  public void write(Path file, boolean replace, Clock clock) throws UserError {
    if (score == null) {
      throw new UserError("no session has figures yet, so that there is nothing to draw");
    }
    String page = ProgressReport.html(score, unread, limits, clock.instant());
    NewFile.write(file, replace, page.getBytes(StandardCharsets.UTF_8));
  }

  private static Courses.Scored scored(Path folder, @Nullable String reader, LimitsInForce users)
      throws UserError {
    try (SessionFolder open = Sessions.openReadOnly(folder)) {
      return new Courses.Scored(
          open.session(), Scoring.score(open, reader, users.in(folder).limits()));
    }
  }

  private static String athlete(Path folder) throws UserError {
    try (SessionFolder open = Sessions.openReadOnly(folder)) {
      return open.session().athlete();
    }
  }

  private static List<Path> sessionsBeside(Path folder) throws UserError {
    Path parent = folder.getParent();
    if (parent == null) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(parent)) {
      return all.filter(Sessions::isSession).sorted().toList();
    } catch (IOException e) {
      throw new UserError(parent + " can't be looked into: open the session from elsewhere", e);
    }
  }

  private static Path whole(Path folder) {
    return folder.toAbsolutePath().normalize();
  }
}
