package palmturn.app;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Estimation;
import palmturn.app.desk.Question;
import palmturn.app.hints.KeyHint;
import palmturn.app.hints.KeyHints;
import palmturn.app.inbox.Inbox;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.marking.Marking;
import palmturn.app.stage.EstimateBar;
import palmturn.app.stage.Stage;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** What keys do in the window; which key does it is told by the list of actions. */
final class Keyboard {
  /** With fewer slaps a reading is hardly done; five seconds have about twenty. */
  private static final int ENOUGH = 10;

  private static final Set<Action> ON_KEY_SHEET =
      EnumSet.of(
          Action.PRINT_KEYS,
          Action.THEME,
          Action.REDUCE_MOTION,
          Action.TEXT_LARGER,
          Action.TEXT_SMALLER);

  private final Desk desk;
  private final Marking marking;
  private final Stage stage;
  private final Face face;
  private final StageKeys stageKeys;
  private final FastKeys fast;
  private final InboxKeys inbox;
  private final PairKeys pair;
  private final DifferencesKeys differences;
  private final PendingMarks pendingMarks;
  private final Commands commands = new Commands();

  /** What keys ask of the window itself. */
  interface Face {
    void chooseSession();

    void chooseClips();

    void chooseInbox();

    void askDrill();

    void askReader();

    void showAthlete();

    void showProgress();

    void showLadder();

    boolean boardFocused();

    boolean stageFocused();

    void focusStrip();

    void openRecent(String number);

    void redrawStrip();

    boolean buttonFocused();

    void printKeys();

    Exporter exporter();
  }

  Keyboard(Desk desk, Inbox sent, Look look, Face face, Listeners follow) {
    this.desk = desk;
    this.marking = desk.marking();
    this.stage = desk.stage();
    this.face = face;
    stageKeys = new StageKeys(desk, commands);
    pendingMarks = new PendingMarks(stage, follow);
    new TrialKeys(desk, pendingMarks, face::redrawStrip, commands);
    fast = new FastKeys(desk.fast(), commands);
    pair = new PairKeys(desk.pairing(), commands);
    differences = new DifferencesKeys(desk.reviewing(), desk::forgetTrouble, commands);
    inbox = new InboxKeys(sent, face::chooseInbox, commands);
    commands.bind(Action.ADD, face::chooseClips);
    commands.bind(Action.DRILL, face::askDrill);
    commands.bind(Action.READER, face::askReader);
    commands.bind(Action.ATHLETE, face::showAthlete);
    commands.bind(Action.PROGRESS, face::showProgress);
    commands.bind(Action.LADDER, face::showLadder);
    commands.bind(Action.MESSAGES, desk.messages()::show);
    commands.bind(Action.OPEN, face::chooseSession);
    commands.bind(Action.RECENT, face::openRecent);
    commands.bind(Action.THEME, () -> look.themeProperty().set(look.theme().other()));
    commands.bind(Action.TEXT_LARGER, look::larger);
    commands.bind(Action.TEXT_SMALLER, look::smaller);
    commands.bind(Action.REDUCE_MOTION, look::toggleLessMotion);
    commands.bind(Action.ALL_KEYS, () -> desk.ask(new Question.Keys()));
    commands.bind(Action.PRINT_KEYS, face::printKeys);
    commands.bind(Action.REPORT, face.exporter()::writeReport);
    commands.bind(Action.REEL, face.exporter()::writeReel);
    commands.bind(Action.ESCAPE, this::escape);
    commands.bind(Action.BOARD_MOVE, this::onBoard);
    commands.bind(Action.TO_STRIP, face::focusStrip);
    commands.checkComplete();
  }

  /** Returns where the keyboard is, for the row of hints. */
  KeyHints.Context place() {
    if (desk.folderProperty().get() == null) {
      return KeyHints.Context.NOTHING_OPEN;
    }
    if (face.boardFocused()) {
      return KeyHints.Context.BOARD;
    }
    if (stage.framesProperty().get() == null) {
      return KeyHints.Context.NOT_FILMED;
    }
    if (stageKeys.placing()) {
      return KeyHints.Context.PLACES;
    }
    if (desk.readOnlyProperty().get()) {
      return KeyHints.Context.READ_ONLY;
    }
    Reading reading = marking.readingProperty().get();
    return reading != null && reading.finished()
        ? KeyHints.Context.FINISHED
        : KeyHints.Context.TRIAL;
  }

  /** Returns what the estimate offers next, where something does not stand in its way. */
  EstimateBar.Offer offer() {
    Estimation estimation = desk.estimation();
    boolean idle = estimation.run().trialProperty().get() == null;
    Estimate made = estimation.found().estimateProperty().get();
    Reading reading = marking.readingProperty().get();
    boolean unmarked = reading == null || reading.slaps().isEmpty();
    if (place() != KeyHints.Context.TRIAL || !idle || estimation.found().hiddenProperty().get()) {
      return EstimateBar.Offer.NOTHING;
    }
    if (made == null) {
      return unmarked ? EstimateBar.Offer.ESTIMATE : EstimateBar.Offer.NOTHING;
    }
    return unmarked && !made.slaps().isEmpty()
        ? EstimateBar.Offer.START
        : EstimateBar.Offer.NOTHING;
  }

  /** Returns the keys that are valid now, the most wanted first. */
  List<KeyHint> hints() {
    if (inbox.shown()) {
      return inbox.hints();
    }
    if (pair.active()) {
      return KeyHints.PAIR;
    }
    List<KeyHint> now = differences.open() ? differences.hints() : fast.hints();
    if (!now.isEmpty()) {
      return now;
    }
    Estimation estimation = desk.estimation();
    List<KeyHint> first = new ArrayList<>();
    List<KeyHint> last = new ArrayList<>();
    boolean hidden = estimation.found().hiddenProperty().get();
    // Who is to read blind is not reminded that there is something to see.
    if (place() == KeyHints.Context.TRIAL && !(hidden && desk.readsBlind())) {
      if (estimation.found().estimateProperty().get() == null) {
        first.add(KeyHints.ESTIMATE);
      } else {
        if (offer() == EstimateBar.Offer.START) {
          first.add(KeyHints.START);
        }
        last.add(hidden ? KeyHints.SHOW : KeyHints.HIDE);
        if (!hidden) {
          last.add(KeyHints.ESTIMATE_DETAILS);
        }
      }
    }
    Reading reading = marking.readingProperty().get();
    if (place() == KeyHints.Context.TRIAL
        && reading != null
        && reading.slaps().stream().anyMatch(Keyboard::toLookAt)) {
      first.add(KeyHints.GO_THROUGH);
    } else if (place() == KeyHints.Context.TRIAL
        && reading != null
        && reading.slaps().size() >= ENOUGH) {
      first.add(KeyHints.FINISH);
    }
    if (desk.reviewing().offeredProperty().get()) {
      last.add(KeyHints.COMPARE);
    }
    return KeyHints.at(place(), first, last);
  }

  private static boolean toLookAt(Slap slap) {
    return !slap.seen() || slap.zone() == Zone.UNKNOWN && slap.kind() == Slap.Kind.SLAP;
  }

  /** Does what a key stands for; returns whether it stands for anything here. */
  boolean press(String chord) {
    Question asked = desk.questionProperty().get();
    if (asked instanceof Question.Keys) {
      return onKeySheet(chord);
    }
    if (asked == null && pendingMarks.isWaiting()) {
      if (chord.equals("Esc")) {
        pendingMarks.clear();
        return true;
      }
      pendingMarks.runAfter(() -> press(chord));
      return true;
    }
    if (asked instanceof Question.Initials
        || asked instanceof Question.WhoReads
        || asked instanceof Question.Note
        || asked instanceof Question.Line
        || asked instanceof Question.Clips
        || asked instanceof Question.NewDrill
        || asked instanceof Question.Athlete
        || asked instanceof Question.EstimateSays
        || asked instanceof Question.Messages
        || asked instanceof Question.Progress) {
      if (chord.equals("Esc")) {
        desk.ask(null);
        return true;
      }
      return false;
    }
    if (asked != null && chord.equals("Esc")) {
      desk.ask(null);
      return true;
    }
    if (asked != null && !chord.equals("Enter")) {
      desk.ask(null);
    }
    Runnable action = action(chord);
    if (action == null || asked != null && chord.equals("Enter")) {
      return false;
    }
    action.run();
    return true;
  }

  /** Returns whether the next key is to become one of an action, whatever it is. */
  boolean waitsForKey() {
    return desk.questionProperty().get() instanceof Question.Keys
        && desk.keys().change().askingProperty().get();
  }

  private boolean onKeySheet(String chord) {
    boolean ofButton = face.buttonFocused() && (chord.equals("Enter") || chord.equals("Space"));
    if (ofButton && !waitsForKey()) {
      return false;
    }
    if (desk.keys().change().press(chord)) {
      return true;
    }
    Action action = desk.keys().map().actionFor(Where.WINDOW, chord).orElse(null);
    if (action == Action.ESCAPE || action == Action.ALL_KEYS) {
      desk.ask(null);
    } else if (action != null && ON_KEY_SHEET.contains(action)) {
      commands.command(Where.WINDOW, action, chord).run();
    }
    return action != null;
  }

  private @Nullable Runnable action(String chord) {
    for (Where here : where()) {
      Optional<Action> action = desk.keys().map().actionFor(here, chord);
      if (action.isPresent() && inbox.shown() && here == Where.WINDOW) {
        boolean ofAll = action.get() == Action.ALL_KEYS || ON_KEY_SHEET.contains(action.get());
        return ofAll ? commands.command(here, action.get(), chord) : null;
      }
      if (action.isPresent()) {
        return commands.command(here, action.get(), chord);
      }
    }
    return null;
  }

  /** Where the keyboard is, what takes a key first at the head. */
  private List<Where> where() {
    if (inbox.shown()) {
      return List.of(Where.INBOX, Where.WINDOW);
    }
    if (pair.active()) {
      return List.of(Where.PAIR);
    }
    if (differences.open()) {
      return List.of(differences.where());
    }
    if (stageKeys.placing()) {
      return List.of(Where.PLACES);
    }
    if (fast.passing()) {
      return List.of(Where.PASS);
    }
    List<Where> where = new ArrayList<>();
    add(where, Where.TYPING, fast.typing());
    add(where, Where.BOARD, face.boardFocused());
    boolean open = stage.framesProperty().get() != null;
    add(where, Where.PICTURE, open && face.stageFocused());
    add(where, Where.TRIAL, open);
    add(where, Where.START, desk.folderProperty().get() == null);
    add(where, Where.WINDOW, true);
    return where;
  }

  private static void add(List<Where> to, Where where, boolean holds) {
    if (holds) {
      to.add(where);
    }
  }

  private void onBoard(String arrow) {
    switch (arrow) {
      case "←" -> desk.board().move(-1, 0);
      case "→" -> desk.board().move(1, 0);
      case "↑" -> desk.board().move(0, -1);
      default -> desk.board().move(0, 1);
    }
  }

  private void escape() {
    if (desk.questionProperty().get() != null) {
      desk.ask(null);
    } else if (!marking.openSpansProperty().get().isEmpty()) {
      marking.cancelSpans();
    } else if (face.exporter().run().runningProperty().get()) {
      face.exporter().run().stop();
    } else if (desk.estimation().run().trialProperty().get() != null) {
      desk.estimation().run().stop();
    } else {
      desk.forgetTrouble();
    }
  }
}
