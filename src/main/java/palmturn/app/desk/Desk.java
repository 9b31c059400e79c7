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
 *
 * @param prompts notices, questions and keys
 * @param session the open session
 * @param opener opens and closes sessions
 * @param board the trial board
 * @param stage the picture
 * @param marking the marks
 * @param strip the beat strip
 * @param tally the live figures
 * @param loader the clip on the stage
 * @param reading the reading on the stage
 * @param figures the figures of that reading
 * @param fast typing along, and the pass through the marks
 * @param estimation the estimate of the trial on the stage
 * @param places the places in its picture
 * @param sideEdits edits beside the marks, to be undone in their turn
 * @param review the differences between two of its readings
 * @param pairing that trial and another one, side by side
 * @param messages the messages between athlete and coach
 */
public record Desk(
    Prompts prompts,
    OpenSession session,
    SessionOpener opener,
    Board board,
    Stage stage,
    Marking marking,
    Strip strip,
    Tally tally,
    ClipLoader loader,
    OpenReading reading,
    ReadingFigures figures,
    FastMarking fast,
    Estimation estimation,
    PlacesEditor places,
    SideEdits sideEdits,
    Review review,
    Pairing pairing,
    Messages messages)
    implements AutoCloseable {
  /**
   * Returns a desk with nothing open.
   *
   * @param settings the folder of the user's settings, with drills and limits of their own
   * @param clock the time of saving
   * @param estimating makes estimates
   */
  public static Desk of(Path settings, Threads threads, Clock clock, EstimateRun estimating) {
    Board board = new Board();
    Tally tally = new Tally();
    Prompts prompts = new Prompts(new Notices(), new Questions(), new KeyBindings());
    OpenSession session =
        new OpenSession(new Saving(threads.writing(), clock, prompts.notices()), prompts.notices());
    Marking marking = new Marking(clock);
    Stage stage = new Stage(threads.screen());
    ShownEstimate estimate = new ShownEstimate();
    Strip strip = new Strip(stage, marking, estimate);
    ClipLoader loader = new ClipLoader(threads.background(), session, stage, strip);
    SideEdits sideEdits = new SideEdits(marking);
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
    Review review =
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
    ReadingFigures figures = new ReadingFigures(session, loader, marking, board, tally, review);
    OpenReading reading =
        new OpenReading(
            session, loader, marking, stage, estimate, figures, seen, prompts.questions());
    Estimation estimation =
        new Estimation(
            session, reading, figures, estimating, estimate, marking, strip, pass, prompts);
    FastMarking fast =
        new FastMarking(session, reading, marking, typing, pass, estimate, prompts.notices());
    PlacesEditor places = new PlacesEditor(session, stage, estimate, sideEdits, prompts);
    Messages messages =
        new Messages(threads, clock, session, stage, strip, board, sideEdits, prompts);
    Pairing pairing = new Pairing(threads, session, loader, stage, estimate, prompts);
    TrialOpener trials =
        new TrialOpener(
            session,
            loader,
            strip,
            estimation,
            places,
            reading,
            pairing,
            sideEdits,
            review,
            prompts.notices());
    SessionOpener opener =
        new SessionOpener(settings, threads.background(), session, trials, board, prompts);
    stage.frameProperty().addListener((frame, before, now) -> marking.chooseSlapOn(now.intValue()));
    return new Desk(
        prompts,
        session,
        opener,
        board,
        stage,
        marking,
        strip,
        tally,
        loader,
        reading,
        figures,
        fast,
        estimation,
        places,
        sideEdits,
        review,
        pairing,
        messages);
  }

  /** Leaves the slap that the keys are about once the person clicks elsewhere or steps. */
  private static void leave(MarkPass pass, boolean playing) {
    if (!playing) {
      pass.leave();
    }
  }

  /** Lets go of the session after its last mark is on disk. */
  @Override
  public void close() {
    opener.close();
  }
}
