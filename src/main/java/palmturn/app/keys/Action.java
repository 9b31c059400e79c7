package palmturn.app.keys;

import static palmturn.app.keys.Where.BOARD;
import static palmturn.app.keys.Where.DIFFERENCES;
import static palmturn.app.keys.Where.INBOX;
import static palmturn.app.keys.Where.NEW_MARK;
import static palmturn.app.keys.Where.PAIR;
import static palmturn.app.keys.Where.PASS;
import static palmturn.app.keys.Where.PICTURE;
import static palmturn.app.keys.Where.PLACES;
import static palmturn.app.keys.Where.START;
import static palmturn.app.keys.Where.TRIAL;
import static palmturn.app.keys.Where.TYPING;
import static palmturn.app.keys.Where.WINDOW;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Everything that a key can do; the dispatch, the row of hints, the sheet of all keys, its printed
 * page and the settings file are all made from this list.
 *
 * <p>To add a key: one line here, in the group and order in which it is to be listed, and one
 * {@code does} in {@code Keyboard} (or {@code StageKeys}, {@code FastKeys}, {@code PairKeys}) for
 * what it does.
 *
 * <p>A line holds the group, the name in the settings file, the keys as they come, words, and
 * where. The first key is shown and can be changed; more stand for the same until they are given to
 * something else. Without a name the keys are fixed, and all are shown: Esc, Enter and the arrows
 * where they move, digits that are typed, Tab, which the toolkit takes. Neighbours whose words
 * begin alike up to a colon share one line of the sheet.
 */
public enum Action {
  PALM(Group.MARK, "palm", "F", "palm slap at this frame", TRIAL, TYPING, PASS, NEW_MARK),
  BACK(Group.MARK, "back", "J", "back slap at this frame", TRIAL, TYPING, PASS, NEW_MARK),
  PALM_FAULT(Group.MARK, "palm-fault", "D", "faulty slap: palm", TRIAL, TYPING),
  BACK_FAULT(Group.MARK, "back-fault", "K", "faulty slap: back", TRIAL, TYPING),
  FINGERS(Group.MARK, "fingers", "1", "off centre: fingers", TRIAL, PASS, NEW_MARK),
  WRIST(Group.MARK, "wrist", "2", "off centre: wrist", TRIAL, PASS, NEW_MARK),
  EDGE(Group.MARK, "edge", "3", "off centre: edge", TRIAL, PASS, NEW_MARK),
  DOUBLE(Group.MARK, "double", "4", "double", TRIAL, PASS, NEW_MARK),
  PART_TURN(Group.MARK, "part-turn", "P", "part turn: turn cut short", TRIAL, PASS, NEW_MARK),
  MISSED(Group.MARK, "missed", "X", "missed: turn without contact", TRIAL, PASS, NEW_MARK),
  BENT_WRIST(Group.MARK, "bent-wrist", "W", "start or end: bent wrist", TRIAL),
  ELBOW_OUT(Group.MARK, "elbow-out", "E", "start or end: elbow out", TRIAL),
  OTHER_FAULT(Group.MARK, "other", "N", "other fault, in words", TRIAL),
  TARGET_MOVED(Group.MARK, "target-moved", "G", "start or end: target moved", TRIAL),
  PAUSE(Group.MARK, "pause", "R", "start or end: pause", TRIAL),
  MORE_MARKS(Group.MARK, "more", "5", "more marks", TRIAL),
  ESTIMATE(Group.MARK, "estimate", "L", "estimate this trial; again: stop", TRIAL),
  START_FROM(Group.MARK, "start-from", "S", "start from the estimate", TRIAL),
  ESTIMATE_DETAILS(Group.MARK, "estimate-says", "Shift+L", "estimate details", TRIAL, PASS),
  TOGGLE_ESTIMATE(Group.MARK, "hide", "H", "show or hide the estimate", TRIAL, PASS),
  TYPE_ALONG(Group.MARK, "type", "T", "type along; again: stop", TRIAL),
  GO_THROUGH(Group.MARK, "through", "C", "check every slap, one by one", TRIAL),
  CONFIRM(Group.MARK, "right", "Space", "while checking: correct, next", PASS),
  FINISH(Group.MARK, "finish", "Enter", "finish or reopen the reading", TRIAL),

  FRAME_BACK(Group.MOVE, "", "←", "one frame: back", TRIAL, PASS, NEW_MARK, PAIR),
  FRAME_ON(Group.MOVE, "", "→", "one frame: forward", TRIAL, PASS, NEW_MARK, PAIR),
  TEN_BACK(Group.MOVE, "ten-back", "Ctrl+← PgUp", "ten frames: back", TRIAL, PAIR),
  TEN_ON(Group.MOVE, "ten-on", "Ctrl+→ PgDn", "ten frames: forward", TRIAL, PAIR),
  SLAP_BEFORE(Group.MOVE, "slap-before", "Shift+←", "slap: previous", TRIAL, PASS, PAIR),
  SLAP_NEXT(Group.MOVE, "slap-next", "Shift+→", "slap: next", TRIAL, PASS, PAIR),
  FIRST(Group.MOVE, "first", "Home", "frame: first", TRIAL, PAIR),
  LAST(Group.MOVE, "last", "End", "frame: last", TRIAL, PAIR),
  PLAY(Group.MOVE, "play", "Space", "play or stop", TRIAL, DIFFERENCES, PAIR),
  SLOWER(Group.MOVE, "slower", "[", "playback: slower", TRIAL, PASS, DIFFERENCES, PAIR),
  FASTER(Group.MOVE, "faster", "]", "playback: faster", TRIAL, PASS, DIFFERENCES, PAIR),
  CLOSER(Group.MOVE, "closer", "+", "strip: zoom in", TRIAL, PASS),
  WIDER(Group.MOVE, "wider", "−", "strip: zoom out", TRIAL, PASS),
  TAB(Group.MOVE, "", "Tab", "next pane: board, picture, strip"),
  BOARD_MOVE(Group.MOVE, "", "← → ↑ ↓", "move on the board", BOARD),
  TO_STRIP(Group.MOVE, "", "Enter", "from the board to the strip", BOARD),
  INBOX_SHOW(Group.MOVE, "inbox", "Ctrl+I", "open or leave the inbox", WINDOW, INBOX),
  INBOX_MOVE(Group.UNLISTED, "", "↑ ↓", "in the inbox: move", INBOX),
  INBOX_FAR(Group.UNLISTED, "", "PgUp PgDn Home End", "in the inbox: move far", INBOX),
  INBOX_OPEN(Group.UNLISTED, "", "Enter", "in the inbox: open", INBOX),
  INBOX_FOLDER(Group.UNLISTED, "", "O", "in the inbox: choose a folder", INBOX),
  INBOX_AGAIN(Group.UNLISTED, "", "R", "in the inbox: search again", INBOX),
  INBOX_STOP(Group.UNLISTED, "", "S", "in the inbox: stop searching", INBOX),
  INBOX_LEAVE(Group.UNLISTED, "", "Esc", "in the inbox: back", INBOX),
  RECENT(Group.MOVE, "", "1 2 3 4 5 6 7 8 9", "open a recent session", START),

  ZOOM_TO_HANDS(
      Group.PICTURE, "hands", "V", "zoom to the hands and back", TRIAL, PASS, PLACES, PAIR),
  LARGER(Group.PICTURE, "larger", "+", "picture: zoom in", PICTURE, PLACES, PAIR),
  SMALLER(Group.PICTURE, "smaller", "−", "picture: zoom out", PICTURE, PLACES, PAIR),
  WHOLE_PICTURE(Group.PICTURE, "whole", "0", "whole picture", TRIAL, PASS, PAIR),
  PAN(Group.PICTURE, "", "Alt+← Alt+→ Alt+↑ Alt+↓", "move the zoomed picture", PICTURE),
  PREVIOUS_FRAME(Group.PICTURE, "ghost", "B", "overlay the previous frame", TRIAL, PASS),
  TOGGLE_OVERLAY(
      Group.PICTURE, "drawn", "U", "show or hide the drawing on it", TRIAL, PASS, PLACES),
  LOOP_SLAP(Group.PICTURE, "loop-slap", "Y", "loop: last slap", TRIAL, PAIR),
  LOOP_TRIAL(Group.PICTURE, "loop-trial", "Shift+Y", "loop: trial", TRIAL),
  SET_PLACES(Group.PICTURE, "point", "Q", "set places in the picture", TRIAL, PLACES),

  BOTH_HANDS(Group.PAIR, "both-hands", "Ctrl+H", "side by side; again: back", WINDOW, PAIR),
  PAIR_PACE(Group.PAIR, "same-pace", "T", "same pace or real time", PAIR),
  PAIR_OTHER(Group.PAIR, "", "↑ ↓", "choose the other trial", PAIR),
  PAIR_EARLIER(Group.PAIR, "earlier-meets", "Alt+←", "align with slap: earlier", PAIR),
  PAIR_LATER(Group.PAIR, "later-meets", "Alt+→", "align with slap: later", PAIR),
  PAIR_MIRROR(Group.PAIR, "mirror", "M", "mirror the other picture", PAIR),
  PAIR_LEAVE(Group.UNLISTED, "", "Esc", "back to the trial", PAIR),

  PLACE_HAND(Group.PLACES, "", "H", "draw: hand", PLACES),
  PLACE_SCALE(Group.PLACES, "", "S", "draw: scale", PLACES),
  PLACE_ELBOW(Group.PLACES, "", "E", "point at: elbow", PLACES),
  PLACE_TRUNK(Group.PLACES, "", "T", "point at: trunk", PLACES),
  PLACE_TARGET(Group.PLACES, "", "P", "point at: target", PLACES),
  PLACE_MOVE(Group.PLACES, "", "← → ↑ ↓", "move it (with Shift by ten)", PLACES),
  PLACE_FAR(Group.UNLISTED, "", "Shift+← Shift+→ Shift+↑ Shift+↓", "move it by ten", PLACES),
  PLACE_SIZE(Group.PLACES, "", "Alt+← Alt+→ Alt+↑ Alt+↓", "resize it", PLACES),
  PLACE_SIZE_FAR(
      Group.UNLISTED,
      "",
      "Alt+Shift+← Alt+Shift+→ Alt+Shift+↑ Alt+Shift+↓",
      "resize it by ten",
      PLACES),
  PLACE_LENGTH(Group.UNLISTED, "", "0 1 2 3 4 5 6 7 8 9 .", "type the scale's length", PLACES),
  PLACE_FRAME(Group.PLACES, "", "PgUp PgDn", "previous, next frame", PLACES),
  PLACE_KEEP(Group.PLACES, "", "Enter", "save them", PLACES),
  PLACE_LEAVE(Group.UNLISTED, "", "Esc", "cancel", PLACES),

  COMPARE(Group.DIFFERENCES, "compare", "I", "differences; again: back", TRIAL, DIFFERENCES),
  UPPER(Group.DIFFERENCES, "", "↑", "correct reading: upper", DIFFERENCES),
  LOWER(Group.DIFFERENCES, "", "↓", "correct reading: lower", DIFFERENCES),
  LEAVE_OPEN(Group.DIFFERENCES, "", "→", "leave it open, next", DIFFERENCES),
  GO_BACK(Group.DIFFERENCES, "", "←", "previous", DIFFERENCES),
  MARK_NEW(Group.DIFFERENCES, "mark-afresh", "M", "neither: make a new mark", DIFFERENCES),
  KEEP_NEW_MARK(Group.UNLISTED, "", "Enter", "save the new mark", NEW_MARK),
  GIVE_REASON(Group.DIFFERENCES, "why", "C", "give a reason", DIFFERENCES),
  OTHER_PAIR(Group.DIFFERENCES, "other-pair", "P", "compare another pair", DIFFERENCES),
  CONFIRM_SETTLED(Group.UNLISTED, "", "Enter", "mark it settled", DIFFERENCES),

  NUDGE_BACK(Group.CHANGE, "nudge-back", "Alt+←", "move the mark: earlier", TRIAL, PASS),
  NUDGE_ON(Group.CHANGE, "nudge-on", "Alt+→", "move the mark: later", TRIAL, PASS),
  DELETE(
      Group.CHANGE,
      "delete",
      "Del",
      "delete the current mark",
      TRIAL,
      PASS,
      PLACES,
      DIFFERENCES,
      NEW_MARK),
  UNDO(Group.CHANGE, "undo", "Z Ctrl+Z", "undo", WINDOW, PASS, PLACES, DIFFERENCES),
  REDO(Group.CHANGE, "redo", "Shift+Z Ctrl+Y", "redo", WINDOW, PASS, PLACES, DIFFERENCES),
  ESCAPE(Group.CHANGE, "", "Esc", "cancel, stop, close", WINDOW),
  LEAVE(Group.UNLISTED, "", "Esc", "leave", PASS, DIFFERENCES, NEW_MARK),
  STOP_TYPING(Group.UNLISTED, "", "Enter Esc", "stop typing along", TYPING),
  ADD(Group.CHANGE, "add", "A", "add clips", WINDOW),
  OPEN(Group.CHANGE, "open", "O Ctrl+O", "open a session", WINDOW),
  ATHLETE(Group.CHANGE, "athlete", "Ctrl+A", "athlete details", WINDOW),
  DRILL(Group.CHANGE, "drill", "Ctrl+B", "add a drill and its block", WINDOW),
  READER(Group.CHANGE, "reader", "Ctrl+R", "change the reader", WINDOW, DIFFERENCES),
  MESSAGES(Group.CHANGE, "messages", "M", "read or write messages", WINDOW),
  PROGRESS(Group.CHANGE, "progress", "Ctrl+G", "progress over sessions", WINDOW),
  LADDER(Group.CHANGE, "ladder", "Ctrl+K", "pace ladder, click tracks", WINDOW),
  REPORT(Group.CHANGE, "report", "Ctrl+E", "write the report", WINDOW),
  REEL(Group.CHANGE, "reel", "Ctrl+L", "write the trial's reel", TRIAL),
  THEME(Group.CHANGE, "theme", "Ctrl+T", "light or dark", Where.LOOK),
  REDUCE_MOTION(Group.CHANGE, "motion", "Ctrl+M", "reduced motion, on or off", Where.LOOK),
  TEXT_LARGER(Group.CHANGE, "text-larger", "Ctrl++", "text: larger", Where.LOOK),
  TEXT_SMALLER(Group.CHANGE, "text-smaller", "Ctrl+−", "text: smaller", Where.LOOK),
  ALL_KEYS(
      Group.CHANGE,
      "keys",
      "?",
      "show or change all keys",
      WINDOW,
      PASS,
      PLACES,
      DIFFERENCES,
      NEW_MARK,
      PAIR),
  PRINT_KEYS(Group.CHANGE, "print-keys", "Ctrl+P", "print all keys", WINDOW);

  /** A heading in the list of all keys. */
  public enum Group {
    MARK("Mark"),
    MOVE("Move"),
    PICTURE("Picture"),
    PAIR("Both hands"),
    PLACES("While setting places"),
    DIFFERENCES("Differences"),
    CHANGE("Change"),
    /** Listed with another action, or not at all. */
    UNLISTED("");

    private final String words;

    Group(String words) {
      this.words = words;
    }

    /** Returns the heading. */
    public String words() {
      return words;
    }
  }

  private final Group group;
  private final String code;
  private final List<String> chords;
  private final String words;
  private final List<Where> contexts;

  Action(Group group, String code, String chords, String words, Where... where) {
    this(group, code, chords, words, List.of(where));
  }

  Action(Group group, String code, String chords, String words, List<Where> contexts) {
    this.group = group;
    this.code = code;
    this.chords = List.of(chords.split(" "));
    this.words = words;
    this.contexts = contexts;
  }

  /** Returns the action with a name in the settings file. */
  static Optional<Action> withCode(String code) {
    return Stream.of(values()).filter(each -> !each.fixed() && each.code.equals(code)).findFirst();
  }

  /** Returns under which heading it is listed. */
  public Group group() {
    return group;
  }

  /** Returns its name in the settings file; empty for one whose keys are fixed. */
  String code() {
    return code;
  }

  /** Returns its keys as they come. */
  List<String> chords() {
    return chords;
  }

  /** Returns what it does. */
  public String words() {
    return words;
  }

  /** Returns where it can be done. */
  public List<Where> contexts() {
    return contexts;
  }

  /** Returns whether its keys stay as they are. */
  public boolean fixed() {
    return code.isEmpty();
  }

  boolean overlaps(Action other) {
    return contexts.stream().anyMatch(here -> other.contexts.stream().anyMatch(here::overlaps));
  }
}
