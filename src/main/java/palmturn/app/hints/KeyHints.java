package palmturn.app.hints;

import java.util.ArrayList;
import java.util.List;
import palmturn.app.keys.Action;

/** The hints of the bottom row for each context, the most useful first. */
public final class KeyHints {
  private static final KeyHint ALL = KeyHint.of("all keys", Action.ALL_KEYS);
  private static final KeyHint ADD = KeyHint.of("add clips", Action.ADD);
  private static final KeyHint OPEN = KeyHint.of("open a session", Action.OPEN);
  private static final KeyHint DRILL = KeyHint.of("add a drill", Action.DRILL);
  private static final KeyHint ATHLETE = KeyHint.of("athlete", Action.ATHLETE);
  private static final KeyHint BOARD = KeyHint.of("move on the board", Action.BOARD_MOVE);
  private static final KeyHint MESSAGES = KeyHint.of("messages", Action.MESSAGES);
  private static final KeyHint PALM = KeyHint.of("palm", Action.PALM);
  private static final KeyHint BACK = KeyHint.of("back", Action.BACK);
  private static final KeyHint ZONES =
      KeyHint.of("fingers, wrist, edge", Action.FINGERS, Action.WRIST, Action.EDGE);
  private static final KeyHint DOUBLE = KeyHint.of("double", Action.DOUBLE);
  private static final KeyHint WRIST = KeyHint.of("bent wrist", Action.BENT_WRIST);
  private static final KeyHint ELBOW = KeyHint.of("elbow out", Action.ELBOW_OUT);
  private static final KeyHint FRAME = KeyHint.of("frame", Action.FRAME_BACK, Action.FRAME_ON);
  private static final KeyHint NEXT = KeyHint.of("next slap", Action.SLAP_NEXT);
  private static final KeyHint PLAY = KeyHint.of("play slowly", Action.PLAY);

  /** Checks every mark. */
  public static final KeyHint GO_THROUGH = KeyHint.of("check every slap", Action.GO_THROUGH);

  /** Hints while typing along. */
  public static final List<KeyHint> TYPING =
      List.of(
          PALM,
          BACK,
          KeyHint.of("faulty palm, back", Action.PALM_FAULT, Action.BACK_FAULT),
          KeyHint.of("double", Action.DOUBLE),
          KeyHint.of("delete the last", Action.DELETE),
          KeyHint.of("slower, faster", Action.SLOWER, Action.FASTER),
          KeyHint.of("stop and snap the marks", Action.TYPE_ALONG),
          ALL);

  /** Hints while checking the times of doubtful slaps. */
  public static final List<KeyHint> TIME_PASS =
      List.of(
          KeyHint.of("correct, next", Action.CONFIRM),
          KeyHint.of("palm or back, next", Action.PALM, Action.BACK),
          KeyHint.of("double or not, next", Action.DOUBLE),
          KeyHint.of("delete, next", Action.DELETE),
          KeyHint.of("move by a frame", Action.FRAME_BACK, Action.FRAME_ON),
          KeyHint.of("undo", Action.UNDO),
          KeyHint.of("go back", Action.SLAP_BEFORE),
          KeyHint.of("leave", Action.LEAVE),
          ALL);

  /** Hints while checking the zone of every slap. */
  public static final List<KeyHint> ZONE_PASS =
      List.of(
          KeyHint.of("centre, next", Action.CONFIRM),
          KeyHint.of("fingers, wrist, edge, next", Action.FINGERS, Action.WRIST, Action.EDGE),
          KeyHint.of("double", Action.DOUBLE),
          KeyHint.of("part turn", Action.PART_TURN),
          KeyHint.of("palm, back", Action.PALM, Action.BACK),
          KeyHint.of("take away", Action.DELETE),
          KeyHint.of("undo", Action.UNDO),
          KeyHint.of("go back", Action.SLAP_BEFORE),
          KeyHint.of("leave", Action.LEAVE),
          ALL);

  /** Hints while reviewing differences. */
  public static final List<KeyHint> DIFFERENCES =
      List.of(
          KeyHint.of("upper or lower is correct", Action.UPPER, Action.LOWER),
          KeyHint.of("leave open, next", Action.LEAVE_OPEN),
          KeyHint.of("go back", Action.GO_BACK),
          KeyHint.of("neither: new mark", Action.MARK_NEW),
          KeyHint.of("play or stop", Action.PLAY),
          KeyHint.of("give a reason", Action.GIVE_REASON),
          KeyHint.of("undo", Action.UNDO),
          KeyHint.of("to the trial", Action.LEAVE),
          ALL);

  /** Hints at the end of the differences. */
  public static final List<KeyHint> DIFFERENCES_END =
      List.of(
          KeyHint.of("go back", Action.GO_BACK),
          KeyHint.of("undo", Action.UNDO),
          KeyHint.of("to the trial", Action.LEAVE),
          ALL);

  /** Reopens a decided difference. */
  public static final KeyHint REOPEN = KeyHint.of("reopen", Action.DELETE);

  /** Hints while marking a slap where neither reading is right. */
  public static final List<KeyHint> NEW_SLAP =
      List.of(
          FRAME,
          PALM,
          BACK,
          ZONES,
          DOUBLE,
          KeyHint.of("part turn", Action.PART_TURN),
          KeyHint.of("missed", Action.MISSED),
          KeyHint.of("keep", Action.KEEP_NEW_MARK),
          KeyHint.of("nothing there", Action.DELETE),
          KeyHint.of("give up", Action.LEAVE),
          ALL);

  /** Hints while marking a span where neither reading is right. */
  public static final List<KeyHint> NEW_SPAN =
      List.of(
          FRAME,
          KeyHint.of("starts here", Action.PALM),
          KeyHint.of("ends here", Action.BACK),
          KeyHint.of("keep", Action.KEEP_NEW_MARK),
          KeyHint.of("nothing there", Action.DELETE),
          KeyHint.of("give up", Action.LEAVE),
          ALL);

  /** Reviews the differences of two readings. */
  public static final KeyHint COMPARE = KeyHint.of("differences", Action.COMPARE);

  /** Chooses another trial beside the open one. */
  public static final KeyHint OTHER_TRIAL = KeyHint.of("another trial", Action.PAIR_OTHER);

  /** Hints for two trials side by side. */
  public static final List<KeyHint> PAIR =
      List.of(
          FRAME,
          KeyHint.of("previous, next slap", Action.SLAP_BEFORE, Action.SLAP_NEXT),
          PLAY,
          KeyHint.of("same pace or real time", Action.PAIR_PACE),
          OTHER_TRIAL,
          KeyHint.of("go back", Action.PAIR_LEAVE),
          KeyHint.of("zoom to hands", Action.ZOOM_TO_HANDS),
          KeyHint.of("mirror", Action.PAIR_MIRROR),
          KeyHint.of("loop the slap", Action.LOOP_SLAP),
          KeyHint.of("align with the next slap", Action.PAIR_LATER),
          KeyHint.of("slower, faster", Action.SLOWER, Action.FASTER),
          ALL);

  /** Finishes a reading. */
  public static final KeyHint FINISH = KeyHint.of("finish the reading", Action.FINISH);

  /** Estimates the trial. */
  public static final KeyHint ESTIMATE = KeyHint.of("estimate", Action.ESTIMATE);

  /** Copies the estimate's marks. */
  public static final KeyHint START = KeyHint.of("start from the estimate", Action.START_FROM);

  /** Lists the estimate's details. */
  public static final KeyHint ESTIMATE_DETAILS =
      KeyHint.of("estimate details", Action.ESTIMATE_DETAILS);

  /** Hides the estimate. */
  public static final KeyHint HIDE = KeyHint.of("hide the estimate", Action.TOGGLE_ESTIMATE);

  /** Shows the estimate again. */
  public static final KeyHint SHOW = KeyHint.of("show the estimate", Action.TOGGLE_ESTIMATE);

  /** The rarer marks, in full. */
  public static final List<KeyHint> MORE_MARKS =
      List.of(
          KeyHint.of("part turn: the current slap's turn was cut short", Action.PART_TURN),
          KeyHint.of("missed: a turn without contact, at this frame", Action.MISSED),
          KeyHint.of("other fault of the current slap, in words", Action.OTHER_FAULT),
          KeyHint.of("target moved: starts; again: ends", Action.TARGET_MOVED),
          KeyHint.of("pause: starts; again: ends", Action.PAUSE));

  private KeyHints() {}

  /** The context that keys act in. */
  public enum Context {
    NOTHING_OPEN,
    BOARD,
    NOT_FILMED,
    READ_ONLY,
    PLACES,
    TRIAL,
    FINISHED
  }

  /**
   * Returns the hints for the inbox.
   *
   * @param any whether there are sessions on it
   * @param searching whether a search is running
   */
  public static List<KeyHint> inbox(boolean any, boolean searching) {
    List<KeyHint> all = new ArrayList<>();
    if (any) {
      all.add(KeyHint.of("open", Action.INBOX_OPEN));
      all.add(KeyHint.of("move", Action.INBOX_MOVE));
    }
    all.add(KeyHint.of("choose a folder", Action.INBOX_FOLDER));
    all.add(
        searching
            ? KeyHint.of("stop searching", Action.INBOX_STOP)
            : KeyHint.of("search again", Action.INBOX_AGAIN));
    all.add(KeyHint.of("back", Action.INBOX_SHOW));
    all.add(ALL);
    return all;
  }

  /**
   * Returns the hints for a context, the most useful first.
   *
   * @param first hints to put before the others
   * @param last hints to put after them
   */
  public static List<KeyHint> at(Context place, List<KeyHint> first, List<KeyHint> last) {
    List<KeyHint> all = new ArrayList<>(first);
    List<KeyHint> of = at(place);
    all.addAll(of.subList(0, of.size() - 1));
    all.addAll(last);
    all.add(of.get(of.size() - 1));
    return all;
  }

  private static List<KeyHint> at(Context place) {
    return switch (place) {
      case NOTHING_OPEN -> List.of(OPEN, ADD, KeyHint.of("inbox", Action.INBOX_SHOW), ALL);
      case BOARD ->
          List.of(
              BOARD,
              KeyHint.of("to the strip", Action.TO_STRIP),
              ADD,
              DRILL,
              MESSAGES,
              ATHLETE,
              ALL);
      case NOT_FILMED -> List.of(ADD, OPEN, DRILL, KeyHint.of("board", Action.TAB), ALL);
      case PLACES ->
          List.of(
              KeyHint.of("keep", Action.PLACE_KEEP),
              KeyHint.of("leave", Action.PLACE_LEAVE),
              KeyHint.of("move", Action.PLACE_MOVE),
              KeyHint.of("size", Action.PLACE_SIZE),
              KeyHint.of("take away", Action.DELETE),
              KeyHint.of("undo", Action.UNDO),
              KeyHint.of("show or hide", Action.TOGGLE_OVERLAY),
              ALL);
      case READ_ONLY -> List.of(FRAME, NEXT, PLAY, MESSAGES, ALL);
      case FINISHED ->
          List.of(
              KeyHint.of("back to the board", Action.TAB),
              KeyHint.of("both hands", Action.BOTH_HANDS),
              FRAME,
              NEXT,
              PLAY,
              KeyHint.of("every slap", Action.GO_THROUGH),
              MESSAGES,
              KeyHint.of("reopen the reading", Action.FINISH),
              ALL);
      case TRIAL ->
          List.of(
              PALM,
              BACK,
              ZONES,
              DOUBLE,
              WRIST,
              ELBOW,
              FRAME,
              NEXT,
              PLAY,
              KeyHint.of("type along", Action.TYPE_ALONG),
              KeyHint.of("every slap", Action.GO_THROUGH),
              KeyHint.of("more", Action.MORE_MARKS),
              ALL);
    };
  }
}
