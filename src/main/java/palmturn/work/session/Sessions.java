package palmturn.work.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import palmturn.store.SessionFolder;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.WorkFile;

/** Session folders: made, opened, and their trials found by name. */
public final class Sessions {
  private Sessions() {}

  /** Makes a new session folder and opens it for writing. */
  public static SessionFolder create(
      Path folder, String athlete, LocalDate date, Session.Facts facts) throws UserError {
    if (athlete.isBlank()) {
      throw new UserError("the athlete needs a code, such as H-07");
    }
    return SessionFolder.create(folder, Session.begin(athlete.strip(), date).withFacts(facts));
  }

  /** Returns whether a folder is a session's. */
  public static boolean isSession(Path folder) {
    return Files.isRegularFile(folder.resolve("session.json"));
  }

  /** Opens a session as its one writer. */
  public static SessionFolder open(Path folder) throws UserError {
    sweep(folder);
    return SessionFolder.open(folder);
  }

  /** Removes what killed processes left in a session, where its report is, and beside it. */
  private static void sweep(Path folder) {
    Path session = folder.toAbsolutePath().normalize();
    Path beside = session.getParent();
    if (isSession(session)) {
      WorkFile.sweep(session);
      WorkFile.sweep(session.resolve("report"));
      if (beside != null) {
        WorkFile.sweep(beside);
      }
    }
  }

  /** Opens a session read-only. */
  public static SessionFolder openReadOnly(Path folder) throws UserError {
    sweep(folder);
    return SessionFolder.openReadOnly(folder);
  }

  /** Returns a trial of a session by its name, such as {@code right-baseline-1}. */
  public static Trial trial(SessionFolder folder, String name) throws UserError {
    for (Trial each : folder.trials()) {
      if (each.id().name().equals(name)) {
        return each;
      }
    }
    for (Map.Entry<TrialId, String> each : folder.damaged().entrySet()) {
      if (each.getKey().name().equals(name)) {
        throw new UserError(each.getValue());
      }
    }
    throw new UserError("%s has no trial %s".formatted(folder.folder().getFileName(), name));
  }

  /** Makes a folder, where it is not there yet, and returns it. */
  static Path createFolder(Path folder) throws UserError {
    try {
      return Files.createDirectories(folder);
    } catch (IOException e) {
      throw new UserError(folder + ": can't be made: is the place not read-only?", e);
    }
  }

  /** A trial named from outside: {@code SESSION/right-baseline-1}. */
  public record TrialPath(Path session, TrialId id) {
    /**
     * Returns the session and the trial that a path names.
     *
     * @throws UserError if its last part is no trial's name
     */
    public static TrialPath parse(Path path) throws UserError {
      Path name = path.getFileName();
      Path session = path.toAbsolutePath().normalize().getParent();
      if (name == null || session == null) {
        throw new UserError(path + ": name a trial as SESSION/right-baseline-1");
      }
      try {
        return new TrialPath(session, TrialId.parse(name.toString()));
      } catch (IllegalArgumentException e) {
        throw new UserError(path + ": " + e.getMessage(), e);
      }
    }
  }
}
