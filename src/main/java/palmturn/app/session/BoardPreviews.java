package palmturn.app.session;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Board;
import palmturn.app.board.Cell;
import palmturn.app.board.ClipPreview;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.ClipSummary;

/** Previews of a session's clips on the board, made in the background. */
final class BoardPreviews {
  private final Board board;
  private final Tasks tasks;
  private final Set<TrialId> asked = new HashSet<>();
  private volatile @Nullable SessionFolder session;

  BoardPreviews(Board board, Tasks tasks) {
    this.board = board;
    this.tasks = tasks;
  }

  /** Follows another session; null when none is open. */
  void follow(@Nullable SessionFolder now) {
    session = now;
    asked.clear();
    board.clearPreviews();
    preview();
  }

  /** Previews the trials that are new on the board. */
  void preview() {
    SessionFolder from = session;
    List<TrialId> unseen =
        board.cellsProperty().get().stream()
            .filter(cell -> cell.state() != Cell.State.NOT_FILMED)
            .map(Cell::id)
            .filter(id -> !asked.contains(id))
            .toList();
    if (from == null || unseen.isEmpty()) {
      return;
    }
    Map<TrialId, Trial> trials = new HashMap<>();
    from.trials().forEach(trial -> trials.put(trial.id(), trial));
    for (TrialId id : unseen) {
      Trial trial = trials.get(id);
      if (trial != null) {
        asked.add(id);
        preview(from, trial);
      }
    }
  }

  private void preview(SessionFolder from, Trial trial) {
    Path clip = from.clipPath(trial);
    tasks.run(
        () -> session == from ? filmed(clip, trial) : null,
        seen -> {
          if (seen != null && session == from) {
            board.setPreview(trial.id(), seen);
          }
        },
        // Opening the trial says what is wrong with its clip.
        problem -> {});
  }

  private static ClipPreview filmed(Path clip, Trial trial) throws UserError {
    ClipSummary look = ClipSummary.of(clip, trial.fromS(), trial.toS(), 1, 0);
    double firstS = look.facts().firstS();
    double from = trial.fromS() == null ? firstS : Math.max(firstS, trial.fromS());
    double end = firstS + look.facts().durationS();
    double to = trial.toS() == null ? end : Math.min(end, trial.toS());
    return new ClipPreview(
        to - from,
        1 / look.facts().medianFrameS(),
        look.facts().warnings(),
        look.stills().isEmpty() ? null : look.stills().get(0));
  }
}
