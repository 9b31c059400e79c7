package palmturn.work.estimate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletionService;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipHash;
import palmturn.clip.Progress;
import palmturn.json.EstimateLine;
import palmturn.json.PrintedEstimate;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.Sessions;

/**
 * A batch of clips and sessions, several estimated at a time. Each outcome is handed on as soon as
 * it is there, in no particular order; a failure does not stop the others.
 */
public final class EstimateBatch {
  private final Estimating estimating;
  private final Selection wanted;
  private final @Nullable EstimatesFile file;

  /**
   * Prepares a batch.
   *
   * @param file where lines are kept, and what has one is left out; null for none
   */
  public EstimateBatch(Estimating estimating, Selection wanted, @Nullable EstimatesFile file) {
    this.estimating = estimating;
    this.wanted = wanted;
    this.file = file;
  }

  /**
   * The clips and trials to estimate, and how.
   *
   * @param clips clips outside sessions
   * @param sessions folders of sessions, one after the other; each trial's estimate is stored
   * @param hand only trials of this hand; null for both
   * @param trial only trials of this name; null for all
   * @param asked what may be used and what is known
   * @param jobs how many at the same time
   */
  public record Selection(
      List<Estimating.Clip> clips,
      List<Path> sessions,
      @Nullable Hand hand,
      @Nullable String trial,
      Estimating.Options asked,
      int jobs) {
    public Selection {
      clips = List.copyOf(clips);
      sessions = List.copyOf(sessions);
    }
  }

  /**
   * The outcome of one clip or trial.
   *
   * @param clip the file as it was named, or its path in the session; null for a session that can't
   *     be opened or has no such trial
   * @param session the session's folder as it was named, null for a clip outside one
   * @param trial null for a clip outside a session
   * @param hand the moving hand, the athlete's own; null where {@code clip} is
   * @param clipSha256 null where {@code clip} is, or can't be read
   * @param estimate null if it failed
   * @param error null if it did not fail
   */
  public record Outcome(
      @Nullable String clip,
      @Nullable String session,
      @Nullable TrialId trial,
      @Nullable Hand hand,
      @Nullable String clipSha256,
      @Nullable Estimate estimate,
      @Nullable UserError error) {
    /** Prints it in the fixed form of scripts, laid out to be read; it must not have failed. */
    public void print(Appendable to) throws IOException {
      new PrintedEstimate(identity(), Objects.requireNonNull(estimate, "it failed")).print(to);
    }

    /** Returns it in the fixed form of scripts, on one line, also where it failed. */
    public String jsonLine() {
      return estimate == null
          ? identity().line()
          : new PrintedEstimate(identity(), estimate).line();
    }

    EstimateLine identity() {
      return new EstimateLine(
          clip,
          session,
          trial == null ? null : trial.name(),
          hand,
          clipSha256,
          error == null ? null : String.valueOf(error.getMessage()));
    }

    private Outcome withEstimate(Estimate found) {
      return new Outcome(clip, session, trial, hand, clipSha256, found, null);
    }

    private Outcome withError(UserError why) {
      return new Outcome(clip, session, trial, hand, clipSha256, null, why);
    }
  }

  /**
   * The number of outcomes of each kind.
   *
   * @param estimated estimated now
   * @param failed failed now
   * @param leftOut left out, since they have an estimate in the file
   * @param failedBefore left out, since they failed before
   * @param stopped whether it was stopped before all were done
   */
  public record Counts(int estimated, int failed, int leftOut, int failedBefore, boolean stopped) {
    static final Counts NONE = new Counts(0, 0, 0, 0, false);

    private Counts plus(Counts other) {
      return new Counts(
          estimated + other.estimated,
          failed + other.failed,
          leftOut + other.leftOut,
          failedBefore + other.failedBefore,
          stopped || other.stopped);
    }
  }

  /** A piece of the batch, done; its outcome is null where it was left out or stopped. */
  private record Piece(@Nullable Outcome outcome, Counts counts) {
    static final Piece STOPPED = new Piece(null, new Counts(0, 0, 0, 0, true));

    static Piece left(EstimatesFile.Status there) {
      boolean failed = there == EstimatesFile.Status.FAILED;
      return new Piece(null, new Counts(0, 0, failed ? 0 : 1, failed ? 1 : 0, false));
    }

    static Piece of(Outcome ended) {
      boolean failed = ended.error() != null;
      return new Piece(ended, new Counts(failed ? 0 : 1, failed ? 1 : 0, 0, 0, false));
    }
  }

  private interface Work {
    Estimate go() throws UserError;
  }

  /** The receiver of outcomes, called on the thread that runs the batch. */
  public interface Listener {
    /** Receives an outcome. */
    void ended(Outcome ended);

    /** Receives a line about a session that was opened. */
    void notice(String line);
  }

  /**
   * Runs the batch until it is done or stopped.
   *
   * @throws UserError if the file of lines can't be written, which ends all
   */
  public Counts run(Progress progress, Listener told) throws UserError {
    int parts = wanted.clips().size() + wanted.sessions().size();
    SharedProgress shared = new SharedProgress(progress, parts);
    Counts counts = Counts.NONE;
    int part = 0;
    for (Path session : wanted.sessions()) {
      Progress its = shared.part(part++, String.valueOf(session.getFileName()));
      counts = counts.plus(session(session, its, told));
    }
    List<Callable<Piece>> pieces = new ArrayList<>();
    for (Estimating.Clip clip : wanted.clips()) {
      Progress its = shared.part(part++, String.valueOf(clip.path().getFileName()));
      pieces.add(() -> clip(clip, its));
    }
    return counts.plus(all(pieces, told));
  }

  private Counts session(Path session, Progress progress, Listener told) throws UserError {
    Outcome whole = new Outcome(null, session.toString(), null, null, null, null, null);
    SessionFolder folder;
    try {
      folder = Sessions.open(session);
    } catch (UserError e) {
      return all(List.of(() -> refused(whole, e, progress)), told);
    }
    try (folder) {
      folder.notices().forEach(told::notice);
      List<Trial> trials = new ArrayList<>(folder.trials());
      trials.removeIf(each -> wanted.hand() != null && each.id().hand() != wanted.hand());
      trials.removeIf(each -> wanted.trial() != null && !wanted.trial().equals(each.id().name()));
      if (trials.isEmpty()) {
        UserError none = noTrial(folder);
        return all(List.of(() -> refused(whole, none, progress)), told);
      }
      SharedProgress shared = new SharedProgress(progress, trials.size());
      List<Callable<Piece>> pieces = new ArrayList<>();
      for (Trial trial : trials) {
        Progress its = shared.part(pieces.size(), trial.id().name());
        pieces.add(() -> trial(folder, trial, its));
      }
      return all(pieces, told);
    } catch (StoreException e) {
      return all(List.of(() -> refused(whole, e, progress)), told);
    }
  }

  private static UserError noTrial(SessionFolder folder) {
    return new UserError(
        folder.folder()
            + (folder.trials().isEmpty()
                ? " has no trial yet: add a clip with palmturn add"
                : " has no such trial"));
  }

  private Piece trial(SessionFolder folder, Trial trial, Progress progress) {
    TrialId id = trial.id();
    String clip = trial.clip().path();
    String session = folder.folder().toString();
    return done(
        new Outcome(clip, session, id, id.hand(), trial.clip().sha256(), null, null),
        progress,
        () -> estimating.trial(folder, id, wanted.asked(), progress));
  }

  private Piece clip(Estimating.Clip clip, Progress progress) {
    if (progress.stopped()) {
      return Piece.STOPPED;
    }
    return done(
        new Outcome(clip.path().toString(), null, null, clip.hand(), hash(clip.path()), null, null),
        progress,
        () -> estimating.clip(clip, wanted.asked(), progress));
  }

  private Piece refused(Outcome whole, UserError why, Progress progress) {
    return done(
        whole,
        progress,
        () -> {
          throw why;
        });
  }

  private static @Nullable String hash(Path clip) {
    try {
      return ClipHash.sha256(clip);
    } catch (IOException e) {
      // The estimate, which needs the same file, says what is wrong with it.
      return null;
    }
  }

  private Piece done(Outcome of, Progress progress, Work work) {
    if (progress.stopped()) {
      return Piece.STOPPED;
    }
    EstimatesFile.Status there =
        file == null ? EstimatesFile.Status.NOT : file.claim(of.identity());
    if (there != EstimatesFile.Status.NOT) {
      progress.at(1, "left out");
      return Piece.left(there);
    }
    try {
      return Piece.of(of.withEstimate(work.go()));
    } catch (UserError e) {
      return progress.stopped() ? Piece.STOPPED : failed(of, e, progress);
    } catch (RuntimeException | Error e) {
      return failed(of, unexpected(of, e), progress);
    }
  }

  private static Piece failed(Outcome of, UserError why, Progress progress) {
    progress.at(1, "failed");
    return Piece.of(of.withError(why));
  }

  private static UserError unexpected(Outcome of, Throwable cause) {
    return new UserError(
        "%s: something went wrong inside (%s): run again with --debug and report it"
            .formatted(of.clip(), cause),
        cause);
  }

  private Counts all(List<Callable<Piece>> pieces, Listener told) throws UserError {
    ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, wanted.jobs()));
    try {
      // What was handed on is not held any longer, so that a thousand need no more room than ten.
      CompletionService<Piece> coming = new ExecutorCompletionService<>(pool);
      pieces.forEach(coming::submit);
      Counts counts = Counts.NONE;
      for (int i = 0; i < pieces.size(); i++) {
        Piece done = coming.take().get();
        if (done.outcome() != null) {
          if (file != null) {
            file.add(done.outcome().jsonLine());
          }
          told.ended(done.outcome());
        }
        counts = counts.plus(done.counts());
      }
      return counts;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Piece.STOPPED.counts();
    } catch (ExecutionException e) {
      throw new IllegalStateException("a piece of work keeps its failure to itself", e);
    } finally {
      pool.shutdownNow();
    }
  }
}
