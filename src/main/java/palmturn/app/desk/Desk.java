package palmturn.app.desk;

import java.nio.file.Path;
import java.time.Clock;
import palmturn.app.board.Board;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.KeyBindings;
import palmturn.app.marking.MarkPass;
import palmturn.app.marking.Marking;
import palmturn.app.marking.Typing;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;
import palmturn.app.tally.Tally;

/**
 * The models of all panes and the services over the open session, wired by hand. Only who builds a
 * window holds it; every pane and service is handed its own parts.
 */
public final class Desk implements AutoCloseable {
  private final Prompts prompts;
  private final OpenSession session;
  private final SessionOpener opener;
  private final Board board = new Board();
  private final Stage stage;
  private final Marking marking;
  private final Strip strip;
  private final Tally tally = new Tally();
  private final ClipLoader loader;
  private final OpenReading reading;
  private final ReadingFigures figures;
  private final FastMarking fast;
  private final Estimation estimation;
  private final PlacesEditor places;
  private final SideEdits sideEdits;
  private final Review review;
  private final Pairing pairing;
  private final Messages messages;

  /**
   * Starts with nothing open.
   *
   * @param settings the folder of the user's settings, with drills and limits of their own
   * @param clock the time of saving
   * @param estimating makes estimates
   */
  public Desk(Path settings, Threads threads, Clock clock, EstimateRun estimating) {
    prompts = new Prompts(new Notices(), new Questions(), new KeyBindings());
    session =
        new OpenSession(new Saving(threads.writing(), clock, prompts.notices()), prompts.notices());
    marking = new Marking(clock);
    stage = new Stage(threads.screen());
    ShownEstimate estimate = new ShownEstimate();
    strip = new Strip(stage, marking, estimate);
    loader = new ClipLoader(threads.background(), session, stage, strip);
    sideEdits = new SideEdits(marking);
    MarkPass pass = new MarkPass(marking, new PassLoop(session, marking, stage, strip));
    // Before typing and the pass hear that the clip stands still: they may move marks then.
    SeenMarks seen = new SeenMarks(session, marking, stage, pass);
    Typing typing =
        new Typing(
            stage,
            marking,
            new TypingEvidence(session, loader, estimate, strip),
            strip.animation()::start);
    typing.activeProperty().addListener((active, before, now) -> strip.setTyping(now));
    stage.playingProperty().addListener((playing, before, now) -> leave(pass, now));
    review =
        new Review(
            session,
            loader,
            marking,
            stage,
            new DifferenceReview(
                threads.background(),
                threads.screen(),
                new DecisionBook(clock, session, board, prompts)),
            prompts);
    figures = new ReadingFigures(session, loader, marking, board, tally, review);
    reading =
        new OpenReading(
            session, loader, marking, stage, estimate, figures, seen, prompts.questions());
    estimation =
        new Estimation(
            session, reading, figures, estimating, estimate, marking, strip, pass, prompts);
    fast = new FastMarking(session, reading, marking, typing, pass, estimate, prompts.notices());
    places = new PlacesEditor(session, stage, estimate, sideEdits, prompts);
    messages = new Messages(threads, clock, session, stage, strip, board, sideEdits, prompts);
    pairing = new Pairing(threads, session, loader, stage, estimate, prompts);
    TrialOpener trials =
        new TrialOpener(
            session,
            loader,
            strip,
            new TrialOpener.Parts(estimation, places, reading, pairing, sideEdits, review),
            prompts.notices());
    opener = new SessionOpener(settings, threads.background(), session, trials, board, prompts);
    stage.frameProperty().addListener((frame, before, now) -> marking.chooseSlapOn(now.intValue()));
  }

  /** Leaves the slap that the keys are about once the person clicks elsewhere or steps. */
  private static void leave(MarkPass pass, boolean playing) {
    if (!playing) {
      pass.leave();
    }
  }

  /** Notices, questions and keys. */
  public Prompts prompts() {
    return prompts;
  }

  /** The open session. */
  public OpenSession session() {
    return session;
  }

  /** The opening and closing of sessions. */
  public SessionOpener opener() {
    return opener;
  }

  /** The trial board. */
  public Board board() {
    return board;
  }

  /** The picture. */
  public Stage stage() {
    return stage;
  }

  /** The marks. */
  public Marking marking() {
    return marking;
  }

  /** The beat strip. */
  public Strip strip() {
    return strip;
  }

  /** The live figures. */
  public Tally tally() {
    return tally;
  }

  /** The clip on the stage. */
  public ClipLoader loader() {
    return loader;
  }

  /** The reading on the stage. */
  public OpenReading reading() {
    return reading;
  }

  /** The figures of the reading on the stage. */
  public ReadingFigures figures() {
    return figures;
  }

  /** Typing along, and the pass through the marks. */
  public FastMarking fast() {
    return fast;
  }

  /** The estimate of the trial on the stage. */
  public Estimation estimation() {
    return estimation;
  }

  /** The places in the picture of the trial on the stage. */
  public PlacesEditor places() {
    return places;
  }

  /** Edits beside the marks, to be undone in their turn. */
  public SideEdits sideEdits() {
    return sideEdits;
  }

  /** The differences between two readings of the trial on the stage. */
  public Review review() {
    return review;
  }

  /** The trial on the stage and another one, side by side. */
  public Pairing pairing() {
    return pairing;
  }

  /** The messages between athlete and coach. */
  public Messages messages() {
    return messages;
  }

  /** Lets go of the session after its last mark is on disk. */
  @Override
  public void close() {
    opener.close();
  }
}
