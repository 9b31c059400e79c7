package palmturn.app.hints;

import java.util.ArrayList;
import java.util.List;
import palmturn.app.keys.Action;

/** What is told in the row at the bottom, for each place the most wanted first. */
public final class Hints {
  private static final Hint ALL = Hint.of("all keys", Action.KEYS);
  private static final Hint ADD = Hint.of("add clips", Action.ADD);
  private static final Hint OPEN = Hint.of("open a session", Action.OPEN);
  private static final Hint DRILL = Hint.of("a drill, then a block", Action.DRILL);
  private static final Hint ATHLETE = Hint.of("the athlete", Action.ATHLETE);
  private static final Hint BOARD = Hint.of("move on the board", Action.BOARD_MOVE);
  private static final Hint MESSAGES = Hint.of("messages", Action.MESSAGES);
  private static final Hint PALM = Hint.of("palm", Action.PALM);
  private static final Hint BACK = Hint.of("back", Action.BACK);
  private static final Hint ZONES =
      Hint.of("fingers, wrist, edge", Action.FINGERS, Action.WRIST, Action.EDGE);
  private static final Hint DOUBLE = Hint.of("double", Action.DOUBLE);
  private static final Hint WRIST = Hint.of("bent wrist", Action.BENT_WRIST);
  private static final Hint ELBOW = Hint.of("elbow out", Action.ELBOW_OUT);
  private static final Hint FRAME = Hint.of("frame", Action.FRAME_BACK, Action.FRAME_ON);
  private static final Hint NEXT = Hint.of("next slap", Action.SLAP_NEXT);
  private static final Hint PLAY = Hint.of("play slowly", Action.PLAY);

  /** Goes through the marks. */
  public static final Hint EVERY = Hint.of("look at every slap", Action.THROUGH);

  /** Typing along. */
  public static final List<Hint> TYPING =
      List.of(
          PALM,
          BACK,
          Hint.of("the same with a fault", Action.PALM_FAULT, Action.BACK_FAULT),
          Hint.of("double", Action.DOUBLE),
          Hint.of("take the last one away", Action.DELETE),
          Hint.of("slower, faster", Action.SLOWER, Action.FASTER),
          Hint.of("stop, and the marks settle", Action.TYPE),
          ALL);

  /** The pass over the times of doubtful slaps. */
  public static final List<Hint> TIMES =
      List.of(
          Hint.of("right, next", Action.RIGHT),
          Hint.of("palm, back, next", Action.PALM, Action.BACK),
          Hint.of("double or not, next", Action.DOUBLE),
          Hint.of("take away, next", Action.DELETE),
          Hint.of("move a frame", Action.FRAME_BACK, Action.FRAME_ON),
          Hint.of("undo", Action.UNDO),
          Hint.of("go back", Action.SLAP_BEFORE),
          Hint.of("leave", Action.LEAVE),
          ALL);

  /** The pass over the zone of every slap. */
  public static final List<Hint> ZONES_PASS =
      List.of(
          Hint.of("centre, next", Action.RIGHT),
          Hint.of("fingers, wrist, edge, next", Action.FINGERS, Action.WRIST, Action.EDGE),
          Hint.of("double", Action.DOUBLE),
          Hint.of("part turn", Action.PART_TURN),
          Hint.of("palm, back", Action.PALM, Action.BACK),
          Hint.of("take away", Action.DELETE),
          Hint.of("undo", Action.UNDO),
          Hint.of("go back", Action.SLAP_BEFORE),
          Hint.of("leave", Action.LEAVE),
          ALL);

  /** Going through where two readings differ. */
  public static final List<Hint> DIFFERENCES =
      List.of(
          Hint.of("upper, lower is right", Action.UPPER, Action.LOWER),
          Hint.of("leave open, go on", Action.GO_ON),
          Hint.of("go back", Action.GO_BACK),
          Hint.of("neither: mark it afresh", Action.MARK_AFRESH),
          Hint.of("play or stop", Action.PLAY),
          Hint.of("say why", Action.WHY),
          Hint.of("undo", Action.UNDO),
          Hint.of("to the trial", Action.LEAVE),
          ALL);

  /** The end of the differences. */
  public static final List<Hint> DIFFERENCES_END =
      List.of(
          Hint.of("go back", Action.GO_BACK),
          Hint.of("undo", Action.UNDO),
          Hint.of("to the trial", Action.LEAVE),
          ALL);

  /** Opens a decided difference again. */
  public static final Hint REOPEN = Hint.of("open again", Action.DELETE);

  /** Marking a slap where neither reading is right. */
  public static final List<Hint> SLAP_AFRESH =
      List.of(
          FRAME,
          PALM,
          BACK,
          ZONES,
          DOUBLE,
          Hint.of("part turn", Action.PART_TURN),
          Hint.of("missed", Action.MISSED),
          Hint.of("keep", Action.KEEP_AFRESH),
          Hint.of("nothing there", Action.DELETE),
          Hint.of("give up", Action.LEAVE),
          ALL);

  /** Marking a stretch where neither reading is right. */
  public static final List<Hint> SPAN_AFRESH =
      List.of(
          FRAME,
          Hint.of("begins here", Action.PALM),
          Hint.of("ends here", Action.BACK),
          Hint.of("keep", Action.KEEP_AFRESH),
          Hint.of("nothing there", Action.DELETE),
          Hint.of("give up", Action.LEAVE),
          ALL);

  /** Goes through where two readings differ. */
  public static final Hint COMPARE = Hint.of("differences", Action.COMPARE);

  /** Another trial beside the open one. */
  public static final Hint ANOTHER = Hint.of("another trial", Action.PAIR_OTHER);

  /** Two trials side by side. */
  public static final List<Hint> PAIR =
      List.of(
          FRAME,
          Hint.of("slap before, next", Action.SLAP_BEFORE, Action.SLAP_NEXT),
          PLAY,
          Hint.of("same pace or real time", Action.PAIR_PACE),
          ANOTHER,
          Hint.of("go back", Action.PAIR_LEAVE),
          Hint.of("hands", Action.HANDS),
          Hint.of("mirror", Action.PAIR_MIRROR),
          Hint.of("loop the slap", Action.LOOP_SLAP),
          Hint.of("a slap further", Action.PAIR_LATER),
          Hint.of("slower, faster", Action.SLOWER, Action.FASTER),
          ALL);

  /** Ends a reading. */
  public static final Hint FINISH = Hint.of("reading finished", Action.FINISH);

  /** Has the program look for slaps. */
  public static final Hint ESTIMATE = Hint.of("estimate", Action.ESTIMATE);

  /** Copies what it found. */
  public static final Hint START = Hint.of("start from the estimate", Action.START_FROM);

  /** Lists what it says. */
  public static final Hint SAYS = Hint.of("what it says", Action.ESTIMATE_SAYS);

  /** Hides what it found. */
  public static final Hint HIDE = Hint.of("hide the estimate", Action.HIDE);

  /** Shows it again. */
  public static final Hint SHOW = Hint.of("show the estimate", Action.HIDE);

  /** The rarer marks, in full. */
  public static final List<Hint> MORE =
      List.of(
          Hint.of("part turn: the current slap's turn was cut short", Action.PART_TURN),
          Hint.of("missed: a turn without contact, at this frame", Action.MISSED),
          Hint.of("other fault of the current slap, in words", Action.OTHER),
          Hint.of("target moved: begin, again to end", Action.TARGET_MOVED),
          Hint.of("pause: begin, again to end", Action.PAUSE));

  private Hints() {}

  /** Where the keyboard is. */
  public enum Place {
    NOTHING_OPEN,
    BOARD,
    NOT_FILMED,
    READ_ONLY,
    PLACES,
    TRIAL,
    FINISHED
  }

  /**
   * Returns the keys that are valid on the list of sessions that were sent in.
   *
   * @param any whether there are sessions on it
   * @param searching whether more are searched for
   */
  public static List<Hint> inbox(boolean any, boolean searching) {
    List<Hint> all = new ArrayList<>();
    if (any) {
      all.add(Hint.of("open", Action.INBOX_OPEN));
      all.add(Hint.of("move", Action.INBOX_MOVE));
    }
    all.add(Hint.of("choose a folder", Action.INBOX_FOLDER));
    all.add(
        searching
            ? Hint.of("stop searching", Action.INBOX_STOP)
            : Hint.of("search again", Action.INBOX_AGAIN));
    all.add(Hint.of("back", Action.INBOX_SHOW));
    all.add(ALL);
    return all;
  }

  /**
   * Returns the keys that are valid in a place, the most wanted first.
   *
   * @param first what is wanted before all others just now
   * @param last what is wanted after them
   */
  public static List<Hint> at(Place place, List<Hint> first, List<Hint> last) {
    List<Hint> all = new ArrayList<>(first);
    List<Hint> of = at(place);
    all.addAll(of.subList(0, of.size() - 1));
    all.addAll(last);
    all.add(of.get(of.size() - 1));
    return all;
  }

  private static List<Hint> at(Place place) {
    return switch (place) {
      case NOTHING_OPEN -> List.of(OPEN, ADD, Hint.of("inbox", Action.INBOX_SHOW), ALL);
      case BOARD ->
          List.of(
              BOARD, Hint.of("to the strip", Action.TO_STRIP), ADD, DRILL, MESSAGES, ATHLETE, ALL);
      case NOT_FILMED -> List.of(ADD, OPEN, DRILL, Hint.of("board", Action.TAB), ALL);
      case PLACES ->
          List.of(
              Hint.of("keep", Action.PLACE_KEEP),
              Hint.of("leave", Action.PLACE_LEAVE),
              Hint.of("move", Action.PLACE_MOVE),
              Hint.of("size", Action.PLACE_SIZE),
              Hint.of("take away", Action.DELETE),
              Hint.of("undo", Action.UNDO),
              Hint.of("hide it, show it", Action.DRAWN),
              ALL);
      case READ_ONLY -> List.of(FRAME, NEXT, PLAY, MESSAGES, ALL);
      case FINISHED ->
          List.of(
              Hint.of("to the board, for the next trial", Action.TAB),
              Hint.of("both hands", Action.BOTH_HANDS),
              FRAME,
              NEXT,
              PLAY,
              Hint.of("every slap", Action.THROUGH),
              MESSAGES,
              Hint.of("open this reading again", Action.FINISH),
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
              Hint.of("type along", Action.TYPE),
              Hint.of("every slap", Action.THROUGH),
              Hint.of("more", Action.MORE),
              ALL);
    };
  }
}
