package palmturn.app.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Board;
import palmturn.app.board.Cell;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;

/** Opens sessions, shows them on the board, and closes them after their last mark is on disk. */
public final class SessionOpener {
  private final Path settings;
  private final Tasks background;
  private final OpenSession session;
  private final TrialOpener trials;
  private final Board board;
  private final Prompts prompts;
  private final PendingSession pending;

  /**
   * Opens nothing yet.
   *
   * @param settings the folder of the user's settings
   * @param trials shows the chosen trial of the session
   */
  SessionOpener(
      Path settings,
      Tasks background,
      OpenSession session,
      TrialOpener trials,
      Board board,
      Prompts prompts) {
    this.settings = settings;
    this.background = background;
    this.session = session;
    this.trials = trials;
    this.board = board;
    this.prompts = prompts;
    pending = new PendingSession(prompts.questions(), session);
    board.chosenProperty().addListener((chosen, before, now) -> trials.open(now));
    session.saving().unsavedProperty().addListener((unsaved, before, now) -> offerNewReading(now));
  }

  /** The session that waits for its reader's initials. */
  public PendingSession pending() {
    return pending;
  }

  /** Opens a session; one that another window writes is opened read-only, with a notice. */
  public void open(Path path) {
    background.run(
        () -> LoadedSession.load(settings, path),
        loaded -> pending.receive(loaded, this::show),
        prompts.notices()::fail);
  }

  /**
   * Shows the open session, or another one, after trials were added.
   *
   * @param problem a notice; empty for none
   */
  public void show(SessionFolder grown, TrialId place, String problem) {
    show(new LoadedSession(grown, session.trials().limits(), ""));
    board.choose(place);
    prompts.notices().warn(problem);
  }

  /** Offers to save marks beside what another program has written into the session. */
  private void offerNewReading(@Nullable UnsavedMarks unsaved) {
    if (unsaved != null) {
      Reading marks = unsaved.marks();
      int count = marks.slaps().size() + marks.spans().size();
      prompts
          .questions()
          .ask(
              new Question.Consent(
                  "Another program changed this session",
                  String.format(
                      Locale.ROOT,
                      "%d %s of yours could not be saved. They can be saved as a reading of their own, beside what is there now.",
                      count,
                      count == 1 ? "mark" : "marks"),
                  "Not now",
                  "Save as a new reading",
                  () -> session.saving().keepBeside(unsaved, kept -> showKept(unsaved, kept))));
    }
  }

  private void showKept(UnsavedMarks unsaved, Reading kept) {
    session.setReader(kept.reader());
    show(unsaved.folder(), unsaved.trial(), "");
    prompts.notices().confirm("Saved beside the other program’s change, as " + kept.reader());
  }

  /** Lets go of the session after its last mark is on disk. */
  public void close() {
    pending.discard();
    trials.close();
    trials.forgetSteps();
    trials.stopEstimate();
    SessionFolder old = session.release();
    board.setTrials(List.of(), List.of());
    if (old != null) {
      session.saving().close(old);
    }
  }

  private void show(LoadedSession loaded) {
    SessionFolder now = loaded.folder();
    if (session.folder() != now) {
      close();
    } else {
      trials.close();
    }
    session.load(loaded);
    session.saving().forget();
    prompts.notices().warn(loaded.notice());
    session.announce(now);
    ScoredTrials scored = session.trials();
    List<Cell> cells = new ArrayList<>();
    scored.all().forEach(each -> cells.add(scored.cell(each, session.readers().shown(each))));
    TrialId before = board.chosenProperty().get();
    board.setTrials(now.session().blocks(), cells);
    if (before != null && before.equals(board.chosenProperty().get())) {
      trials.open(before);
    }
  }
}
