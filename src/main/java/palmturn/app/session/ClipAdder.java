package palmturn.app.session;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.NumberField;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Mirrored;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** Adds trial candidates to a session, or to a new one beside the first clip. */
final class ClipAdder {
  private ClipAdder() {}

  /** A stretch of a clip and the trial that it becomes. */
  record Wanted(TrialCandidate attempt, TrialId id) {}

  /** The athlete and the day of a session to be made. */
  record NewSession(String athlete, LocalDate date, Session.Facts facts) {}

  /**
   * The trials that were added.
   *
   * @param last the trial that was added last
   * @param problem empty, or the reason why not all were added
   */
  record Added(SessionFolder folder, TrialId last, String problem) {}

  /**
   * The circumstances in which all of them were filmed.
   *
   * @param paceSlapsPerS the click track that they were filmed to; null for none
   */
  record FilmingDetails(Mirrored mirrored, @Nullable Double paceSlapsPerS) {
    /**
     * Returns filming details with the pace as a person writes it, empty for none.
     *
     * @throws UserError if that is no pace of a click track
     */
    static FilmingDetails of(Mirrored mirrored, String pace) throws UserError {
      if (pace.isBlank()) {
        return new FilmingDetails(mirrored, null);
      }
      Double slapsPerS = NumberField.parse(pace);
      if (slapsPerS != null && slapsPerS >= 0.5 && slapsPerS <= 20) {
        return new FilmingDetails(mirrored, slapsPerS);
      }
      throw new UserError(
          "Write the click track’s pace as slaps a second, 0.5 to 20, such as 3.1; or leave it empty.");
    }
  }

  /**
   * The memory of trials on their way into a session, should the program end before they are in.
   */
  interface AdditionLog {
    void begun(Path folder, List<String> trials);

    void ended();
  }

  /**
   * Adds what is wanted; where something fails after the first, what was added stays.
   *
   * @param there the open session; null to make one
   * @param start for the session to be made; null where one is open
   */
  static Added add(
      @Nullable SessionFolder there,
      @Nullable NewSession start,
      List<Wanted> wanted,
      FilmingDetails how,
      AdditionLog log,
      Progress progress)
      throws UserError {
    SessionFolder folder =
        there != null
            ? there
            : create(wanted.get(0).attempt().clip(), Objects.requireNonNull(start));
    log.begun(folder.folder(), wanted.stream().map(each -> each.id().name()).toList());
    try {
      return add(folder, wanted, how, progress);
    } catch (UserError e) {
      if (there == null) {
        discard(folder);
      }
      throw e;
    } finally {
      log.ended();
    }
  }

  private static Added add(
      SessionFolder folder, List<Wanted> wanted, FilmingDetails how, Progress progress)
      throws UserError {
    TrialId last = null;
    String problem = "";
    for (Wanted each : wanted) {
      progress.at((double) wanted.indexOf(each) / wanted.size(), "adding " + each.id().name());
      try {
        last = AddClip.add(folder, each.attempt().clip(), request(each, how)).trial().id();
      } catch (UserError e) {
        if (last == null) {
          throw e;
        }
        problem = each.id().name() + " was not added: " + e.getMessage();
        break;
      }
    }
    return new Added(folder, Objects.requireNonNull(last), problem);
  }

  private static AddClip.ClipRequest request(Wanted wanted, FilmingDetails how) {
    TrialCandidate attempt = wanted.attempt();
    TrialId id = wanted.id();
    return new AddClip.ClipRequest(
        id.hand(),
        id.block(),
        id.repeat(),
        attempt.fromS(),
        attempt.toS(),
        how.mirrored(),
        how.paceSlapsPerS(),
        null);
  }

  private static SessionFolder create(Path beside, NewSession start) throws UserError {
    String name = start.athlete().strip().replaceAll("[^\\p{L}\\p{N}_-]+", "-");
    return Sessions.create(
        beside.toAbsolutePath().resolveSibling(name + "-" + start.date()),
        start.athlete(),
        start.date(),
        start.facts());
  }

  private static void discard(SessionFolder folder) {
    try {
      folder.discard(false);
    } catch (StoreException e) {
      // The error that led here is the one to tell; at worst a session without trials stays.
      return;
    }
  }
}
