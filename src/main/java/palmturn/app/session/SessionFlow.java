package palmturn.app.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Cell;
import palmturn.app.board.FilmingOrder;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Pairing;
import palmturn.app.desk.Question;
import palmturn.app.inbox.Inbox;
import palmturn.app.progress.ProgressModel;
import palmturn.app.tasks.Tasks;
import palmturn.clip.Progress;
import palmturn.settings.RecentSessions;
import palmturn.settings.SeenMessages;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;
import palmturn.work.UserError;
import palmturn.work.score.AthleteProgress;
import palmturn.work.score.Drills;
import palmturn.work.session.DrillTime;
import palmturn.work.session.Notes;

/** How sessions begin, grow by clips and blocks, and are found again. */
public final class SessionFlow {
  private final Desk desk;
  private final Tasks tasks;
  private final Clock clock;
  private final Intake intake;
  private final ResumePoint resumePoint;
  private final Inbox inbox;
  private final RecentSessions recents;
  private final ProgressModel progress;
  private final PaceLadders ladders;
  private final AthleteForm athleteForm;
  private DrillForm drillForm = new DrillForm();

  /**
   * Connects itself to a desk.
   *
   * @param tasks runs what is slow
   * @param screen hands work to the screen's thread
   * @param clock tells the day
   * @param eyes looks into clips
   */
  public SessionFlow(
      Desk desk,
      RecentSessions recents,
      SeenMessages seen,
      Tasks tasks,
      Executor screen,
      Clock clock,
      ClipProbe eyes) {
    this.desk = desk;
    this.tasks = tasks;
    this.clock = clock;
    intake = new Intake(tasks, screen, eyes);
    this.recents = recents;
    desk.messages().setSeen(seen);
    resumePoint = new ResumePoint(desk, recents, screen, clock);
    ladders = new PaceLadders(tasks);
    athleteForm = new AthleteForm(desk);
    progress =
        new ProgressModel(
            tasks, session -> AthleteProgress.beside(desk.settings(), session, Progress.NONE));
    inbox =
        new Inbox(
            tasks,
            screen,
            recents,
            this::fromInbox,
            found -> seen.countUnseen(found.path(), found.messages()));
    desk.folderProperty()
        .addListener(
            (folder, before, now) -> {
              if (now != null) {
                inbox.hide();
              }
            });
    BoardPreviews looks = new BoardPreviews(desk.board(), tasks);
    desk.folderProperty().addListener((folder, before, now) -> looks.follow(now));
    desk.board().cellsProperty().addListener((cells, before, now) -> looks.preview());
    desk.questionProperty()
        .addListener(
            (question, before, now) -> {
              if (before instanceof Question.Clips && !(now instanceof Question.Clips)) {
                intake.giveUp();
              }
            });
  }

  /** Clips that are about to be added. */
  public Intake intake() {
    return intake;
  }

  /** What is known of the athlete from other sessions. */
  public ProgressModel progress() {
    return progress;
  }

  /** The paces of extra trials to a click track. */
  public PaceLadders ladders() {
    return ladders;
  }

  /** What is known of the athlete. */
  public AthleteForm athleteForm() {
    return athleteForm;
  }

  /** The sessions that were sent in. */
  public Inbox inbox() {
    return inbox;
  }

  private void fromInbox(Path session) {
    SessionFolder open = desk.folderProperty().get();
    if (open != null
        && open.folder()
            .toAbsolutePath()
            .normalize()
            .equals(session.toAbsolutePath().normalize())) {
      inbox.hide();
    } else {
      desk.open(session);
    }
  }

  /** The sessions that were opened last, the last first. */
  public ReadOnlyObjectProperty<List<RecentSessions.Entry>> recentsProperty() {
    return resumePoint.allProperty();
  }

  /** Opens one of the last sessions; one that is gone is taken off the list. */
  public void open(RecentSessions.Entry recent) {
    if (Files.isDirectory(recent.folder())) {
      desk.open(recent.folder());
    } else {
      resumePoint.forget(recent);
      desk.fail(
          recent.folder()
              + " is no longer there, and off the list; if it was moved, open it where it is now");
    }
  }

  /** Opens a dropped session, or asks about dropped clips. */
  public void dropped(List<Path> paths) {
    if (paths.isEmpty()) {
      return;
    }
    if (Files.isDirectory(paths.get(0))) {
      desk.open(paths.get(0));
    } else {
      ask(paths, null);
    }
  }

  /** Takes clips for the chosen place where that is still empty, else for the session. */
  public void chosen(List<Path> paths) {
    TrialId place = desk.board().chosenProperty().get();
    boolean empty =
        desk.folderProperty().get() != null
            && desk.board()
                .chosenCell()
                .map(cell -> cell.state() == Cell.State.NOT_FILMED)
                .orElse(false);
    if (empty && place != null && !paths.isEmpty()) {
      ask(paths, place);
    } else {
      dropped(paths);
    }
  }

  /** Takes clips that were dropped on a place of the board. */
  public void droppedOn(TrialId place, List<Path> paths) {
    if (paths.isEmpty() || Files.isDirectory(paths.get(0))) {
      dropped(paths);
    } else if (filmed().contains(place)) {
      desk.fail(
          "%s hand %d is filmed already: drop the clip on an empty place, or beside the board"
              .formatted(place.hand().code(), place.repeat()));
    } else {
      ask(paths, place);
    }
  }

  /** Adds the clips that were asked about. */
  public void add() {
    intake.add(
        new Intake.Receiver() {
          @Override
          public void added(SessionFolder folder, TrialId last, String problem) {
            desk.ask(null);
            desk.take(folder, last, problem);
          }

          @Override
          public void begun(Path folder, List<String> trials) {
            recents.startAdding(folder, trials);
          }

          @Override
          public void ended() {
            recents.finishAdding();
          }
        });
  }

  /** Lets go of what is asked. */
  public void giveUp() {
    desk.ask(null);
  }

  /** Asks who marks from now on, and shows that reader's marks. */
  public void askReader() {
    SessionFolder open = open();
    TrialId place = desk.board().chosenProperty().get();
    if (open != null && place != null && !desk.lookOnly()) {
      desk.ask(new Question.Initials(() -> desk.take(open, place, "")));
    }
  }

  /** Returns the name of the block that the next drill begins. */
  public String nextBlock() {
    SessionFolder open = desk.folderProperty().get();
    int last =
        open == null
            ? 0
            : open.session().blocks().stream()
                .mapToInt(block -> Block.order(block.name()))
                .max()
                .orElse(0);
    return "after-" + (last + 1);
  }

  /** Asks which drill comes next. */
  public void askDrill() {
    SessionFolder open = open();
    if (open != null && !desk.lookOnly()) {
      DrillForm asked = new DrillForm();
      drillForm = asked;
      tasks.run(
          () -> Drills.library(desk.settings(), open.folder()),
          asked::offer,
          problem -> asked.setObstacle(String.valueOf(problem.getMessage())));
      desk.ask(new Question.NewDrill());
    }
  }

  /** What is said about the next drill. */
  public DrillForm drillForm() {
    return drillForm;
  }

  /** Returns the session that is open; says that there is none. */
  private @Nullable SessionFolder open() {
    SessionFolder open = desk.folderProperty().get();
    if (open == null) {
      desk.fail(Pairing.NO_SESSION);
    }
    return open;
  }

  /** Shows the athlete's progress over the open session and those beside it. */
  public void showProgress() {
    SessionFolder open = open();
    if (open != null && mayShowFigures("progress shows")) {
      progress.load(open.folder());
      desk.ask(new Question.Progress());
    }
  }

  /** Shows the paces of each hand's extra trials to a click track. */
  public void showLadder() {
    SessionFolder open = open();
    if (open != null && mayShowFigures("the paces show")) {
      ladders.compute(open, desk.settings());
      desk.ask(new Question.Ladder());
    }
  }

  private boolean mayShowFigures(String what) {
    boolean blind = desk.hasToReadBlind();
    if (blind) {
      desk.fail(what + " others’ figures: finish the trials that you read blind first");
    }
    return !blind;
  }

  /** Begins a block after the drill that was said, and goes to its first place to be filmed. */
  public void drill() {
    DrillForm asked = drillForm;
    SessionFolder open = desk.folderProperty().get();
    if (open == null || desk.lookOnly()) {
      return;
    }
    DrillHand hand = asked.handProperty().get();
    if (hand == null) {
      asked.setObstacle("Say which hand the drill trained.");
      return;
    }
    String block = nextBlock();
    try {
      DrillTime time =
          DrillTime.read(
              asked.startProperty().get(),
              asked.endProperty().get(),
              open.session().date(),
              clock.getZone());
      Notes.drill(open, block, asked.code(), hand, asked.doseProperty().get().strip(), time);
    } catch (UserError e) {
      asked.setObstacle(String.valueOf(e.getMessage()));
      return;
    }
    desk.ask(null);
    desk.take(open, FilmingOrder.trialsOf(block).get(0), "");
  }

  private void ask(List<Path> clips, @Nullable TrialId place) {
    SessionFolder open = desk.folderProperty().get();
    if (open != null && desk.lookOnly()) {
      return;
    }
    intake.begin(clips, target(open, place), LocalDate.now(clock));
    desk.ask(new Question.Clips());
  }

  private Intake.Target target(@Nullable SessionFolder open, @Nullable TrialId place) {
    if (open == null) {
      return new Intake.Target(null, Block.BASELINE, null, Hand.RIGHT, Set.of());
    }
    TrialId next = desk.board().nextToFilm();
    TrialId chosen = desk.board().chosenProperty().get();
    TrialId near = place != null ? place : chosen != null ? chosen : next;
    String block = near == null ? Block.BASELINE : near.block();
    Hand guess =
        place != null
            ? place.hand()
            : next != null && next.block().equals(block) ? next.hand() : Hand.RIGHT;
    return new Intake.Target(open, block, place, guess, filmed());
  }

  private Set<TrialId> filmed() {
    return desk.board().cellsProperty().get().stream()
        .filter(cell -> cell.state() != Cell.State.NOT_FILMED)
        .map(Cell::id)
        .collect(Collectors.toSet());
  }
}
