package palmturn.app;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Estimation;
import palmturn.app.desk.Question;
import palmturn.app.hints.Hint;
import palmturn.app.hints.Hints;
import palmturn.app.look.Look;
import palmturn.app.marking.Marking;
import palmturn.app.stage.EstimateLine;
import palmturn.app.stage.Stage;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** Which key does what; a key is named as it is shown, such as {@code F} or {@code Shift+→}. */
final class Keyboard {
  private static final int TEN = 10;

  private final Desk desk;
  private final Marking marking;
  private final Stage stage;
  private final Face face;
  private final StageKeys stageKeys;
  private final FastKeys fast;
  private final Map<String, Runnable> always = new HashMap<>();
  private final Map<String, Runnable> onTrial = new HashMap<>();
  private final Map<String, Runnable> onBoard = new HashMap<>();

  /** What keys ask of the window itself. */
  interface Face {
    void chooseSession();

    void chooseClips();

    void askDrill();

    void askReader();

    boolean boardFocused();

    boolean stageFocused();

    void focusStrip();

    void focusBoard();

    void redrawStrip();
  }

  Keyboard(Desk desk, Look look, Face face) {
    this.desk = desk;
    this.marking = desk.marking();
    this.stage = desk.stage();
    this.face = face;
    stageKeys = new StageKeys(desk);
    fast = new FastKeys(desk.fast(), this::zoom, stage);
    always.put("A", face::chooseClips);
    always.put("Ctrl+B", face::askDrill);
    always.put("Ctrl+R", face::askReader);
    always.put("O", face::chooseSession);
    always.put("Ctrl+O", face::chooseSession);
    always.put("Ctrl+T", () -> look.themeProperty().set(look.theme().other()));
    always.put("Ctrl++", look::larger);
    always.put("Ctrl+−", look::smaller);
    always.put("Ctrl+M", look::moveLessOrMore);
    always.put("?", () -> desk.ask(new Question.Keys()));
    always.put("Esc", this::escape);
    onBoard.put("←", () -> desk.board().move(-1, 0));
    onBoard.put("→", () -> desk.board().move(1, 0));
    onBoard.put("↑", () -> desk.board().move(0, -1));
    onBoard.put("↓", () -> desk.board().move(0, 1));
    onBoard.put("Enter", face::focusStrip);
    moves();
    marks();
  }

  /** Returns where the keyboard is, for the row of hints. */
  Hints.Place place() {
    if (desk.folderProperty().get() == null) {
      return Hints.Place.NOTHING_OPEN;
    }
    if (face.boardFocused()) {
      return Hints.Place.BOARD;
    }
    if (stage.framesProperty().get() == null) {
      return Hints.Place.NOT_FILMED;
    }
    if (stageKeys.placing()) {
      return Hints.Place.PLACES;
    }
    return desk.readOnlyProperty().get() ? Hints.Place.READ_ONLY : Hints.Place.TRIAL;
  }

  /** Returns what the estimate offers next, where something does not stand in its way. */
  EstimateLine.Offer offer() {
    Estimation estimation = desk.estimation();
    boolean idle = estimation.run().trialProperty().get() == null;
    Estimate made = estimation.found().estimateProperty().get();
    Reading reading = marking.readingProperty().get();
    boolean unmarked = reading == null || reading.slaps().isEmpty();
    if (place() != Hints.Place.TRIAL || !idle || estimation.found().hiddenProperty().get()) {
      return EstimateLine.Offer.NOTHING;
    }
    if (made == null) {
      return unmarked ? EstimateLine.Offer.ESTIMATE : EstimateLine.Offer.NOTHING;
    }
    return unmarked && !made.slaps().isEmpty()
        ? EstimateLine.Offer.START
        : EstimateLine.Offer.NOTHING;
  }

  /** Returns the keys that are valid now, the most wanted first. */
  List<Hint> hints() {
    List<Hint> now = fast.hints();
    if (!now.isEmpty()) {
      return now;
    }
    Estimation estimation = desk.estimation();
    List<Hint> first = new ArrayList<>();
    List<Hint> last = new ArrayList<>();
    if (place() == Hints.Place.TRIAL && !estimation.found().hiddenProperty().get()) {
      if (estimation.found().estimateProperty().get() == null) {
        first.add(Hints.ESTIMATE);
      } else {
        if (offer() == EstimateLine.Offer.START) {
          first.add(Hints.START);
        }
        last.add(Hints.HIDE);
      }
    }
    Reading reading = marking.readingProperty().get();
    if (place() == Hints.Place.TRIAL
        && reading != null
        && reading.slaps().stream().anyMatch(Keyboard::toLookAt)) {
      first.add(Hints.EVERY);
    }
    return Hints.at(place(), first, last);
  }

  private static boolean toLookAt(Slap slap) {
    return !slap.seen() || slap.zone() == Zone.UNKNOWN && slap.kind() == Slap.Kind.SLAP;
  }

  /** Does what a key stands for; returns whether it stands for anything here. */
  boolean press(String chord) {
    Question asked = desk.questionProperty().get();
    if (asked instanceof Question.Initials
        || asked instanceof Question.WhoReads
        || asked instanceof Question.Note
        || asked instanceof Question.Clips
        || asked instanceof Question.NewDrill) {
      if (chord.equals("Esc")) {
        desk.ask(null);
        return true;
      }
      return false;
    }
    if (asked != null && !chord.equals("Esc") && !chord.equals("Enter")) {
      desk.ask(null);
    }
    Runnable action = action(chord);
    if (action == null || asked != null && chord.equals("Enter")) {
      return false;
    }
    action.run();
    return true;
  }

  private @Nullable Runnable action(String chord) {
    if (!stageKeys.placing() && fast.takes(chord)) {
      return fast.action(chord);
    }
    if (face.boardFocused() && !stageKeys.placing() && onBoard.containsKey(chord)) {
      return onBoard.get(chord);
    }
    boolean open = stage.framesProperty().get() != null;
    Runnable ofStage = open ? stageKeys.action(chord, face.stageFocused()) : null;
    if (ofStage != null || stageKeys.placing() && !chord.equals("?")) {
      return ofStage;
    }
    if (open && onTrial.containsKey(chord)) {
      return onTrial.get(chord);
    }
    return always.get(chord);
  }

  private void escape() {
    if (desk.questionProperty().get() != null) {
      desk.ask(null);
    } else if (!marking.begunProperty().get().isEmpty()) {
      marking.giveUpSpans();
    } else if (desk.estimation().run().trialProperty().get() != null) {
      desk.estimation().run().stop();
    } else {
      desk.forgetTrouble();
    }
  }

  private void moves() {
    onTrial.put("←", () -> stage.step(-1));
    onTrial.put("→", () -> stage.step(1));
    onTrial.put("Ctrl+←", () -> stage.step(-TEN));
    onTrial.put("Ctrl+→", () -> stage.step(TEN));
    onTrial.put("PgUp", () -> stage.step(-TEN));
    onTrial.put("PgDn", () -> stage.step(TEN));
    onTrial.put("Shift+←", () -> neighbour(false));
    onTrial.put("Shift+→", () -> neighbour(true));
    onTrial.put("Home", stage::toStart);
    onTrial.put("End", stage::toEnd);
    onTrial.put("Space", stage::playOrStop);
    onTrial.put("[", stage::slower);
    onTrial.put("]", stage::faster);
    onTrial.put("+", () -> zoom(true));
    onTrial.put("−", () -> zoom(false));
    onTrial.put("T", desk.fast()::type);
    onTrial.put("C", desk.fast()::goThrough);
  }

  private void marks() {
    onTrial.put("F", () -> mark(() -> marking.mark(frame(), Side.PALM, false)));
    onTrial.put("J", () -> mark(() -> marking.mark(frame(), Side.BACK, false)));
    onTrial.put("D", () -> mark(() -> marking.mark(frame(), Side.PALM, true)));
    onTrial.put("K", () -> mark(() -> marking.mark(frame(), Side.BACK, true)));
    onTrial.put("1", () -> mark(() -> marking.zone(Zone.FINGERS)));
    onTrial.put("2", () -> mark(() -> marking.zone(Zone.WRIST)));
    onTrial.put("3", () -> mark(() -> marking.zone(Zone.EDGE)));
    onTrial.put("4", () -> mark(() -> marking.kind(Slap.Kind.DOUBLE)));
    onTrial.put("5", () -> desk.ask(new Question.More()));
    onTrial.put("P", () -> mark(() -> marking.kind(Slap.Kind.PART_TURN)));
    onTrial.put("X", () -> mark(() -> marking.missed(frame())));
    onTrial.put("N", () -> mark(this::note));
    onTrial.put("W", () -> mark(() -> marking.span(Span.Kind.BENT_WRIST, frame())));
    onTrial.put("E", () -> mark(() -> marking.span(Span.Kind.ELBOW_OUT, frame())));
    onTrial.put("R", () -> mark(() -> marking.span(Span.Kind.PAUSE, frame())));
    onTrial.put("G", () -> mark(() -> marking.span(Span.Kind.TARGET_MOVED, frame())));
    onTrial.put("Enter", () -> mark(this::finish));
    onTrial.put("L", desk.estimation()::estimate);
    onTrial.put("S", desk.estimation()::startFrom);
    onTrial.put("H", desk.estimation()::hideOrShow);
    onTrial.put("Del", () -> mark(marking::delete));
    onTrial.put("Alt+←", () -> mark(() -> nudge(-1)));
    onTrial.put("Alt+→", () -> mark(() -> nudge(1)));
    onTrial.put("Z", () -> mark(marking::undo));
    onTrial.put("Ctrl+Z", () -> mark(marking::undo));
    onTrial.put("Shift+Z", () -> mark(marking::redo));
    onTrial.put("Ctrl+Y", () -> mark(marking::redo));
  }

  private void mark(Runnable edit) {
    desk.mark(edit);
  }

  private void finish() {
    marking.finish();
    marking.frameOfUnseen().ifPresent(stage::seek);
  }

  private int frame() {
    return stage.frameProperty().get();
  }

  private void note() {
    if (marking.slapProperty().get() != null) {
      desk.ask(new Question.Note());
    }
  }

  private void nudge(int by) {
    marking.nudge(by);
    Slap moved = marking.slapProperty().get();
    var frames = stage.framesProperty().get();
    if (moved != null && frames != null) {
      stage.seek(frames.nearest(moved.timeS()));
    }
  }

  private void neighbour(boolean forward) {
    marking.frameOfNeighbour(frame(), forward).ifPresent(stage::seek);
  }

  private void zoom(boolean closer) {
    desk.strip().step(closer);
    face.redrawStrip();
  }

  /** Returns the name of what was pressed; empty for keys that have none here. */
  static String chord(KeyEvent event) {
    String written = written(event.getText());
    boolean letter = event.getCode().isLetterKey();
    String key = letter || written.isEmpty() ? named(event.getCode()) : written;
    if (key.isEmpty()) {
      return "";
    }
    boolean shift = event.isShiftDown() && (letter || written.isEmpty());
    return (event.isShortcutDown() || event.isControlDown() ? "Ctrl+" : "")
        + (event.isAltDown() ? "Alt+" : "")
        + (shift ? "Shift+" : "")
        + key;
  }

  /** Signs lie on other keys on other keyboards, so they go by what they write. */
  private static String written(String text) {
    return switch (text) {
      case "?" -> "?";
      case "+", "=" -> "+";
      case "-" -> "−";
      case "[", "<" -> "[";
      case "]", ">" -> "]";
      case ".", "," -> ".";
      default -> "";
    };
  }

  private static String named(KeyCode code) {
    return switch (code) {
      case LEFT, KP_LEFT -> "←";
      case RIGHT, KP_RIGHT -> "→";
      case UP, KP_UP -> "↑";
      case DOWN, KP_DOWN -> "↓";
      case PAGE_UP -> "PgUp";
      case PAGE_DOWN -> "PgDn";
      case HOME -> "Home";
      case END -> "End";
      case SPACE -> "Space";
      case ENTER -> "Enter";
      case ESCAPE -> "Esc";
      case DELETE, BACK_SPACE -> "Del";
      case PLUS, ADD, EQUALS -> "+";
      case MINUS, SUBTRACT -> "−";
      case F1 -> "?";
      case DIGIT0, NUMPAD0 -> "0";
      case DIGIT1, NUMPAD1 -> "1";
      case DIGIT2, NUMPAD2 -> "2";
      case DIGIT3, NUMPAD3 -> "3";
      case DIGIT4, NUMPAD4 -> "4";
      case DIGIT5, NUMPAD5 -> "5";
      case DIGIT6, NUMPAD6 -> "6";
      case DIGIT7, NUMPAD7 -> "7";
      case DIGIT8, NUMPAD8 -> "8";
      case DIGIT9, NUMPAD9 -> "9";
      case PERIOD, COMMA, DECIMAL -> ".";
      default -> code.isLetterKey() ? code.getName() : "";
    };
  }
}
