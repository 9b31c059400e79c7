package palmturn.app.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Board;
import palmturn.app.board.Cell;
import palmturn.app.board.FilmingOrder;
import palmturn.app.desk.Desk;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Prompts;
import palmturn.app.desk.Question;
import palmturn.app.desk.SessionOpener;
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
import palmturn.trial.UserError;
import palmturn.work.score.AthleteProgress;
import palmturn.work.score.Drills;
import palmturn.work.session.DrillTime;
import palmturn.work.session.Notes;

/** The growth of sessions: they begin, get clips and blocks, and are found again. */
public final class SessionFlow {
  private final Path settings;
  private final OpenSession session;
  private final SessionOpener opener;
  private final Board board;
  private final Prompts prompts;
  private final Tasks tasks;
  private final Clock clock;
  private final RecentSessions recents;
  private final Parts parts;
  private final Question.Clips clipsQuestion;
  private DrillForm drillForm = new DrillForm();

  /**
   * The places outside a session that the flow reads.
   *
   * @param settings the folder of the user's settings
   * @param seen remembers which messages were seen
   * @param probe looks into clips
   */
  public record Sources(
      Path settings, RecentSessions recents, SeenMessages seen, ClipProbe probe) {}

  private record Parts(
      Intake intake,
      ResumePoint resumePoint,
      Inbox inbox,
      ProgressModel progress,
      PaceLadders ladders,
      AthleteForm athleteForm) {}

  private SessionFlow(
      Path settings, Desk desk, RecentSessions recents, Tasks tasks, Clock clock, Parts parts) {
    this.settings = settings;
    session = desk.session();
    opener = desk.opener();
    board = desk.board();
    prompts = desk.prompts();
    this.recents = recents;
    this.tasks = tasks;
    this.clock = clock;
    this.parts = parts;
    clipsQuestion = new Question.Clips(parts.intake()::giveUp);
  }

  /**
   * Connects a flow to the parts of a desk.
   *
   * @param tasks runs what is slow
   * @param screen hands work to the screen's thread
   * @param clock tells the day
   */
  public static SessionFlow over(
      Desk desk, Sources sources, Tasks tasks, Executor screen, Clock clock) {
    OpenSession session = desk.session();
    Board board = desk.board();
    RecentSessions recents = sources.recents();
    desk.messages().setSeen(sources.seen());
    desk.opener().pending().setReaderGuess(recents::reader);
    ResumePoint resumePoint =
        new ResumePoint(
            session, board, desk.stage(), desk.prompts().notices(), recents, screen, clock);
    AthleteForm athleteForm = new AthleteForm(session, desk.stage(), board, desk.prompts());
    Inbox inbox =
        new Inbox(
            tasks, screen, recents, new InboxSessions(session, desk.opener(), sources.seen()));
    session
        .folderProperty()
        .addListener(
            (folder, before, now) -> {
              if (now != null) {
                inbox.hide();
              }
            });
    BoardPreviews previews = new BoardPreviews(board, tasks);
    session.folderProperty().addListener((folder, before, now) -> previews.follow(now));
    board.cellsProperty().addListener((cells, before, now) -> previews.preview());
    return new SessionFlow(
        sources.settings(),
        desk,
        recents,
        tasks,
        clock,
        new Parts(
            new Intake(tasks, screen, sources.probe()),
            resumePoint,
            inbox,
            new ProgressModel(
                tasks, open -> AthleteProgress.beside(sources.settings(), open, Progress.NONE)),
            new PaceLadders(tasks),
            athleteForm));
  }

  /** Clips that are about to be added. */
  public Intake intake() {
    return parts.intake();
  }

  /** The athlete's progress over sessions. */
  public ProgressModel progress() {
    return parts.progress();
  }

  /** The paces of extra trials to a click track. */
  public PaceLadders ladders() {
    return parts.ladders();
  }

  /** The facts about the athlete. */
  public AthleteForm athleteForm() {
    return parts.athleteForm();
  }

  /** The sessions that were sent in. */
  public Inbox inbox() {
    return parts.inbox();
  }

  /** The sessions that were opened last, the last first. */
  public ReadOnlyObjectProperty<List<RecentSessions.Entry>> recentsProperty() {
    return parts.resumePoint().allProperty();
  }

  /** Opens one of the last sessions; one that is gone is taken off the list. */
  public void open(RecentSessions.Entry recent) {
    if (Files.isDirectory(recent.folder())) {
      opener.open(recent.folder());
    } else {
      parts.resumePoint().forget(recent);
      prompts
          .notices()
          .warn(
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
      opener.open(paths.get(0));
    } else {
      ask(paths, null);
    }
  }

  /** Takes clips for the chosen place where that is still empty, else for the session. */
  public void chosen(List<Path> paths) {
    TrialId place = board.chosenProperty().get();
    boolean empty =
        session.folder() != null
            && board.chosenCell().map(cell -> cell.state() == Cell.State.NOT_FILMED).orElse(false);
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
      prompts
          .notices()
          .warn(
              String.format(
                  Locale.ROOT,
                  "%s hand %d is filmed already: drop the clip on an empty place, or beside the board",
                  place.hand().code(),
                  place.repeat()));
    } else {
      ask(paths, place);
    }
  }

  /** Adds the clips that were asked about. */
  public void add() {
    parts
        .intake()
        .add(
            new Intake.Receiver() {
              @Override
              public void added(SessionFolder folder, TrialId last, String problem) {
                prompts.questions().close();
                opener.show(folder, last, problem);
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
    prompts.questions().close();
  }

  /** Asks for the reader's initials, and shows that reader's marks. */
  public void askReader() {
    SessionFolder open = open();
    TrialId place = board.chosenProperty().get();
    if (open != null && place != null && !session.refusesEdits()) {
      prompts
          .questions()
          .ask(
              Question.Line.initials(
                  initials -> {
                    session.setReader(initials);
                    opener.show(open, place, "");
                  }));
    }
  }

  /** Returns the name of the block that the next drill begins. */
  public String nextBlock() {
    SessionFolder open = session.folder();
    int last =
        open == null
            ? 0
            : open.session().blocks().stream()
                .mapToInt(block -> Block.order(block.name()))
                .max()
                .orElse(0);
    return "after-" + (last + 1);
  }

  /** Asks for the drill that comes next. */
  public void askDrill() {
    SessionFolder open = open();
    if (open != null && !session.refusesEdits()) {
      DrillForm asked = new DrillForm();
      drillForm = asked;
      tasks.run(
          () -> Drills.library(settings, open.folder()),
          asked::offer,
          problem -> asked.setObstacle(String.valueOf(problem.getMessage())));
      prompts.questions().ask(Question.Page.NEW_DRILL);
    }
  }

  /** The next drill, as it is being typed. */
  public DrillForm drillForm() {
    return drillForm;
  }

  /** Returns the session that is open; null, with a notice, where none is. */
  private @Nullable SessionFolder open() {
    SessionFolder open = session.folder();
    if (open == null) {
      prompts.notices().warn(OpenSession.NONE);
    }
    return open;
  }

  /** Shows the athlete's progress over the open session and those beside it. */
  public void showProgress() {
    SessionFolder open = open();
    if (open != null && mayShowFigures("progress shows")) {
      parts.progress().load(open.folder());
      prompts.questions().ask(Question.Page.PROGRESS);
    }
  }

  /** Shows the paces of each hand's extra trials to a click track. */
  public void showLadder() {
    SessionFolder open = open();
    if (open != null && mayShowFigures("the paces show")) {
      parts.ladders().compute(open, settings);
      prompts.questions().ask(Question.Page.LADDER);
    }
  }

  private boolean mayShowFigures(String what) {
    boolean blind = session.hasToReadBlind();
    if (blind) {
      prompts
          .notices()
          .warn(what + " others’ figures: finish the trials that you read blind first");
    }
    return !blind;
  }

  /** Begins a block after the drill that was said, and goes to its first place to be filmed. */
  public void drill() {
    DrillForm asked = drillForm;
    SessionFolder open = session.folder();
    if (open == null || session.refusesEdits()) {
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
    prompts.questions().close();
    opener.show(open, FilmingOrder.trialsOf(block).get(0), "");
  }

  private void ask(List<Path> clips, @Nullable TrialId place) {
    SessionFolder open = session.folder();
    if (open != null && session.refusesEdits()) {
      return;
    }
    parts.intake().begin(clips, target(open, place), LocalDate.now(clock));
    prompts.questions().ask(clipsQuestion);
  }

  private Intake.Target target(@Nullable SessionFolder open, @Nullable TrialId place) {
    if (open == null) {
      return new Intake.Target(null, Block.BASELINE, null, Hand.RIGHT, Set.of());
    }
    TrialId next = board.nextToFilm();
    TrialId chosen = board.chosenProperty().get();
    TrialId near = place != null ? place : chosen != null ? chosen : next;
    String block = near == null ? Block.BASELINE : near.block();
    Hand guess =
        place != null
            ? place.hand()
            : next != null && next.block().equals(block) ? next.hand() : Hand.RIGHT;
    return new Intake.Target(open, block, place, guess, filmed());
  }

  private Set<TrialId> filmed() {
    return board.cellsProperty().get().stream()
        .filter(cell -> cell.state() != Cell.State.NOT_FILMED)
        .map(Cell::id)
        .collect(Collectors.toSet());
  }
}
