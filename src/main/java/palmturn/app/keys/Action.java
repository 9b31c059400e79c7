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
  PALM_FAULT(Group.MARK, "palm-fault", "D", "with a fault: palm", TRIAL, TYPING),
  BACK_FAULT(Group.MARK, "back-fault", "K", "with a fault: back", TRIAL, TYPING),
  FINGERS(Group.MARK, "fingers", "1", "off centre: fingers", TRIAL, PASS, NEW_MARK),
  WRIST(Group.MARK, "wrist", "2", "off centre: wrist", TRIAL, PASS, NEW_MARK),
  EDGE(Group.MARK, "edge", "3", "off centre: edge", TRIAL, PASS, NEW_MARK),
  DOUBLE(Group.MARK, "double", "4", "double", TRIAL, PASS, NEW_MARK),
  PART_TURN(Group.MARK, "part-turn", "P", "part turn, cut short", TRIAL, PASS, NEW_MARK),
  MISSED(Group.MARK, "missed", "X", "missed: a turn without contact", TRIAL, PASS, NEW_MARK),
  OTHER_FAULT(Group.MARK, "other", "N", "other fault, in words", TRIAL),
  BENT_WRIST(Group.MARK, "bent-wrist", "W", "begin, end: bent wrist", TRIAL),
  ELBOW_OUT(Group.MARK, "elbow-out", "E", "begin, end: elbow out", TRIAL),
  TARGET_MOVED(Group.MARK, "target-moved", "G", "begin or end: target moved", TRIAL),
  PAUSE(Group.MARK, "pause", "R", "begin or end: pause", TRIAL),
  MORE_MARKS(Group.MARK, "more", "5", "the rarer marks", TRIAL),
  ESTIMATE(Group.MARK, "estimate", "L", "have this trial estimated; again: stop", TRIAL),
  START_FROM(Group.MARK, "start-from", "S", "start from the estimate", TRIAL),
  ESTIMATE_DETAILS(Group.MARK, "estimate-says", "Shift+L", "what the estimate says", TRIAL, PASS),
  TOGGLE_ESTIMATE(Group.MARK, "hide", "H", "hide the estimate, or show it", TRIAL, PASS),
  TYPE_ALONG(Group.MARK, "type", "T", "type along; again: stop", TRIAL),
  GO_THROUGH(Group.MARK, "through", "C", "go through the marks, every slap", TRIAL),
  CONFIRM(Group.MARK, "right", "Space", "in the pass: right as it is, next", PASS),
  FINISH(Group.MARK, "finish", "Enter", "reading finished, or open again", TRIAL),

  FRAME_BACK(Group.MOVE, "", "←", "one frame: back", TRIAL, PASS, NEW_MARK, PAIR),
  FRAME_ON(Group.MOVE, "", "→", "one frame: on", TRIAL, PASS, NEW_MARK, PAIR),
  TEN_BACK(Group.MOVE, "ten-back", "Ctrl+← PgUp", "ten frames: back", TRIAL, PAIR),
  TEN_ON(Group.MOVE, "ten-on", "Ctrl+→ PgDn", "ten frames: on", TRIAL, PAIR),
  SLAP_BEFORE(Group.MOVE, "slap-before", "Shift+←", "slap: before", TRIAL, PASS, PAIR),
  SLAP_NEXT(Group.MOVE, "slap-next", "Shift+→", "slap: next", TRIAL, PASS, PAIR),
  FIRST(Group.MOVE, "first", "Home", "frame: first", TRIAL, PAIR),
  LAST(Group.MOVE, "last", "End", "frame: last", TRIAL, PAIR),
  PLAY(Group.MOVE, "play", "Space", "play and stop", TRIAL, DIFFERENCES, PAIR),
  SLOWER(Group.MOVE, "slower", "[", "play: slower", TRIAL, PASS, DIFFERENCES, PAIR),
  FASTER(Group.MOVE, "faster", "]", "play: faster", TRIAL, PASS, DIFFERENCES, PAIR),
  CLOSER(Group.MOVE, "closer", "+", "strip: closer", TRIAL, PASS),
  WIDER(Group.MOVE, "wider", "−", "strip: wider", TRIAL, PASS),
  TAB(Group.MOVE, "", "Tab", "board, picture, strip"),
  BOARD_MOVE(Group.MOVE, "", "← → ↑ ↓", "move on the board", BOARD),
  TO_STRIP(Group.MOVE, "", "Enter", "from the board to the strip", BOARD),
  INBOX_SHOW(Group.MOVE, "inbox", "Ctrl+I", "inbox, and back", WINDOW, INBOX),
  INBOX_MOVE(Group.UNLISTED, "", "↑ ↓", "in the inbox: move", INBOX),
  INBOX_FAR(Group.UNLISTED, "", "PgUp PgDn Home End", "in the inbox: move far", INBOX),
  INBOX_OPEN(Group.UNLISTED, "", "Enter", "in the inbox: open", INBOX),
  INBOX_FOLDER(Group.UNLISTED, "", "O", "in the inbox: choose a folder", INBOX),
  INBOX_AGAIN(Group.UNLISTED, "", "R", "in the inbox: search again", INBOX),
  INBOX_STOP(Group.UNLISTED, "", "S", "in the inbox: stop searching", INBOX),
  INBOX_LEAVE(Group.UNLISTED, "", "Esc", "in the inbox: back", INBOX),
  RECENT(Group.MOVE, "", "1 2 3 4 5 6 7 8 9", "one of the last sessions", START),

  ZOOM_TO_HANDS(Group.PICTURE, "hands", "V", "hands, whole picture", TRIAL, PASS, PLACES, PAIR),
  LARGER(Group.PICTURE, "larger", "+", "in the picture: larger", PICTURE, PLACES, PAIR),
  SMALLER(Group.PICTURE, "smaller", "−", "in the picture: smaller", PICTURE, PLACES, PAIR),
  WHOLE_PICTURE(Group.PICTURE, "whole", "0", "whole picture", TRIAL, PASS, PAIR),
  PAN(Group.PICTURE, "", "Alt+← Alt+→ Alt+↑ Alt+↓", "move about in it", PICTURE),
  PREVIOUS_FRAME(Group.PICTURE, "ghost", "B", "frame before shines through", TRIAL, PASS),
  TOGGLE_OVERLAY(Group.PICTURE, "drawn", "U", "drawing on the picture", TRIAL, PASS, PLACES),
  LOOP_SLAP(Group.PICTURE, "loop-slap", "Y", "loop: last slap", TRIAL, PAIR),
  LOOP_TRIAL(Group.PICTURE, "loop-trial", "Shift+Y", "loop: trial", TRIAL),
  SET_PLACES(Group.PICTURE, "point", "Q", "point at places, or leave them", TRIAL, PLACES),

  BOTH_HANDS(Group.PAIR, "both-hands", "Ctrl+H", "both at once; again: back", WINDOW, PAIR),
  PAIR_PACE(Group.PAIR, "same-pace", "T", "same pace, or real time", PAIR),
  PAIR_OTHER(Group.PAIR, "", "↑ ↓", "another trial beside", PAIR),
  PAIR_EARLIER(Group.PAIR, "earlier-meets", "Alt+←", "slap that meets: earlier", PAIR),
  PAIR_LATER(Group.PAIR, "later-meets", "Alt+→", "slap that meets: later", PAIR),
  PAIR_MIRROR(Group.PAIR, "mirror", "M", "mirror the other picture", PAIR),
  PAIR_LEAVE(Group.UNLISTED, "", "Esc", "back to the trial", PAIR),

  PLACE_HAND(Group.PLACES, "", "H", "set: hand", PLACES),
  PLACE_ELBOW(Group.PLACES, "", "E", "set: elbow", PLACES),
  PLACE_TRUNK(Group.PLACES, "", "T", "set the: trunk", PLACES),
  PLACE_SCALE(Group.PLACES, "", "S", "set the: scale", PLACES),
  PLACE_TARGET(Group.PLACES, "", "P", "set the: target", PLACES),
  PLACE_MOVE(Group.PLACES, "", "← → ↑ ↓", "move it; ten with Shift", PLACES),
  PLACE_FAR(Group.UNLISTED, "", "Shift+← Shift+→ Shift+↑ Shift+↓", "move it ten", PLACES),
  PLACE_SIZE(Group.PLACES, "", "Alt+← Alt+→ Alt+↑ Alt+↓", "its size", PLACES),
  PLACE_SIZE_FAR(
      Group.UNLISTED,
      "",
      "Alt+Shift+← Alt+Shift+→ Alt+Shift+↑ Alt+Shift+↓",
      "its size by ten",
      PLACES),
  PLACE_LENGTH(Group.UNLISTED, "", "0 1 2 3 4 5 6 7 8 9 .", "the scale's length", PLACES),
  PLACE_FRAME(Group.PLACES, "", "PgUp PgDn", "one frame", PLACES),
  PLACE_KEEP(Group.PLACES, "", "Enter", "keep them", PLACES),
  PLACE_LEAVE(Group.UNLISTED, "", "Esc", "leave them as they were", PLACES),

  COMPARE(Group.DIFFERENCES, "compare", "I", "differences; again: back", TRIAL, DIFFERENCES),
  UPPER(Group.DIFFERENCES, "", "↑", "is right: the upper", DIFFERENCES),
  LOWER(Group.DIFFERENCES, "", "↓", "is right: the lower", DIFFERENCES),
  LEAVE_OPEN(Group.DIFFERENCES, "", "→", "leave it open, go on", DIFFERENCES),
  GO_BACK(Group.DIFFERENCES, "", "←", "go back by one", DIFFERENCES),
  MARK_NEW(Group.DIFFERENCES, "mark-afresh", "M", "neither: mark it afresh", DIFFERENCES),
  KEEP_NEW_MARK(Group.UNLISTED, "", "Enter", "keep the mark made afresh", NEW_MARK),
  GIVE_REASON(Group.DIFFERENCES, "why", "C", "say why", DIFFERENCES),
  OTHER_PAIR(Group.DIFFERENCES, "other-pair", "P", "another two readings", DIFFERENCES),
  CONFIRM_SETTLED(Group.UNLISTED, "", "Enter", "say that it is settled", DIFFERENCES),

  NUDGE_BACK(Group.CHANGE, "nudge-back", "Alt+←", "mark: earlier", TRIAL, PASS),
  NUDGE_ON(Group.CHANGE, "nudge-on", "Alt+→", "mark: later", TRIAL, PASS),
  DELETE(
      Group.CHANGE,
      "delete",
      "Del",
      "take the current one away",
      TRIAL,
      PASS,
      PLACES,
      DIFFERENCES,
      NEW_MARK),
  UNDO(Group.CHANGE, "undo", "Z Ctrl+Z", "undo", WINDOW, PASS, PLACES, DIFFERENCES),
  REDO(Group.CHANGE, "redo", "Shift+Z Ctrl+Y", "do again", WINDOW, PASS, PLACES, DIFFERENCES),
  ESCAPE(Group.CHANGE, "", "Esc", "give up a span, stop, close", WINDOW),
  LEAVE(Group.UNLISTED, "", "Esc", "leave", PASS, DIFFERENCES, NEW_MARK),
  STOP_TYPING(Group.UNLISTED, "", "Enter Esc", "stop typing along", TYPING),
  ADD(Group.CHANGE, "add", "A", "add clips", WINDOW),
  OPEN(Group.CHANGE, "open", "O Ctrl+O", "open a session", WINDOW),
  ATHLETE(Group.CHANGE, "athlete", "Ctrl+A", "the athlete: lengths, consent", WINDOW),
  DRILL(Group.CHANGE, "drill", "Ctrl+B", "a drill, then a block", WINDOW),
  READER(Group.CHANGE, "reader", "Ctrl+R", "another reader", WINDOW, DIFFERENCES),
  MESSAGES(Group.CHANGE, "messages", "M", "messages, and write one here", WINDOW),
  PROGRESS(Group.CHANGE, "progress", "Ctrl+G", "progress over sessions", WINDOW),
  LADDER(Group.CHANGE, "ladder", "Ctrl+K", "paces for trials to clicks", WINDOW),
  REPORT(Group.CHANGE, "report", "Ctrl+E", "the report", WINDOW),
  REEL(Group.CHANGE, "reel", "Ctrl+L", "the trial's reel", TRIAL),
  THEME(
      Group.CHANGE, "theme", "Ctrl+T", "light or dark", WINDOW, PASS, DIFFERENCES, NEW_MARK, PAIR),
  REDUCE_MOTION(
      Group.CHANGE,
      "motion",
      "Ctrl+M",
      "less motion, or as before",
      WINDOW,
      PASS,
      DIFFERENCES,
      NEW_MARK,
      PAIR),
  TEXT_LARGER(
      Group.CHANGE,
      "text-larger",
      "Ctrl++",
      "text: larger",
      WINDOW,
      PASS,
      DIFFERENCES,
      NEW_MARK,
      PAIR),
  TEXT_SMALLER(
      Group.CHANGE,
      "text-smaller",
      "Ctrl+−",
      "text: smaller",
      WINDOW,
      PASS,
      DIFFERENCES,
      NEW_MARK,
      PAIR),
  ALL_KEYS(
      Group.CHANGE,
      "keys",
      "?",
      "all keys, and to change them",
      WINDOW,
      PASS,
      PLACES,
      DIFFERENCES,
      NEW_MARK,
      PAIR),
  PRINT_KEYS(Group.CHANGE, "print-keys", "Ctrl+P", "print all keys", WINDOW);

  /** What stands under one heading. */
  public enum Group {
    MARK("Mark"),
    MOVE("Move"),
    PICTURE("Picture"),
    PAIR("Both hands"),
    PLACES("While pointing at places"),
    DIFFERENCES("Differences"),
    CHANGE("Change"),
    /** Told with another, or where it is needed. */
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
    this.group = group;
    this.code = code;
    this.chords = List.of(chords.split(" "));
    this.words = words;
    this.contexts = List.of(where);
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
