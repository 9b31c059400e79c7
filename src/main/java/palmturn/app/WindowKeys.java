package palmturn.app;

import palmturn.app.board.Board;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Estimation;
import palmturn.app.desk.FastMarking;
import palmturn.app.desk.Question;
import palmturn.app.desk.Questions;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.session.SessionFlow;

/**
 * The keyboard of a window and its hints.
 *
 * @param keyboard runs commands
 * @param hints names the keys that are valid
 */
record WindowKeys(Keyboard keyboard, CurrentHints hints) {
  /** The part of a window that keys act on. */
  interface Window {
    /** Lets the person choose a session folder, and opens it. */
    void chooseSession();

    /** Lets the person choose clips to add. */
    void chooseClips();

    /** Lets the person choose the inbox's folder. */
    void chooseInbox();

    /** Opens one of the last sessions; 1 is the last. */
    void openRecent(String number);

    /** Gives the focus to the strip, or to what stands in its place. */
    void focusStrip();

    /** Draws the strip again. */
    void redrawStrip();

    /** Prints the sheet of all keys. */
    void printKeys();

    /** Returns whether the board has the focus. */
    boolean boardFocused();

    /** Returns whether the picture has the focus. */
    boolean stageFocused();

    /** Returns whether a button has the focus. */
    boolean buttonFocused();
  }

  /** Binds all actions of a window to their commands. */
  static WindowKeys of(
      Desk desk, SessionFlow flow, Exporter exporter, Look look, Window window, Listeners follow) {
    Commands commands = new Commands();
    PendingMarks pending = new PendingMarks(desk.stage(), follow);
    ShownEstimate estimate = desk.estimation().shown();
    Questions questions = desk.prompts().questions();
    new StageKeys(desk.stage(), desk.places(), desk.marking(), estimate, commands);
    new TrialKeys(desk.marking(), desk.stage(), desk.strip(), window::redrawStrip, commands);
    new MarkingKeys(
        desk.marking(),
        desk.stage(),
        desk.reading(),
        desk.sideEdits(),
        questions,
        pending,
        commands);
    new PairKeys(desk.pairing(), commands);
    new DifferencesKeys(desk.review(), desk.prompts().notices()::clear, commands);
    FastKeys fast = new FastKeys(desk.fast(), commands);
    InboxKeys inbox = new InboxKeys(flow.inbox(), window::chooseInbox, commands);
    bindEstimate(desk.estimation(), desk.fast(), commands);
    bindSession(flow, window, commands);
    bindLook(look, commands);
    commands.bind(Action.MESSAGES, desk.messages()::show);
    commands.bind(Action.ALL_KEYS, () -> questions.ask(Question.Page.ALL_KEYS));
    commands.bind(Action.REPORT, exporter::writeReport);
    commands.bind(Action.REEL, exporter::writeReel);
    commands.bind(Action.BOARD_MOVE, arrow -> moveOn(desk.board(), arrow));
    EscapeKey escape =
        new EscapeKey(desk.prompts(), desk.marking(), exporter.run(), desk.estimation().run());
    commands.bind(Action.ESCAPE, escape::press);
    KeyboardFocus focus =
        new KeyboardFocus(
            desk.session(),
            desk.stage(),
            desk.marking(),
            new KeyboardFocus.Modes(
                flow.inbox(), desk.pairing().pair(), desk.review(), desk.places().placing(), fast),
            window::boardFocused,
            window::stageFocused);
    return new WindowKeys(
        new Keyboard(desk.prompts(), focus, pending, commands, window::buttonFocused),
        new CurrentHints(
            focus, desk.session(), desk.marking(), desk.estimation(), desk.review(), inbox, fast));
  }

  private static void bindEstimate(Estimation estimation, FastMarking fast, Commands commands) {
    commands.bind(Where.TRIAL, Action.ESTIMATE, estimation::estimate);
    commands.bind(Where.TRIAL, Action.START_FROM, estimation::startFrom);
    commands.bind(Action.ESTIMATE_DETAILS, estimation::showSummary);
    commands.bind(Action.TOGGLE_ESTIMATE, estimation::hideOrShow);
    commands.bind(Where.TRIAL, Action.TYPE_ALONG, fast::type);
    commands.bind(Where.TRIAL, Action.GO_THROUGH, fast::goThrough);
  }

  private static void bindSession(SessionFlow flow, Window window, Commands commands) {
    commands.bind(Action.ADD, window::chooseClips);
    commands.bind(Action.DRILL, flow::askDrill);
    commands.bind(Action.READER, flow::askReader);
    commands.bind(Action.ATHLETE, flow.athleteForm()::show);
    commands.bind(Action.PROGRESS, flow::showProgress);
    commands.bind(Action.LADDER, flow::showLadder);
    commands.bind(Action.OPEN, window::chooseSession);
    commands.bind(Action.RECENT, window::openRecent);
    commands.bind(Action.TO_STRIP, window::focusStrip);
    commands.bind(Action.PRINT_KEYS, window::printKeys);
  }

  private static void bindLook(Look look, Commands commands) {
    commands.bind(Action.THEME, () -> look.themeProperty().set(look.theme().other()));
    commands.bind(Action.TEXT_LARGER, look::larger);
    commands.bind(Action.TEXT_SMALLER, look::smaller);
    commands.bind(Action.REDUCE_MOTION, look::toggleLessMotion);
  }

  private static void moveOn(Board board, String arrow) {
    switch (arrow) {
      case "←" -> board.move(-1, 0);
      case "→" -> board.move(1, 0);
      case "↑" -> board.move(0, -1);
      default -> board.move(0, 1);
    }
  }
}
